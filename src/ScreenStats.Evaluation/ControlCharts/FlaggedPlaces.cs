namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>Sites and lots that stand out by what a chart watches: one of them must not make the others look good, nor those look bad that it goes with.</summary>
internal sealed record FlaggedPlaces(IReadOnlySet<string> Sites, IReadOnlySet<string> Lots)
{
    /// <summary>Those flagged for what is watched.</summary>
    public static FlaggedPlaces Of(ChartMeasure measure, IEnumerable<Lots.LotFinding> lots, IEnumerable<Sites.SiteFinding> sites)
    {
        var flag = measure == ChartMeasure.InvalidRuns ? Flag.Invalid : Flag.Refuted;
        return new FlaggedPlaces(
            sites.Where(site => site.Flag.HasFlag(flag)).Select(site => site.Site).ToHashSet(StringComparer.Ordinal),
            lots.Where(lot => lot.Flag.HasFlag(flag)).Select(lot => lot.Lot).ToHashSet(StringComparer.Ordinal));
    }
}
