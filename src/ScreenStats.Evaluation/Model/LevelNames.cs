using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Accuracy;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Expected;
using ScreenStats.Evaluation.PredictiveValues;
using ScreenStats.Evaluation.Yield;

namespace ScreenStats.Evaluation.Model;

/// <summary>The words for levels in tables: lower case, joined by hyphens, the same in every culture.</summary>
public static class LevelNames
{
    /// <summary>The word of an outcome.</summary>
    /// <param name="outcome">The outcome.</param>
    /// <returns>For instance <c>inconclusive</c>.</returns>
    public static string Of(Outcome outcome) => outcome switch
    {
        Outcome.Negative => "negative",
        Outcome.Positive => "positive",
        Outcome.Inconclusive => "inconclusive",
        Outcome.Invalid => "invalid",
        _ => throw Unknown(outcome),
    };

    /// <summary>The word of a specimen; <see cref="Levels.None"/> where none is recorded.</summary>
    /// <param name="specimen">The specimen.</param>
    /// <returns>For instance <c>nasal</c>.</returns>
    public static string Of(Specimen specimen) => specimen switch
    {
        Specimen.NotRecorded => Levels.None,
        Specimen.Nasal => "nasal",
        Specimen.Nasopharyngeal => "nasopharyngeal",
        Specimen.Throat => "throat",
        Specimen.Saliva => "saliva",
        Specimen.Other => "other",
        _ => throw Unknown(specimen),
    };

    /// <summary>The word of who collected; <see cref="Levels.None"/> where it is not recorded.</summary>
    /// <param name="collection">Who collected.</param>
    /// <returns><c>supervised</c> or <c>self</c>.</returns>
    public static string Of(CollectedBy collection) => collection switch
    {
        CollectedBy.NotRecorded => Levels.None,
        CollectedBy.Supervised => "supervised",
        CollectedBy.Self => "self",
        _ => throw Unknown(collection),
    };

    /// <summary>The word of a finding of conduct.</summary>
    /// <param name="kind">The finding.</param>
    /// <returns>For instance <c>expired-lot</c>.</returns>
    public static string Of(ConductKind kind) => kind switch
    {
        ConductKind.ExpiredLot => "expired-lot",
        ConductKind.ReadOutsideWindow => "read-outside-window",
        ConductKind.BeyondKitContents => "beyond-kit-contents",
        ConductKind.WithinIsolation => "within-isolation",
        ConductKind.ReadingNotRecorded => "reading-not-recorded",
        _ => throw Unknown(kind),
    };

    /// <summary>The word of an occasion for control swabs.</summary>
    /// <param name="trigger">The occasion.</param>
    /// <returns>For instance <c>new-lot</c>.</returns>
    public static string Of(ControlTrigger trigger) => trigger switch
    {
        ControlTrigger.NewLot => "new-lot",
        ControlTrigger.NewOperator => "new-operator",
        ControlTrigger.NewSite => "new-site",
        ControlTrigger.Daily => "daily",
        _ => throw Unknown(trigger),
    };

    /// <summary>The word of what a control swab should show.</summary>
    /// <param name="expectation">The expectation.</param>
    /// <returns><c>negative</c> or <c>positive</c>.</returns>
    public static string Of(ControlExpectation expectation) => expectation switch
    {
        ControlExpectation.Negative => "negative",
        ControlExpectation.Positive => "positive",
        _ => throw Unknown(expectation),
    };

    /// <summary>The word of an export.</summary>
    /// <param name="export">The export.</param>
    /// <returns>For instance <c>screening</c>.</returns>
    public static string Of(ExportKind export) => export switch
    {
        ExportKind.Screening => "screening",
        ExportKind.Confirmatory => "confirmatory",
        ExportKind.Controls => "controls",
        ExportKind.Headcount => "headcount",
        ExportKind.Sites => "sites",
        _ => throw Unknown(export),
    };

