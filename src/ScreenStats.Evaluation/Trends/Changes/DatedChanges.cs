using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs.Surroundings;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Trends.Series;
using ScreenStats.Evaluation.Trends.Words;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Trends.Interruptions;
using ScreenStats.Statistics.Trends.Series;

namespace ScreenStats.Evaluation.Trends.Changes;

/// <summary>The changes that the program file dates, each as an interrupted series of weeks.</summary>
/// <remarks>
/// A change is held against the weeks since the one before, at most half a year, up to the one after: so that one is not told for another, and that a straight line on
/// either side is not asked of years. Where it touched some sites only, the others are fitted likewise: what happened there too was not its doing.
/// </remarks>
internal static class DatedChanges
{
    public static IEnumerable<TrendChangeRow> Of(SeriesBasis basis, IReadOnlyList<ChangeSettings> changes, DataEnd end, double deflation, double confidence)
    {
        var sites = basis.Cube.Sites.Keys;
        for (var at = 0; at < changes.Count; at++)
        {
            var change = changes[at];
            var touched = sites.Where(change.Touches).ToHashSet(StringComparer.Ordinal);
            // Changes that touch none of the same sites are no neighbours.
            bool Near(ChangeSettings other) => other.On != change.On && sites.Any(site => touched.Contains(site) && other.Touches(site));
            var before = changes.Where(other => other.On < change.On && Near(other)).Select(other => (DateOnly?)other.On).Max();
            var after = changes.Where(other => other.On > change.On && Near(other)).Select(other => (DateOnly?)other.On).Min();
            var together = changes.Any(other => !ReferenceEquals(other, change) && other.On == change.On && other.Touches(touched.FirstOrDefault() ?? ""));
            yield return Row(basis, change, at, TrendChangeKind.Dated, touched.Contains, together, before, after, end, deflation, confidence);
            if (touched.Count > 0 && touched.Count < sites.Count)
                yield return Row(basis, change, at, TrendChangeKind.DatedElsewhere, site => !touched.Contains(site), false, before, after, end, deflation, confidence);
        }
    }

    private static TrendChangeRow Row(
        SeriesBasis basis, ChangeSettings change, int number, TrendChangeKind kind, Func<string, bool> sites, bool together, DateOnly? before, DateOnly? after, DataEnd end, double deflation, double confidence)
    {
        var nothing = EstimateFinding.Undefined("not fitted");
        var row = new TrendChangeRow
        {
            Key = $"{basis.Key}|{TrendWords.Of(kind)}|{change.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}|{(number + 1).ToString(CultureInfo.InvariantCulture)}",
            Measure = basis.Measure,
            Basis = basis.Basis,
            Kind = kind,
            On = change.On,
            OnLower = null,
            OnUpper = null,
            What = change.What,
            Sites = change.Sites.IsDefaultOrEmpty ? "" : (kind == TrendChangeKind.DatedElsewhere ? "not " : "") + string.Join(", ", change.Sites),
            LevelRatio = nothing,
            SlopeBefore = nothing,
            SlopeAfter = nothing,
            SlopeRatio = nothing,
            PValue = null,
            PValueUndefined = null,
            Method = null,
            Leads = basis.Leads,
        };
        TrendChangeRow Undefined(string reason) => row with
        {
            LevelRatio = EstimateFinding.Undefined(reason), SlopeBefore = EstimateFinding.Undefined(reason), SlopeAfter = EstimateFinding.Undefined(reason), SlopeRatio = EstimateFinding.Undefined(reason),
            PValueUndefined = reason,
        };
        if (together) return Undefined("another change is dated on the same day, and the two cannot be told apart");
        var all = FittedSeries.Of(TrendSeries.OfSites(basis.Cube, basis.Measure, end, sites), deflation);
        const int around = 7 * TrendRules.MostAround;
        var from = DateOnly.FromDayNumber(Math.Max(0, change.On.DayNumber - around));
        var to = DateOnly.FromDayNumber(Math.Min(DateOnly.MaxValue.DayNumber, change.On.DayNumber + around));
        if (before is { } previous && previous > from) from = previous;
        if (after is { } next && next < to) to = next;
        // A week that a change cuts in two goes to its greater part: its Thursday says which.
        var series = all with { Points = [.. all.Points.Where(point => point.Start.AddDays(3) >= from && point.Start.AddDays(3) < to)] };
        if (series.Trials == 0) return Undefined("nothing was counted around that day");
        int Counted(bool later) => series.Points.Count(point => point.Trials > 0 && (point.Start.AddDays(3) >= change.On) == later);
        if (Counted(false) < TrendRules.FewestOnASide) return Undefined($"fewer than {Say(TrendRules.FewestOnASide)} complete weeks were counted before it{(before is null ? "" : " and after the change before")}");
        if (Counted(true) < TrendRules.FewestOnASide) return Undefined($"fewer than {Say(TrendRules.FewestOnASide)} complete weeks were counted after it{(after is null ? "" : " and before the change after")}");
        if (series.FewerCounts < TrendRules.FewestEvents) return Undefined($"fewer than {Say(TrendRules.FewestEvents)} events (or other trials) were counted around it");
        var time = series.Points.Where(point => point.Start.AddDays(3) >= change.On).Min(series.Time);
        InterruptedFit Fit(TrendLimits limits) => InterruptedSeries.Fit(series.Counts(), [new Interruption(time, Level: true, Slope: true)], new InterruptionOptions
        {
            Limits = limits, LeastDispersion = 1, SmallSampleFactor = true, Student = true, Confidence = confidence,
        });
        var (quasi, robust) = (Fit(TrendLimits.Quasi), Fit(TrendLimits.Robust));
        if ((quasi.Reason ?? quasi.Changes[0].Reason) is { } reason) return Undefined(reason.Describe());
        var estimate = (Width(robust.Changes[0].LevelRatio) > Width(quasi.Changes[0].LevelRatio) ? robust : quasi).Changes[0];
        return row with
        {
            LevelRatio = Finding(estimate.LevelRatio, value => value),
            SlopeBefore = Finding(estimate.SlopeBefore, value => Math.Exp(value) - 1),
            SlopeAfter = Finding(estimate.SlopeAfter, value => Math.Exp(value) - 1),
            SlopeRatio = Finding(estimate.SlopeChange, Math.Exp),
            PValue = estimate.LevelPValue,
            PValueUndefined = estimate.LevelPValue is null ? "it has no error" : null,
            Method = TrendNotes.Interrupted,
        };
    }

    private static double Width(OpenEstimate? ratio) => ratio is { Lower: { } lower, Upper: { } upper } && lower > 0 ? Math.Log(upper / lower) : double.PositiveInfinity;

    private static EstimateFinding Finding(OpenEstimate? estimate, Func<double, double> through)
    {
        double? Through(double? value) => value is { } some && double.IsFinite(through(some)) ? through(some) : null;
        return estimate is null ? EstimateFinding.Undefined("not fitted")
            : new EstimateFinding(Through(estimate.Value), Through(estimate.Value) is null ? (estimate.Reason ?? UndefinedReason.TooLarge).Describe() : null,
                Through(estimate.Lower), Through(estimate.Upper), TrendNotes.Interrupted, estimate.Confidence);
    }

    private static string Say(long value) => value.ToString(CultureInfo.InvariantCulture);
}
