using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Refuted;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Prevalence;

namespace ScreenStats.Evaluation.Expected;

/// <summary>What is stated of each device against what was seen of it.</summary>
internal static class ExpectedAnalysis
{
    /// <summary>Compares each device of the program file with the runs of its lots.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="people">Sums over people.</param>
    /// <param name="settings">What the program file says.</param>
    /// <returns>The findings.</returns>
    /// <remarks>
    /// The comparison is made on the specificity scale: refuted per valid test, with every positive run without a conclusion taken as
    /// not refuted and as refuted, against 1 - stated specificity, by the three-way rule of <see cref="SpecificityComparison"/>. A
    /// prevalence corrected by the device's own accuracy (Rogan-Gladen, widened by the design effect of its positivity) is shown beside it, and
    /// cannot judge that accuracy: it was computed from it. A lot belongs to a device by <see cref="DeviceRule"/>.
    /// </remarks>
    public static ExpectedFindings Of(Tally tally, PersonSums people, ProgramSettings settings)
    {
        var lots = tally.Cells.Screens.ToLookup(cell => cell.Lot, StringComparer.Ordinal);
        var devices = settings.Screens.Select(screen => Of(
            screen, lots.Where(lot => ReferenceEquals(DeviceRule.Of(lot.Key, settings.Screens), screen)).SelectMany(lot => lot),
            tally, people, settings)).ToImmutableArray();
        var prevalence = settings.Prevalence;
        var curves = devices.SelectMany(device => device.Curve.Select(point => new CurveRow(device.Device, point))).ToImmutableArray();
        var findings = new ExpectedFindings(
            prevalence?.Value, prevalence?.Lower, prevalence?.Upper, prevalence?.Source ?? "", devices,
            ExpectedTables.Table(devices), ExpectedTables.Curve(curves), []);
        return findings with { Sentences = ExpectedSentences.Of(findings) };
    }

    private static DeviceFinding Of(ScreenSettings screen, IEnumerable<ScreenCell> cells, Tally tally, PersonSums people, ProgramSettings settings)
    {
        var runs = cells.ToList();
        var counts = RunCounts.Of(runs);
        var confidence = settings.Report.Confidence;
        var lots = runs.Select(cell => cell.Lot).Distinct(StringComparer.Ordinal).Order(Levels.Order).ToImmutableArray();
        var sensitivity = screen.Sensitivity?.Statement();
        var specificity = screen.Specificity?.Statement();
        var rate = RefutedAnalysis.Rate(runs, PersonsOf(lots, runs.Sum(cell => cell.Runs), tally, people), confidence);
        var (compatibility, explanation, stated) = Compare(counts, rate, specificity, confidence);
        var corrected = CorrectedPrevalence(Positivity(runs, people, confidence), sensitivity, specificity, confidence);
        var expected = new ExpectedValues(sensitivity, specificity, settings.Prevalence, confidence);
        var positivityBelow = specificity is not null && counts.ValidTests > 0
            && (double)counts[Outcome.Positive] / counts.ValidTests < 1 - specificity.Value;
        return new DeviceFinding(
            screen.Name, screen.Source, lots, Stated(screen.Sensitivity, sensitivity, confidence), Stated(screen.Specificity, specificity, confidence),
            counts.ValidTests, counts[Outcome.Positive], counts.Confirmed, counts.Refuted, counts.PositivesWithoutConclusion,
            rate, counts.ValidTests == 0 ? null : (double)(counts.Refuted + counts.PositivesWithoutConclusion) / counts.ValidTests,
            stated?.StatedFalsePositiveRate, stated?.StatedInterval.Lower, stated?.StatedInterval.Upper,
            compatibility, explanation, positivityBelow, corrected,
            expected.Positive(false), expected.Positive(true), expected.Negative(false), expected.Negative(true),
            expected.Curve(), expected.Places(corrected));
    }

    /// <summary>People can be summed only where the device took every run, or has one lot.</summary>
    private static Statistics.Clusters.ClusterSums? PersonsOf(ImmutableArray<string> lots, long runs, Tally tally, PersonSums people)
    {
        if (runs == tally.Cells.Screens.Sum(cell => cell.Runs)) return people.Sums(PersonScope.Program, PersonMeasure.Refuted);
        return lots.Length == 1 ? people.Sums(PersonScope.Lot, PersonMeasure.Refuted, lots[0]) : null;
    }

    private static (Compatibility Outcome, string Explanation, SpecificityFinding? Stated) Compare(
        RunCounts counts, ProportionFinding rate, AccuracyStatement? specificity, double confidence)
    {
        if (specificity is null) return (Compatibility.NotJudged, "no specificity is stated for this device", null);
        var finding = SpecificityComparison.Of(
            counts.Refuted, counts.PositivesWithoutConclusion, counts.ValidTests, rate.DesignEffect, rate.Clusters ?? 0, specificity, confidence);
        if (counts.ValidTests == 0) return (Compatibility.NotJudged, "there is no valid test of this device", finding);
        return finding.Outcome switch
        {
            SpecificityOutcome.Compatible => (Compatibility.Compatible,
                "the refuted positives neither exceed nor fall short of what the stated specificity allows; this is no proof that it holds", finding),
            SpecificityOutcome.NotCompatible when finding.MoreThanStated => (Compatibility.NotCompatible,
                "more positives were refuted than the stated specificity allows, whatever the missing results would have been", finding),
            SpecificityOutcome.NotCompatible => (Compatibility.NotCompatible,
                "fewer positives were refuted than the stated specificity lets expect, whatever the missing results would have been", finding),
            _ => (Compatibility.CannotTell, "the answer hangs on positives without a conclusive confirmatory result", finding),
        };
    }

    private static EstimateFinding CorrectedPrevalence(
        ProportionFinding positivity, AccuracyStatement? sensitivity, AccuracyStatement? specificity, double confidence)
    {
        if (sensitivity is null || specificity is null) return EstimateFinding.Undefined(ExpectedValues.NotStated);
        if (positivity.Trials == 0) return EstimateFinding.Undefined("there is no valid test of this device");
        var effect = VarianceFactor.Of(positivity, confidence);
        return EstimateFinding.Of(RoganGladen.Estimate(positivity.Events, positivity.Trials, sensitivity, specificity, confidence, effect).ToEstimate());
    }

    /// <summary>The device's positivity with its design effect, over people of the whole program as in the table of true prevalence.</summary>
    private static ProportionFinding Positivity(IEnumerable<ScreenCell> runs, PersonSums people, double confidence)
    {
        var counter = new ClusterCounter();
        foreach (var cell in runs.Where(cell => cell.Outcome.IsValidTest())) counter.Add(cell.Site, cell.Day, cell.Runs, cell.Outcome == Outcome.Positive ? cell.Runs : 0);
        return counter.Proportion(confidence, people.Sums(PersonScope.Program, PersonMeasure.Positivity));
    }

    private static StatedFigure? Stated(StatedAccuracy? stated, AccuracyStatement? statement, double confidence)
    {
        if (stated is null || statement is null) return null;
        var interval = statement.IntervalAt(confidence);
        return new StatedFigure(stated.Value, interval.Lower, interval.Upper, stated.Successes, stated.Trials, stated.TakenAsExact);
    }
}
