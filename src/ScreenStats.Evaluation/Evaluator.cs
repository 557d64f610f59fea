using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Accuracy;
using ScreenStats.Evaluation.Alarms;
using ScreenStats.Evaluation.Answers;
using ScreenStats.Evaluation.Audits;
using ScreenStats.Evaluation.Bursts;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cautions;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Comparisons;
using ScreenStats.Evaluation.Completeness;
using ScreenStats.Evaluation.Conduct;
using ScreenStats.Evaluation.ControlCharts;
using ScreenStats.Evaluation.Controls;
using ScreenStats.Evaluation.Coverage;
using ScreenStats.Evaluation.Delays;
using ScreenStats.Evaluation.Detection;
using ScreenStats.Evaluation.Expected;
using ScreenStats.Evaluation.Flagging;
using ScreenStats.Evaluation.Flow;
using ScreenStats.Evaluation.FollowThrough;
using ScreenStats.Evaluation.IntervalCases;
using ScreenStats.Evaluation.InvalidRuns;
using ScreenStats.Evaluation.Kits;
using ScreenStats.Evaluation.Ledger;
using ScreenStats.Evaluation.LotRecording;
using ScreenStats.Evaluation.Lots;
using ScreenStats.Evaluation.LotTests;
using ScreenStats.Evaluation.Participation;
using ScreenStats.Evaluation.Persons;
using ScreenStats.Evaluation.Positivity;
using ScreenStats.Evaluation.PredictiveValues;
using ScreenStats.Evaluation.Refuted;
using ScreenStats.Evaluation.Repeats;
using ScreenStats.Evaluation.Retests;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Evaluation.Sites;
using ScreenStats.Evaluation.Specimens;
using ScreenStats.Evaluation.StandOuts;
using ScreenStats.Evaluation.Trends;
using ScreenStats.Evaluation.TruePrevalence;
using ScreenStats.Evaluation.WhatIf;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Yield;

namespace ScreenStats.Evaluation;

/// <summary>Turns counts into answers.</summary>
public static class Evaluator
{
    /// <summary>
    /// Evaluates a tally: every analysis in order, each given the results of earlier ones that it needs. Long ones that nothing waits for before
    /// the answers begin as soon as they can and run beside the others.
    /// </summary>
    /// <param name="tally">What was counted.</param>
    /// <param name="settings">What the program file says.</param>
    /// <param name="progress">Told in a few words what is evaluated or waited for; null for nobody. It may throw to end the evaluation.</param>
    /// <returns>The findings, the same for the same input in every culture.</returns>
    public static Findings Evaluate(Tally tally, ProgramSettings settings, IProgress<string>? progress = null) => Evaluate(tally, settings, progress, oneByOne: false);