    /// <summary>The word of an entry of the ledger.</summary>
    /// <param name="entry">The entry.</param>
    /// <returns>For instance <c>set-aside</c>.</returns>
    public static string Of(LedgerEntry entry) => entry switch
    {
        LedgerEntry.SetAside => "set-aside",
        LedgerEntry.Duplicate => "duplicate",
        LedgerEntry.ControlRun => "control-run",
        LedgerEntry.KeptOutSymptomatic => "kept-out-symptomatic",
        LedgerEntry.KeptOutExposed => "kept-out-exposed",
        LedgerEntry.Counted => "counted",
        _ => throw Unknown(entry),
    };

    /// <summary>The word of a breakdown, as it stands in the column <c>by</c>; that of a period is told by <c>period_start</c>.</summary>
    /// <param name="grouping">The breakdown.</param>
    /// <returns>For instance <c>site</c>.</returns>
    public static string Of(Grouping grouping) => grouping switch
    {
        Grouping.Program or Grouping.Period => "program",
        Grouping.Site or Grouping.SiteAndPeriod => "site",
        Grouping.Lot => "lot",
        Grouping.Operator => "operator",
        Grouping.Specimen => "specimen",
        Grouping.Collection => "collection",
        Grouping.Kit => "kit",
        _ => throw Unknown(grouping),
    };

    /// <summary>The words of clusters.</summary>
    /// <param name="level">What trials are clustered in.</param>
    /// <returns>For instance <c>site-weeks</c>.</returns>
    public static string Of(ClusterLevel level) => level switch
    {
        ClusterLevel.Persons => "persons",
        ClusterLevel.Sites => "sites",
        ClusterLevel.SiteWeeks => "site-weeks",
        _ => throw Unknown(level),
    };

    /// <summary>The word of a flag; empty for none.</summary>
    /// <param name="flag">The flag.</param>
    /// <returns>Empty, <c>refuted</c>, <c>invalid</c> or <c>refuted-and-invalid</c>.</returns>
    public static string Of(Flag flag) => flag switch
    {
        Flag.None => "",
        Flag.Refuted => "refuted",
        Flag.Invalid => "invalid",
        Flag.Refuted | Flag.Invalid => "refuted-and-invalid",
        _ => throw Unknown(flag),
    };

    /// <summary>The word of a waiting time.</summary>
    /// <param name="kind">Which waiting time.</param>
    /// <returns><c>run-to-specimen</c> or <c>specimen-to-report</c>.</returns>
    public static string Of(DelayKind kind) => kind switch
    {
        DelayKind.RunToSpecimen => "run-to-specimen",
        DelayKind.SpecimenToReport => "specimen-to-report",
        _ => throw Unknown(kind),
    };

    /// <summary>The word of what a predictive value stands on.</summary>
    /// <param name="basis">The basis.</param>
    /// <returns>For instance <c>observed</c>.</returns>
    public static string Of(PredictiveValueBasis basis) => basis switch
    {
        PredictiveValueBasis.Observed => "observed",
        PredictiveValueBasis.ObservedWithoutFlaggedLots => "observed-without-flagged-lots",
        PredictiveValueBasis.Expected => "expected",
        _ => throw Unknown(basis),
    };

    /// <summary>The word of a predictive value.</summary>
    /// <param name="measure">Which predictive value.</param>
    /// <returns>For instance <c>positive-predictive-value</c>.</returns>
    public static string Of(PredictiveValueMeasure measure) => measure switch
    {
        PredictiveValueMeasure.PositivePredictiveValue => "positive-predictive-value",
        PredictiveValueMeasure.NegativePredictiveValue => "negative-predictive-value",
        _ => throw Unknown(measure),
    };

