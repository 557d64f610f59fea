using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Evaluation.Kits;

/// <summary>The screening devices of one program, side by side.</summary>
internal static class KitAnalysis
{
    /// <summary>Compares the devices of the program file by their lots' runs.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="people">Sums over people.</param>
    /// <param name="settings">What the program file says.</param>
    /// <param name="flaggedLots">Lots that are flagged: the differences are also taken without them.</param>
    /// <returns>The findings.</returns>
    /// <remarks>
    /// The plain difference has Newcombe's limits, of each device's Wilson limits: the unwidened ones, and those widened by its own design
    /// effect (<see cref="ProportionDifference.SquareAndAdd"/>). Devices are not randomised to people, so the difference is also taken within the site-weeks that
    /// used both (<see cref="StratifiedDifference"/>): what sites and weeks differ by drops out, and its limits are widened for people
    /// only. Sums over people are kept for the whole program, not by device; their design effect there stands for each device's.
    /// </remarks>
    public static KitFindings Of(Tally tally, PersonSums people, ProgramSettings settings, IReadOnlyCollection<string> flaggedLots)
    {
        var confidence = settings.Report.Confidence;
        var counted = new Dictionary<ScreenSettings, (KitCounts All, KitCounts Unflagged)>(ReferenceEqualityComparer.Instance);
        var (withoutDevice, flagged) = (0L, ImmutableArray.CreateBuilder<string>());
        foreach (var lot in tally.Cells.Screens.GroupBy(cell => cell.Lot, StringComparer.Ordinal).OrderBy(lot => lot.Key, Levels.Order))
        {
            if (DeviceRule.Of(lot.Key, settings.Screens) is not { } device)
            {
                withoutDevice += lot.Sum(cell => cell.Runs);
                continue;
            }

            if (!counted.TryGetValue(device, out var counts)) counted.Add(device, counts = (new KitCounts(), new KitCounts()));
            var isFlagged = flaggedLots.Contains(lot.Key);
            if (isFlagged) flagged.Add(lot.Key);
            foreach (var cell in lot)
            {
                counts.All.Add(cell);
                if (!isFlagged) counts.Unflagged.Add(cell);
            }
        }

        var kits = settings.Screens.Where(counted.ContainsKey)
            .Select(device => (Finding: Finding(device.Name, counted[device].All, people, confidence), counted[device].All, counted[device].Unflagged)).ToList();
        var contrasts = ImmutableArray.CreateBuilder<KitContrast>();
        for (var first = 0; first < kits.Count; first++)
        {
            for (var second = first + 1; second < kits.Count; second++)
            {
                var (a, b) = (kits[first], kits[second]);
                var anyFlagged = flagged.Any(lot => a.Finding.Lots.Contains(lot) || b.Finding.Lots.Contains(lot));
                foreach (var measure in KitCounts.Measures)
                {
                    var contrast = Contrast(a.Finding, b.Finding, measure, a.All[measure], b.All[measure], people, confidence);
                    contrasts.Add(!anyFlagged ? contrast : contrast with
                    {
                        CrudeWithoutFlaggedLots = Differences.Crude(Share(a.Unflagged, measure, people, confidence), Share(b.Unflagged, measure, people, confidence)),
                        WithinWithoutFlaggedLots = Differences.Within(a.Unflagged[measure], b.Unflagged[measure], people.Sums(PersonScope.Program, measure), confidence),
                    });
                }
            }
        }

        ImmutableArray<KitFinding> devices = [.. kits.Select(kit => kit.Finding)];
        var weeks = kits.SelectMany(kit => kit.All[PersonMeasure.InvalidRuns].Cells.Select(cell => cell.Key)).GroupBy(key => key).Select(group => group.Count()).ToList();
        var all = contrasts.ToImmutable();
        var findings = new KitFindings(
            devices, flagged.ToImmutable(), withoutDevice, weeks.Count, weeks.Count(count => count > 1), all,
            KitTables.Kits([.. devices.SelectMany(device => KitCounts.Measures.Select(measure => new KitMeasureRow(device.Device, measure, device.Of(measure))))]),
            KitTables.Contrasts([.. all.SelectMany(Rows)]), []);
        return findings with { Sentences = KitSentences.Of(findings) };
    }

    private static IEnumerable<KitContrastRow> Rows(KitContrast contrast)
    {
        yield return new(contrast, KitTables.NoAdjustment, contrast.Crude);
        yield return new(contrast, KitTables.SiteWeek, contrast.Within);
        if (contrast.CrudeWithoutFlaggedLots is { } crude) yield return new(contrast, KitTables.NoAdjustment + KitTables.WithoutFlaggedLots, crude);
        if (contrast.WithinWithoutFlaggedLots is { } within) yield return new(contrast, KitTables.SiteWeek + KitTables.WithoutFlaggedLots, within);
    }

    private static ProportionFinding Share(KitCounts counts, PersonMeasure measure, PersonSums people, double confidence) =>
        counts[measure].Proportion(confidence, people.Sums(PersonScope.Program, measure)).Because(measure switch
        {
            PersonMeasure.InvalidRuns => "there are no runs",
            PersonMeasure.PredictiveValue => "no positive run was confirmed or refuted",
            _ => "there are no valid tests",
        });

    private static KitFinding Finding(string name, KitCounts counts, PersonSums people, double confidence) => new(
        name, [.. counts.Lots], counts.Runs,
        Share(counts, PersonMeasure.Positivity, people, confidence), Share(counts, PersonMeasure.InvalidRuns, people, confidence),
        Share(counts, PersonMeasure.Refuted, people, confidence), Share(counts, PersonMeasure.PredictiveValue, people, confidence));

    private static KitContrast Contrast(
        KitFinding first, KitFinding second, PersonMeasure measure, ClusterCounter firstCounts, ClusterCounter secondCounts, PersonSums people, double confidence) => new(
        $"{first.Device}|{second.Device}|{Model.LevelNames.Of(measure)}", first.Device, second.Device, measure, first.Of(measure), second.Of(measure),
        Differences.Crude(first.Of(measure), second.Of(measure)), Differences.Within(firstCounts, secondCounts, people.Sums(PersonScope.Program, measure), confidence), null, null);
}