    /// <summary>The same; one analysis after the other, where that is wanted.</summary>
    internal static Findings Evaluate(Tally tally, ProgramSettings settings, IProgress<string>? progress, bool oneByOne)
    {
        ArgumentNullException.ThrowIfNull(tally);
        ArgumentNullException.ThrowIfNull(settings);
        var confidence = settings.Report.Confidence;
        var slices = Slices.Of(tally);
        var sums = new PersonSums(tally);
        var lotsAndSites = new LotSiteTable(tally);
        var judgements = Judgements.Of(lotsAndSites.Counts, tally.Cells.HasConfirmatory, new PersonEffects(sums, lotsAndSites.Counts));

        using var beside = new SideWork(progress, oneByOne);
        var burstsFound = beside.Begin("bursts", () => BurstAnalysis.Of(tally));

        progress?.Report("rates");
        var ledger = LedgerAnalysis.Of(tally);
        var flow = FlowAnalysis.Of(tally, ledger, settings);
        var completeness = CompletenessAnalysis.Of(tally);
        var positivity = PositivityAnalysis.Of(tally, slices, sums, confidence);
        var invalidRuns = InvalidRunAnalysis.Of(tally, slices, sums, confidence);
        var persons = PersonAnalysis.Of(tally, sums, confidence);
        var participation = ParticipationAnalysis.Of(tally);
        var coverage = CoverageAnalysis.Of(tally, sums);
        progress?.Report("lots and sites");
        var lots = LotAnalysis.Of(lotsAndSites, judgements);
        var sites = SiteAnalysis.Of(lotsAndSites, judgements);
        List<string> FlaggedFor(Flag flag) => [.. lots.Where(lot => lot.Flag.HasFlag(flag)).Select(lot => lot.Lot)];
        var flagged = FlaggedFor(Flag.Refuted);
        var trendsFound = beside.Begin("trend", () => TrendAnalysis.Of(tally, settings, lots));
        var comparisonFound = beside.Begin("sites compared", () => ComparisonAnalysis.Of(tally, sums, settings, flagged, FlaggedFor(Flag.Invalid)));
        var alarmsFound = beside.Begin("alarms", () => AlarmAnalysis.Of(tally, settings, flagged));
        var controlChartsFound = beside.Begin("control charts", () => ControlChartAnalysis.Of(tally, settings, lots, sites));
        var within = new PlaceTestAnalysis(tally, sums, confidence);
        var lotTests = within.Lots();
        var siteTests = within.Sites([.. flagged, .. lotTests.Rows.Where(row => row is { Measure: "refuted", Material: true }).Select(row => row.Place)]);
        var standOuts = StandOutAnalysis.Of(lots, sites, lotTests, siteTests);
        var flags = new PlanOfFlags(lotsAndSites, judgements);
        var lotRecording = LotRecordingAnalysis.Of(tally, flags, confidence);
        var detection = DetectionAnalysis.Of(flags);
        var conduct = ConductAnalysis.Of(tally, sums, settings);
        var repeats = RepeatAnalysis.Of(tally, confidence);
        var controls = ControlAnalysis.Of(tally, settings);
        progress?.Report("follow-up and audits");
        var followUp = FollowUpAnalysis.Of(tally, settings);
        var delays = DelayAnalysis.Of(tally);
        var audits = AuditAnalysis.Of(tally, settings);
        var intervalCases = IntervalCaseAnalysis.Of(tally, confidence);
        var expected = ExpectedAnalysis.Of(tally, sums, settings);
        progress?.Report("predictive values");
        var predictiveValue = PredictiveValueAnalysis.Of(tally, sums, settings, flagged, expected);
        var refuted = RefutedAnalysis.Of(tally, sums, settings);
        var yield = YieldAnalysis.Of(tally, sums, settings);
        var truePrevalence = TruePrevalenceAnalysis.Of(tally, sums, settings);
        progress?.Report("accuracy");
        var kits = KitAnalysis.Of(tally, sums, settings, [.. lots.Where(lot => lot.Flag != Flag.None).Select(lot => lot.Lot)]);
        var retests = RetestAnalysis.Of(tally, settings);
        var specimens = SpecimenAnalysis.Of(tally, settings);
        var accuracy = AccuracyAnalysis.Of(tally, settings, positivity, kits, expected);
        progress?.Report("how often");
        var cadence = CadenceAnalysis.Of(tally, settings, flagged, accuracy);
        progress?.Report("what it is worth");
        var worth = WorthAnalysis.Of(tally, settings, cadence, yield, predictiveValue);
        progress?.Report("what if");
        var whatIf = WhatIfAnalysis.Of(settings, accuracy, cadence, onlyStated: settings.Report.SuppressBelow > 1);
        var bursts = burstsFound();
        var controlCharts = controlChartsFound();
        var alarms = alarmsFound();
        var comparison = comparisonFound();
        var trends = trendsFound();
        progress?.Report("answers");
        var answers = AnswerAnalysis.Of(tally.Cells.HasConfirmatory, lots, sites, conduct, controls, followUp, audits, accuracy, predictiveValue, expected, yield, comparison, trends, cadence, worth, alarms, tally.LastDay);
        var cautions = CautionAnalysis.Of(tally, settings, followUp, delays, audits, expected);

        return new Findings
        {
            Settings = settings,
            Source = tally,
            Span = new DataSpan
            {
                FirstDay = tally.FirstDay,
                LastDay = tally.LastDay,
                DataAsOf = tally.Cells.DataAsOf,
                ReportingLagHours = tally.Cells.ReportingLagHours,
                ReportingLagFromData = tally.Cells.ReportingLagFromData,
                Period = tally.Cells.Period,
                HasConfirmatory = tally.Cells.HasConfirmatory,
            },
            Ledger = ledger,
            Flow = flow,
            Completeness = completeness,
            Positivity = positivity,
            InvalidRuns = invalidRuns,
            Persons = persons,
            Participation = participation,
            Coverage = coverage,
            Lots = lots,
            Sites = sites,
            StandOuts = standOuts,
            LotTests = lotTests,
            SiteTests = siteTests,
            Comparison = comparison,
            LotRecording = lotRecording,
            Bursts = bursts,
            Detection = detection,
            Alarms = alarms,
            Conduct = conduct,
            Repeats = repeats,
            ControlCharts = controlCharts,
            Controls = controls,
            FollowUp = followUp,
            Delays = delays,
            Audits = audits,
            Accuracy = accuracy,
            IntervalCases = intervalCases,
            PredictiveValue = predictiveValue,
            Expected = expected,
            Refuted = refuted,
            Yield = yield,
            TruePrevalence = truePrevalence,
            Kits = kits,
            Retests = retests,
            Specimens = specimens,
            Trends = trends,
            Cadence = cadence,
            WhatIf = whatIf,
            Worth = worth,
            Answers = answers,
            Cautions = cautions,
        };
    }
}
