using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Trends.Words;

namespace ScreenStats.Evaluation.Trends.Growth;

/// <summary>Whether a rate rises, since when and how fast.</summary>
internal static class GrowthSentences
{
    public static IEnumerable<Sentence> Of(TrendFindings findings, TrendSeriesFinding series)
    {
        var rows = findings.Growth.Where(row => row.Measure == series.Measure && row.Basis == series.Basis && row.By == Grouping.Program).ToList();
        var whole = rows.Single(row => row.Segment == GrowthSegment.WholeSpan);
        var segments = rows.Where(row => row.Segment == GrowthSegment.BetweenChanges).ToList();
        var recent = rows.FirstOrDefault(row => row.Segment == GrowthSegment.RecentEightWeeks);
        if (recent is not null) yield return Stretch(recent, series, now: true);
        // Segments of which none has a direction are no course to tell: they stand in the table.
        if (segments.Any(row => row.Direction != GrowthDirection.CannotTell)) yield return Course(findings, segments);
        else if (recent is null || whole.GrowthPerWeek.Estimate is not null) yield return Stretch(whole, series, now: recent is null);
        if (recent is not null && rows.FirstOrDefault(row => row.Segment == GrowthSegment.RecentFourWeeks) is { } latest && latest.Direction != GrowthDirection.CannotTell && latest.Direction != recent.Direction)
            yield return Latest(latest);
        if (series.Basis != TrendBasis.All)
        {
            // What was left out may lie before the last weeks: then it made a difference to the whole span only.
            var own = recent is not null && Same(findings, recent) is { } late && late.GrowthPerWeek.Estimate != recent.GrowthPerWeek.Estimate ? recent : whole;
            if (Same(findings, own) is { } all) yield return Counted(own, all, series);
        }

        foreach (var sentence in Sites(findings, series)) yield return sentence;
    }

    private static string Path(GrowthRow row) => FigurePath.Row("trends.growth", row.Key);

    private static Sentence Stretch(GrowthRow row, TrendSeriesFinding series, bool now)
    {
        var (wording, path, subject) = (new Wording(), Path(row), TrendWords.Subject(row.Measure));
        var growth = row.GrowthPerWeek;
        if (growth.Estimate is null && growth.Lower is null && growth.Upper is null)
            return wording.Sentence($"Whether {TrendWords.Name(row.Measure)} rises or falls cannot be told{(row.Segment == GrowthSegment.RecentEightWeeks ? " for the last eight weeks" : now ? "" : " over the whole span")}: {growth.EstimateUndefined}.");
        var span = (now ? series.PeriodsAre == "day" && series.FittedBy == "day" ? "over the days from " : "over the complete weeks from " : "over the whole span from ")
            + wording.Day(path + ".from", row.From) + " to " + wording.Day(path + ".to", row.To);
        if (growth.Estimate is null) return wording.Sentence(Unbounded(row, wording, path, subject, span));
        var (estimate, limits) = (wording.Share(path + ".growthPerWeek.estimate", growth.Estimate), wording.Limits(path + ".growthPerWeek", growth, wording.Share, confidence: true));
        if (row.Direction == GrowthDirection.CannotTell)
        {
            var fastest = now && row.FastestDoubling is { } days ? $" If it rises, it doubles in {wording.Days(path + ".fastestDoubling", days)} days or more." : "";
            return wording.Sentence(now
                ? $"Whether {TrendWords.Name(row.Measure)} rises or falls cannot be told: {span} {TrendWords.Growing(row.Measure)} changed by {estimate} a week, with limits on both sides of no change ({limits}).{fastest}"
                : $"{char.ToUpperInvariant(span[0])}{span[1..]} {TrendWords.Growing(row.Measure)} changed by {estimate} a week ({limits}): neither a rise nor a fall, taken as a straight line.");
        }

        var rises = row.Direction == GrowthDirection.Rises;
        var verb = now ? rises ? "rises" : "falls" : rises ? "rose" : "fell";
        var rates = row.RateFrom is { } from && row.RateTo is { } to ? $", from {wording.Share(path + ".rateFrom", from)} to {wording.Share(path + ".rateTo", to)} by the line" : "";
        var turnover = rises ? row.Doubling : row.Halving;
        var name = rises ? "doubling" : "halving";
        var time = turnover.Estimate is { } value ? $"; at that pace it {(rises ? "doubles" : "halves")} in {wording.Days($"{path}.{name}.estimate", value)} days ({wording.Limits($"{path}.{name}", turnover, wording.Days)})" : "";
        return wording.Sentence($"{subject} {verb}: {span} {TrendWords.Growing(row.Measure)} changed by {estimate} a week ({limits}){rates}{time}.");
    }

    /// <summary>All events at one end: one limit only.</summary>
    private static string Unbounded(GrowthRow row, Wording wording, string path, string subject, string span) => row switch
    {
        { Direction: GrowthDirection.Rises } => $"{subject} rises: {span} all its events came at the end, and {TrendWords.Growing(row.Measure)} grew by {wording.Share(path + ".growthPerWeek.lower", row.GrowthPerWeek.Lower)} a week at least.",
        { Direction: GrowthDirection.Falls } => $"{subject} falls: {span} all its events came at the beginning, and {TrendWords.Growing(row.Measure)} changed by {wording.Share(path + ".growthPerWeek.upper", row.GrowthPerWeek.Upper)} a week or fell faster.",
        _ => $"Whether {TrendWords.Name(row.Measure)} rises or falls cannot be told: {span} all its events came at one end.",
    };

