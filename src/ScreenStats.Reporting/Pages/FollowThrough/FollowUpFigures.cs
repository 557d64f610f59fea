using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.FollowThrough;
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
            .Select(row => (row.Item1, Parts(row.Item2)))
            .ToImmutableArray();
        if (rows.All(row => row.Item2.Sum(part => part.Count) == 0)) return [];
        return
        [
            StackChart.Of(
                new ChartFrame(
                    "follow-up",
                    "What became of positive and inconclusive runs",
                    "Runs that called for a confirmatory test, by what it said. See how much is settled (confirmed and refuted) and how much is not.",
                    string.Join(" ", rows.Select(row => $"Of {Print(row.Item2.Sum(part => part.Count))} {row.Item1} runs: "
                        + string.Join(", ", row.Item2.Select(part => $"{Print(part.Count)} {part.Name}")) + ".")),
                    "follow-up"),
                rows),
        ];
    }

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
