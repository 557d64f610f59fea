using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Rules;

namespace ScreenStats.Counting.Tests.Rules;

/// <summary>Moments, runs and specimens in short: "03-02 08:00" has a time of day, "03-02" has only a date.</summary>
internal static class When
{
    public static Moment At(string text, int offsetHours = 0) => text.Length > 5
        ? Moment.At(DateTime.ParseExact($"2026-{text}", text.Length > 11 ? "yyyy-MM-dd HH:mm:ss" : "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture), TimeSpan.FromHours(offsetHours))
        : Moment.On(DateOnly.ParseExact($"2026-{text}", "yyyy-MM-dd", CultureInfo.InvariantCulture), TimeSpan.FromHours(offsetHours));

    public static RunEvent Run(string text, Outcome outcome = Outcome.Positive) => new(At(text), outcome);

    public static SpecimenEvent Positive(string text, SpecimenReason reason = SpecimenReason.FollowUp) => new(At(text), ConfirmatoryResult.Positive, reason);

    public static SpecimenEvent Negative(string text, SpecimenReason reason = SpecimenReason.FollowUp) => new(At(text), ConfirmatoryResult.Negative, reason);

    public static SpecimenEvent Indeterminate(string text, SpecimenReason reason = SpecimenReason.FollowUp) => new(At(text), ConfirmatoryResult.Indeterminate, reason);
}