    private static Sentence Course(TrendFindings findings, List<GrowthRow> segments)
    {
        var wording = new Wording();
        var changes = findings.Changes.Where(change => change.Kind == Changes.TrendChangeKind.Found && change.Measure == segments[0].Measure && change.Basis == segments[0].Basis).ToList();
        var text = $"Over the whole span {TrendWords.Name(segments[0].Measure)} changed its course:";
        for (var at = 0; at < segments.Count; at++)
        {
            var (row, path) = (segments[at], Path(segments[at]));
            var verb = row.Direction switch { GrowthDirection.Rises => "rose", GrowthDirection.Falls => "fell", _ => "neither rose nor fell for sure" };
            text += $"{(at == 0 ? "" : at == segments.Count - 1 ? ", and since then" : ", then")} it {verb} ({wording.Share(path + ".growthPerWeek.estimate", row.GrowthPerWeek.Estimate)} a week, {wording.Limits(path + ".growthPerWeek", row.GrowthPerWeek, wording.Share, at == 0)})";
            if (at >= changes.Count) continue;
            var (change, place) = (changes[at], FigurePath.Row("trends.changes", changes[at].Key));
            text += $" until about {wording.Day(place + ".on", change.On)}" + (change.OnLower is not null && change.OnUpper is not null
                ? $" (between {wording.Day(place + ".onLower", change.OnLower)} and {wording.Day(place + ".onUpper", change.OnUpper)})" : " (how early or late is not bounded)");
        }

        return wording.Sentence(text + ".");
    }

    private static Sentence Latest(GrowthRow row)
    {
        var (wording, path) = (new Wording(), Path(row));
        return wording.Sentence($"Over the last four of these weeks alone it {(row.Direction == GrowthDirection.Rises ? "rises" : "falls")}: {wording.Share(path + ".growthPerWeek.estimate", row.GrowthPerWeek.Estimate)} a week ({wording.Limits(path + ".growthPerWeek", row.GrowthPerWeek, wording.Share, true)}).");
    }

    private static GrowthRow? Same(TrendFindings findings, GrowthRow row) => findings.Growth.FirstOrDefault(other =>
        other.Measure == row.Measure && other.Basis == TrendBasis.All && other.Segment == row.Segment && other.By == row.By && other.GrowthPerWeek.Estimate is not null);

    private static Sentence Counted(GrowthRow own, GrowthRow all, TrendSeriesFinding series)
    {
        var wording = new Wording();
        var left = wording.Count(FigurePath.Row("trends.series", series.Key) + ".runsLeftOut", series.RunsLeftOut);
        var what = series.Basis switch
        {
            TrendBasis.WithoutFlaggedLots => $"the {left} runs of lots that are flagged for {(series.Measure == TrendMeasure.InvalidRuns ? "unusable runs" : "refuted positives")}",
            TrendBasis.Routine => $"the {left} runs that were taken because of an outbreak",
            _ => $"the {left} runs of flagged lots or because of an outbreak",
        };
        var path = Path(all);
        var other = $"{wording.Share(path + ".growthPerWeek.estimate", all.GrowthPerWeek.Estimate)} a week ({wording.Limits(path + ".growthPerWeek", all.GrowthPerWeek, wording.Share)})";
        var instead = own.GrowthPerWeek.Estimate is { } without ? $" in place of {wording.Share(Path(own) + ".growthPerWeek.estimate", without)}" : "";
        var lots = series.Basis is TrendBasis.WithoutFlaggedLots or TrendBasis.RoutineWithoutFlaggedLots && all.Direction != own.Direction && all.Direction != GrowthDirection.CannotTell
            ? ": that is the course of a lot, not of infection" : "";
        return wording.Sentence($"This leaves out {what}; with them {(own.Segment == GrowthSegment.WholeSpan ? "the whole span" : "the same weeks")} would read {other}{instead}{lots}.");
    }

    /// <summary>Sites where the direction holds though so many are looked at.</summary>
    private static IEnumerable<Sentence> Sites(TrendFindings findings, TrendSeriesFinding series)
    {
        var rows = findings.Growth.Where(row => row.Measure == series.Measure && row.Basis == series.Basis && row.By == Grouping.Site && row.Segment == GrowthSegment.WholeSpan).ToList();
        foreach (var direction in new[] { GrowthDirection.Rises, GrowthDirection.Falls })
        {
            var some = rows.Where(row => row.StandsOut && row.Direction == direction).ToList();
            if (some.Count == 0) continue;
            var wording = new Wording();
            var names = string.Join(", ", some.Select(row => $"{wording.Name(Path(row) + ".level", row.Level)} ({wording.Share(Path(row) + ".growthPerWeek.estimate", row.GrowthPerWeek.Estimate)} a week)"));
            yield return wording.Sentence($"Of the sites by themselves, {TrendWords.Name(series.Measure)} {(direction == GrowthDirection.Rises ? "rose" : "fell")} over the whole span at {names}, also when it is allowed for how many sites are looked at.");
        }
    }
}
