using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Detection;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts;

namespace ScreenStats.Reporting.Pages.Detection;

/// <summary>Pictures of what the flag rule would see.</summary>
internal static class DetectionFigures
{
    private static readonly (string Size, string Name, Tone Tone, bool Dashed)[] Sizes =
    [
        ("ninetieth-percentile", "large lot", Tone.Second, false), ("median", "middle lot", Tone.Main, false), ("tenth-percentile", "small lot", Tone.Main, true),
    ];

    /// <summary>The chance of a flag by size of fault, one picture for each measure.</summary>
    public static ImmutableArray<Chart> Of(Findings findings) =>
        [.. Of(findings.Detection, "refuted", "refuted positives", "tests"), .. Of(findings.Detection, "invalid", "inconclusive and invalid runs", "runs")];

    private static IEnumerable<Chart> Of(DetectionFindings findings, string measure, string what, string trials)
    {
        var marks = ImmutableArray.CreateBuilder<Mark>();
        var said = new List<string>();
        var to = findings.Rows.IsEmpty ? 1 : findings.Rows.Max(row => row.Times);
        var taken = new HashSet<long>();
        var height = 0.86;
        foreach (var (size, name, tone, dashed) in Sizes)
        {
            var rows = findings.Rows.Where(row => row.Measure == measure && row.Size == size && row.Chance is not null).ToList();
            if (rows.Count < 2 || !taken.Add(rows[0].Trials)) continue;
            marks.Add(new LineMark([.. rows.Select(row => (row.Times, row.Chance!.Value))], tone, 2.5, dashed));
            foreach (var row in rows.Where(row => row.Times is 2 or 5 or 10 or 20)) marks.Add(new DotMark(row.Times, row.Chance!.Value, tone));
            var label = $"{name}, {rows[0].Trials.ToString("N0", CultureInfo.InvariantCulture)} {trials}";
            var (at, side) = Place(rows, height, to, label);
            marks.Add(new LabelMark(at, height, label, side, tone, Strong: true));
            height -= 0.3;
            if (rows.Find(row => row.Times == 5) is { Chance: { } five }) said.Add($"{label}: {Rounding.Print(Cell.Number(five), Unit.Proportion)} at five times");
        }

        if (said.Count == 0) yield break;
        double[] places = [1, 2, 3, 5, 10, 20];
        yield return new Chart(
            "detection-" + measure,
            $"Chance that a faulty lot is flagged by its {what}",
            $"To the right, a lot with more {what}; up, the chance that the rule flags it. Where a curve is low, the fault is mostly missed. Dots: 2, 5, 10 and 20 times the others' rate. Dashed: a small lot.",
            $"Curves that rise from the chance of a false flag at 1 time the others' rate. {string.Join("; ", said)}.",
            "detection",
            new Axis("times the others' rate", 1, to, [.. places.Where(place => place <= to).Select(place => new Tick(place, place.ToString("0", CultureInfo.InvariantCulture)))], AxisScale.Logarithmic),
            new Axis("", 0, 1.04, Ticks.PerCent(1)),
            marks.ToImmutable(), 300);
    }

    /// <summary>Beside the curve at a height: to its right where there is room, else to its left.</summary>
    private static (double At, LabelSide Side) Place(List<DetectionRow> rows, double height, double to, string label)
    {
        var at = rows[^1].Times;
        for (var index = 1; index < rows.Count; index++)
        {
            var (low, high) = (rows[index - 1], rows[index]);
            if (!(high.Chance >= height)) continue;
            var share = Math.Clamp((height - low.Chance!.Value) / (high.Chance!.Value - low.Chance.Value), 0, 1);
            at = low.Times * Math.Pow(high.Times / low.Times, share);
            break;
        }

        var width = Math.Pow(to, (ChartText.Width(label) + 16) / (Chart.Width - 60));
        return at * width <= to ? (at * 1.03, LabelSide.Right) : (at / 1.03, LabelSide.Left);
    }
}
