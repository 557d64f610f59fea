using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Detection;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

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
        // The names stand where no curve runs: low on the right where all rise early, else high on the left.
        var early = Sizes.All(one => findings.Rows.Where(row => row.Measure == measure && row.Size == one.Size && row.Times >= 5).All(row => row.Chance is null or > 0.5));
        var (sample, height) = early ? (4.3, 0.36) : (1.06, 0.96);
        foreach (var (size, name, tone, dashed) in Sizes)
        {
            var rows = findings.Rows.Where(row => row.Measure == measure && row.Size == size && row.Chance is not null).ToList();
            if (rows.Count < 2 || !taken.Add(rows[0].Trials)) continue;
            marks.Add(new LineMark([.. rows.Select(row => (row.Times, row.Chance!.Value))], tone, 2.5, dashed));
            foreach (var row in rows.Where(row => row.Times is 2 or 5 or 10 or 20)) marks.Add(new DotMark(row.Times, row.Chance!.Value, tone));
            var label = $"{name}, {rows[0].Trials.ToString("N0", CultureInfo.InvariantCulture)} {trials}";
            marks.Add(new LineMark([(sample, height), (sample * 1.2, height)], tone, 2.5, dashed));
            marks.Add(new LabelMark(sample * 1.22, height, label, LabelSide.Right, tone, Strong: true));
            height -= 0.09;
            if (rows.Find(row => row.Times == 5) is { Chance: { } five }) said.Add($"{label}: {Rounding.Print(Cell.Number(five), Unit.Proportion)} at five times");
        }

        if (said.Count == 0) yield break;
        double[] places = [1, 2, 3, 5, 10, 20];
        yield return new Chart(
            "detection-" + measure,
            $"Chance that a faulty lot is flagged by its {what}",
            (Caption)$"Where the curves are low, a faulty lot is mostly missed. To the right, a lot with more {what}; up, the chance that the rule flags it."
            + new Sentence("Dots: {0}, {1}, {2} and {3} times the others' rate.", Caption.Drawn(2), Caption.Drawn(5), Caption.Drawn(10), Caption.Drawn(20)) + "Dashed: a small lot.",
            $"Curves that rise from the chance of a false flag at 1 time the others' rate. {string.Join("; ", said)}.",
            "detection",
            new Axis("times the others' rate", 1, to, [.. places.Where(place => place <= to).Select(place => new Tick(place, place.ToString("0", CultureInfo.InvariantCulture)))], AxisScale.Logarithmic),
            new Axis("", 0, 1.04, Ticks.PerCent(1)),
            marks.ToImmutable(), 300);
    }
}
