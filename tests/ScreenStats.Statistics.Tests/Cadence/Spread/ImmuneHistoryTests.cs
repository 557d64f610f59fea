using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Spread;

namespace ScreenStats.Statistics.Tests.Cadence.Spread;

/// <summary>The days before the first, with those infected in them immune: what was measured then goes on as it was.</summary>
public sealed class ImmuneHistoryTests
{
    private static readonly ImmutableArray<double> Profile = [0, 1, 3, 4, 3, 2, 1];

    [Fact]
    public void Every_row_of_the_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("immune-history"), row =>
    {
        var history = ImmuneHistory.Of(row.Number("people"), row.Number("earlier"), row.Number("immunity"));
        return new[] { row.Mismatch("each", history.EarlierPerDay), row.Mismatch("scale", history.Scale) };
    });

    // Measured reproduction below 1 as done, so that a tenth at least is brought in, and up to six tenths of the people immune.
    [Fact]
    public void What_was_done_goes_on_as_it_was_however_many_days_are_looked_at_and_however_long_immunity_lasts() => Gen.Select(
        Gen.Double[20, 20_000], Gen.Double[0.001, 0.6], Gen.Double[10, 400], Gen.Double[0.1, 1], Gen.Int[91, 730]).Sample((people, immune, immunity, broughtIn, days) =>
    {
        var measured = immune * people / immunity;
        var history = ImmuneHistory.Of(people, measured, immunity);
        var course = RenewalSpread.Run(people, broughtIn * measured * history.Scale, (1 - broughtIn) * history.Scale, Profile, days, history.EarlierPerDay, immunity, earlierImmune: true);
        return Math.Abs(course.Totals.Infections - (measured * days)) <= 0.01 * measured * days
            && Math.Abs(course.Totals.Imported - (broughtIn * measured * days)) <= 0.01 * measured * days
            && course.Days.All(day => Math.Abs(day.Infections - measured) <= 0.01 * measured);
    });

    [Fact]
    public void Nobody_beginning_immune_it_would_not()
    {
        var immune = ImmuneHistory.Of(900, 0.63, 180);
        double Infections(ImmuneHistory history, bool earlierImmune) =>
            RenewalSpread.Totals(900, 0.3 * 0.63 * history.Scale, 0.7 * history.Scale, Profile.AsSpan(), 730, 0.63, 180, earlierImmune).Infections;
        Infections(immune, true).Should().BeApproximately(0.63 * 730, 1e-9);
        Infections(ImmuneHistory.Of(900, 0.63, null), false).Should().BeLessThan(0.95 * 0.63 * 730);
    }

    [Fact]
    public void Without_immunity_or_infections_nothing_is_scaled_and_the_scale_grows_with_the_immune()
    {
        ImmuneHistory.Of(900, 0.63, null).Should().Be(new ImmuneHistory(0.63, 1));
        ImmuneHistory.Of(900, 0, 180).Should().Be(new ImmuneHistory(0, 1));
        ImmuneHistory.Of(900, 1e15, 180).Should().Be(ImmuneHistory.Of(900, 1e6, 180)).And.Match<ImmuneHistory>(history => history.Scale > 10 && history.Scale <= 20);
        Gen.Select(Gen.Double[1, 1e6], Gen.Double[0, 2], Gen.Double[1, 400], Gen.Double[0, 1]).Sample((people, immune, days, less) =>
        {
            var more = ImmuneHistory.Of(people, immune * people / days, days);
            return more.Scale is >= 1 and <= 20 * (1 + 1e-12) && ImmuneHistory.Of(people, less * immune * people / days, days).Scale <= more.Scale * (1 + 1e-12);
        });
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused()
    {
        foreach (var (call, name) in new (Func<object>, string)[]
        {
            (() => ImmuneHistory.Of(0, 1, 10), "people"), (() => ImmuneHistory.Of(double.NaN, 1, 10), "people"), (() => ImmuneHistory.Of(10, -1, 10), "earlierPerDay"),
            (() => ImmuneHistory.Of(10, 1, 0.5), "immunityDays"), (() => ImmuneHistory.Of(10, 1, double.NaN), "immunityDays"), (() => ImmuneHistory.Of(10, 1, 100_001), "immunityDays"),
        })
            call.Should().Throw<ArgumentOutOfRangeException>().Which.ParamName.Should().Be(name);
    }
}