    /// <summary>The word of a comparison with a stated specificity.</summary>
    /// <param name="outcome">Its outcome.</param>
    /// <returns>For instance <c>cannot-tell</c>.</returns>
    public static string Of(Compatibility outcome) => outcome switch
    {
        Compatibility.NotJudged => "not-judged",
        Compatibility.Compatible => "compatible",
        Compatibility.NotCompatible => "not-compatible",
        Compatibility.CannotTell => "cannot-tell",
        _ => throw Unknown(outcome),
    };

    /// <summary>The word of a measure of yield.</summary>
    /// <param name="measure">What for what.</param>
    /// <returns>For instance <c>runs-per-case</c>.</returns>
    public static string Of(YieldMeasure measure) => measure switch
    {
        YieldMeasure.RunsPerCase => "runs-per-case",
        YieldMeasure.TestsPerConfirmedRun => "tests-per-confirmed-run",
        YieldMeasure.PersonsPerCase => "persons-per-case",
        YieldMeasure.TestsPerRefutedRun => "tests-per-refuted-run",
        _ => throw Unknown(measure),
    };

    /// <summary>The word of what is counted of each device.</summary>
    /// <param name="measure">Which trials and events.</param>
    /// <returns>For instance <c>refuted-per-valid-test</c>.</returns>
    public static string Of(PersonMeasure measure) => measure switch
    {
        PersonMeasure.Positivity => "positivity",
        PersonMeasure.InvalidRuns => "invalid-runs",
        PersonMeasure.Refuted => "refuted-per-valid-test",
        PersonMeasure.PredictiveValue => "positive-predictive-value",
        _ => throw Unknown(measure),
    };

    /// <summary>The word of why a specimen was taken; <see cref="Levels.None"/> where it is not recorded.</summary>
    /// <param name="reason">Why.</param>
    /// <returns>For instance <c>follow-up</c>.</returns>
    public static string Of(SpecimenReason reason) => reason switch
    {
        SpecimenReason.NotRecorded => Levels.None,
        SpecimenReason.FollowUp => "follow-up",
        SpecimenReason.Audit => "audit",
        SpecimenReason.Other => "other",
        _ => throw Unknown(reason),
    };

    /// <summary>The word of what a figure of accuracy stands on.</summary>
    /// <param name="basis">The basis.</param>
    /// <returns>For instance <c>reweighted</c>.</returns>
    public static string Of(AccuracyBasis basis) => basis switch
    {
        AccuracyBasis.None => "none",
        AccuracyBasis.OneDraw => "one-draw",
        AccuracyBasis.Reweighted => "reweighted",
        AccuracyBasis.Unweighted => "unweighted",
        AccuracyBasis.OneSidedLimit => "one-sided-limit",
        AccuracyBasis.NoAssumption => "no-assumption",
        _ => throw Unknown(basis),
    };

    /// <summary>The word of how the negative runs of a sampling stratum are known.</summary>
    /// <param name="origin">How.</param>
    /// <returns>For instance <c>stated-number</c>.</returns>
    public static string Of(StratumOrigin origin) => origin switch
    {
        StratumOrigin.WholeProgram => "whole-program",
        StratumOrigin.Site => "site",
        StratumOrigin.Lot => "lot",
        StratumOrigin.Patterns => "patterns",
        StratumOrigin.StatedNumber => "stated-number",
        StratumOrigin.Unexplained => "unexplained",
        _ => throw Unknown(origin),
    };

    /// <summary>The word of whether the data refute a stated specificity.</summary>
    /// <param name="outcome">The outcome.</param>
    /// <returns>For instance <c>too-low</c>.</returns>
    public static string Of(ClaimOutcome outcome) => outcome switch
    {
        ClaimOutcome.NotStated => "not-stated",
        ClaimOutcome.NotRefuted => "not-refuted",
        ClaimOutcome.TooLow => "too-low",
        ClaimOutcome.TooHigh => "too-high",
        _ => throw Unknown(outcome),
    };

    private static ArgumentOutOfRangeException Unknown(Enum value) => new(nameof(value), value, "Not a member of the enumeration.");
}
