using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Changes;
using ScreenStats.Evaluation.Changes.Rows;
using ScreenStats.Evaluation.Changes.Snapshots;

namespace ScreenStats.Reporting.Files.Earlier;

/// <summary>The shares of findings.json that can be compared: where each stands in the file.</summary>
internal static class SnapshotShares
{
    private const double MostEffect = 1e12;

    public static IEnumerable<SnapshotShare> Of(FindingsNode root)
    {
        var (positivity, value) = (root.Required("positivity").Required("program"), root.Required("predictiveValue").Required("observed"));
        yield return Share(Grouping.Program, "", ChangeMeasure.PositivePredictiveValue, value);
        yield return Share(Grouping.Program, "", ChangeMeasure.Positivity, positivity);
        yield return new SnapshotShare(Grouping.Program, "", ChangeMeasure.ConfirmedPerValidTest, Count(value, "events"), Count(positivity, "trials"), null, null);
        yield return Share(Grouping.Program, "", ChangeMeasure.RefutedPerValidTest, root.Required("refuted").Required("program").Required("rate"));
        yield return Share(Grouping.Program, "", ChangeMeasure.InvalidRuns, root.Required("invalidRuns").Required("program"));
        yield return Share(Grouping.Program, "", ChangeMeasure.FollowUp, root.Required("followUp").Required("positive").Required("followThrough"));
        yield return Share(Grouping.Program, "", ChangeMeasure.CasesPerPersonWeek, root.Required("persons").Required("program").Required("caseShare"));
        yield return Share(Grouping.Program, "", ChangeMeasure.NegativePredictiveValue, root.Required("audits").Required("program").Required("negativePredictiveValue"));
        if (root.Required("coverage")["program"] is { } coverage)
            yield return new SnapshotShare(Grouping.Program, "", ChangeMeasure.Coverage, Count(coverage, "persons"), Count(coverage, "eligible"), null, null);
        foreach (var share in Parts(root.Required("positivity"), ChangeMeasure.Positivity)) yield return share;
        foreach (var row in root.Required("refuted").Items("groups"))
        {
            if (By(row.Text("grouping")) is { } by) yield return Share(by, row.Text("level") ?? "", ChangeMeasure.RefutedPerValidTest, row.Required("rate"));
        }

        foreach (var share in Parts(root.Required("invalidRuns"), ChangeMeasure.InvalidRuns)) yield return share;
    }

    private static IEnumerable<SnapshotShare> Parts(FindingsNode findings, ChangeMeasure measure)
    {
        foreach (var row in findings.Items("sites")) yield return Share(Grouping.Site, row.Text("level") ?? "", measure, row.Required("share"));
        foreach (var row in findings.Items("lots")) yield return Share(Grouping.Lot, row.Text("level") ?? "", measure, row.Required("share"));
    }

    private static Grouping? By(string? word) => word switch
    {
        "site" => Grouping.Site,
        "lot" => Grouping.Lot,
        _ => null,
    };

    private static SnapshotShare Share(Grouping by, string level, ChangeMeasure measure, FindingsNode share)
    {
        var (events, trials) = (Count(share, "events"), Count(share, "trials"));
        if (events > trials) throw new FindingsNode.MissingException("a share with no more events than trials");
        var effect = share.Number("designEffect");
        // No design effect is larger than the runs are many, but for the correction for few clusters.
        if (effect < 0 || effect > Math.Max(1, 2.0 * (trials ?? MostEffect))) throw new FindingsNode.MissingException("designEffect");
        return new(by, level, measure, events, trials, effect, share.Count("clusters"));
    }

    private static long? Count(FindingsNode node, string name)
    {
        if (node.Count(name) is { } count) return count;
        return node.True(name + "Hidden") ? null : throw new FindingsNode.MissingException(name);
    }
}
