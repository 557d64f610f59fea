using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.PredictiveValues;
using ScreenStats.Evaluation.Yield;

namespace ScreenStats.Evaluation.Shared;

/// <summary>The words that stand for choices in files, and the columns many tables share.</summary>
internal static class Words
{
    public static string Kind(DelayKind kind) => kind switch
    {
        DelayKind.RunToSpecimen => "run-to-specimen",
        DelayKind.SpecimenToReport => "specimen-to-report",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such waiting time."),
    };

    public static string Grouping(Grouping grouping) => grouping switch
    {
        Evaluation.Grouping.Program => "program",
        Evaluation.Grouping.Site => "site",
        Evaluation.Grouping.Lot => "lot",
        Evaluation.Grouping.Operator => "operator",
        _ => throw new ArgumentOutOfRangeException(nameof(grouping), grouping, "No table here is broken down by that."),
    };

    public static string Outcome(Outcome outcome) => outcome switch
    {
        Counting.Cubes.Outcome.Negative => "negative",
        Counting.Cubes.Outcome.Positive => "positive",
        Counting.Cubes.Outcome.Inconclusive => "inconclusive",
        Counting.Cubes.Outcome.Invalid => "invalid",
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "No such outcome."),
    };

    public static string Basis(PredictiveValueBasis basis) => basis switch
    {
        PredictiveValueBasis.Observed => "observed",
        PredictiveValueBasis.ObservedWithoutFlaggedLots => "observed-without-flagged-lots",
        PredictiveValueBasis.Expected => "expected",
        _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, "No such basis."),
    };

    public static string Measure(PredictiveValueMeasure measure) => measure switch
    {
        PredictiveValueMeasure.PositivePredictiveValue => "positive-predictive-value",
        PredictiveValueMeasure.NegativePredictiveValue => "negative-predictive-value",
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "No such predictive value."),
    };

    public static string Measure(YieldMeasure measure) => measure switch
    {
        YieldMeasure.RunsPerCase => "runs-per-case",
        YieldMeasure.TestsPerConfirmedRun => "tests-per-confirmed-run",
        YieldMeasure.PersonsPerCase => "persons-per-case",
        YieldMeasure.TestsPerRefutedRun => "tests-per-refuted-run",
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "No such measure."),
    };

    public static Column<TRow> By<TRow>(Func<TRow, Grouping> by) =>
        new("by", "By", Unit.Text, "How the program is divided.", row => Cell.Text(Grouping(by(row))));

    public static Column<TRow> Level<TRow>(Func<TRow, string> level) =>
        new("level", "Level", Unit.Text, "The part; empty for the whole program, (none) where nothing is recorded.", row =>
            level(row).Length == 0 ? Cell.Empty : Cell.Text(level(row)));
}
