using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;
using ScreenStats.Reporting.Charts.Worth;

namespace ScreenStats.Reporting.Pages.Worth;

/// <summary>The picture of which option gains most for how much infection, with how much there was.</summary>
internal static class LadderFigures
{
    /// <summary>Its id.</summary>
    public const string Ladder = "option-by-infections";

    private const string Measured = "infections in a week among 1,000 people";

    /// <summary>The picture; null where one option gains most however much infection there is, or where it is not known how much there was.</summary>
    public static Chart? Of(Findings findings)
    {
        var found = findings.Worth;
        var levels = Levels(findings);
        if (found.Ladder.Length < 2 || levels.IsEmpty) return null;
        ImmutableArray<LadderRung> rungs = [.. found.Ladder.Select(rung => new LadderRung(rung.IsNone ? LadderViews.Word(rung.Option, rung.Confirmation) : ChartText.Name(LadderViews.Word(rung.Option, rung.Confirmation)), rung.From, rung.To))];
        return LadderChart.Of(
            new ChartFrame(
                Ladder, "Which way of screening gains most, by how much infection there is",
                (Caption)"The bar that an upright line meets is the way of screening that gains most at so much infection. The option that gains most, against " + Caption.OfPicture(Measured + ",") + WorthWording.ScopeOf(found, "for", ", the rest at the centre.") + Caption.OfPicture(string.Join(" ", levels.Select(level => Words(rungs, level) + "."))),
                $"By {Measured}: " + string.Join("; ", rungs.Select(rung => rung.Name + (rung.From == 0 ? $" up to {Print(rung.To!.Value)}" : rung.To is { } to ? $" from {Print(rung.From)} to {Print(to)}" : $" from {Print(rung.From)}"))) + ". "
                + string.Join("; ", levels.Select(level => Words(rungs, level))) + ".",
                "worth-ladder"),
            rungs, levels, Measured, Print);
    }

    private static ImmutableArray<LadderLevel> Levels(Findings findings)
    {
        var levels = ImmutableArray.CreateBuilder<LadderLevel>();
        void Add(string name, double? estimate, double? lower, double? upper)
        {
            if (estimate is { } value) levels.Add(new LadderLevel(name, value, lower ?? value, upper ?? value));
        }

        foreach (var period in findings.Worth.Periods)
        {
            var days = period.Days.ToString("N0", CultureInfo.InvariantCulture);
            Add(period == findings.Worth.Periods[0] ? $"all {days} days" : $"last {days} days", period.WeeklyIncidence.Estimate, period.WeeklyIncidence.Lower, period.WeeklyIncidence.Upper);
        }

        if (levels.Count > 0) return levels.ToImmutable();
        var stated = findings.Cadence.Assumptions.Any(row => row.Assumption == "incidence" && row.Origin == CadenceOrigin.Stated);
        if (findings.Worth.Turn("weekly-incidence") is { } turn) Add(stated ? "as stated" : "all days of the data", turn.Present, turn.Lower, turn.Upper);
        return levels.ToImmutable();
    }

    private static string Words(ImmutableArray<LadderRung> rungs, LadderLevel level)
    {
        var (at, low, high) = (LadderChart.At(rungs, level.Estimate).Name, LadderChart.At(rungs, level.Lower).Name, LadderChart.At(rungs, level.Upper).Name);
        var limits = level.HasLimits ? $" (limits {Print(level.Lower)} to {Print(level.Upper)})" : "";
        var ends = !level.HasLimits || (low == at && high == at) ? "" : low == high ? $"; at both limits {low}" : $"; at the limits {low} and {high}";
        return $"{Capital(level.Name)}: {Print(level.Estimate)}{limits}, where {at} gains most{ends}";
    }

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static string Print(double value) => WorthWording.Money(value);
}
