using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.FollowThrough;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Pages.FollowThrough;

/// <summary>Pictures of follow-up.</summary>
internal static class FollowUpFigures
{
    /// <summary>What became of positive and of inconclusive runs; nothing where none was due.</summary>
    public static ImmutableArray<Chart> Of(Findings findings)
    {
        var rows = new[] { ("positive", findings.FollowUp.Positive), ("inconclusive", findings.FollowUp.Inconclusive) }
            .Where(row => findings.Disclosure is not { } disclosure || Names.All(name => disclosure.Shows(row.Item2, name)))
            .Select(row => new StackRow(row.Item1, Parts(row.Item2)) { Settled = ChartPoints.Of(row.Item2.FollowThrough, findings.Disclosure).FirstOrDefault() })
            .ToImmutableArray();
        if (rows.All(row => row.Parts.Sum(part => part.Count) == 0)) return [];
        return
        [
            StackChart.Of(
                new ChartFrame(
                    "follow-up",
                    "What became of positive and inconclusive runs",
                    See(findings.FollowUp.Positive) + "What lies right of these parts is not settled: it may be either.",
                    string.Join(" ", rows.Select(row => $"Of {Print(row.Parts.Sum(part => part.Count))} {row.Name} runs: "
                        + string.Join(", ", row.Parts.Select(part => $"{Print(part.Count)} {part.Name}")) + ".")),
                    "follow-up"),
                rows),
        ];
    }

    private static Caption See(FollowUpFinding positive) => positive.Due == 0 ? "There was no positive run: shown is what became of the inconclusive ones." : new Sentence(
        "{0} of {1} positive runs are settled, confirmed or refuted: {2} (limits {3} to {4}).",
        new("followUp.positive.conclusive", Cell.Count(positive.Conclusive), Unit.Count), new("followUp.positive.due", Cell.Count(positive.Due), Unit.Count),
        Share("estimate", positive.FollowThrough.Estimate), Share("widenedLower", positive.FollowThrough.WidenedLower), Share("widenedUpper", positive.FollowThrough.WidenedUpper));

    private static FigureReference Share(string name, double? value) => new("followUp.positive.followThrough." + name, Cell.NumberOr(value, "no run was due"), Unit.Proportion);

    private static readonly string[] Names = [nameof(FollowUpFinding.Due), nameof(FollowUpFinding.Confirmed), nameof(FollowUpFinding.Refuted), nameof(FollowUpFinding.Unresolved), nameof(FollowUpFinding.Pending), nameof(FollowUpFinding.Unverified)];

    private static ImmutableArray<StackPart> Parts(FollowUpFinding finding) =>
    [
        new("confirmed", finding.Confirmed, Tone.Main),
        new("refuted", finding.Refuted, Tone.Alert),
        new("unresolved", finding.Unresolved, Tone.Open),
        new("pending", finding.Pending, Tone.Waiting),
        new("unverified", finding.Unverified, Tone.Unknown),
    ];

    private static string Print(long count) => count.ToString("N0", CultureInfo.InvariantCulture);
}
