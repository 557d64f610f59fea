using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Cadence;

/// <summary>A program of people screened every so many days, with so many confirmed and refuted positives, and what its program file states.</summary>
internal static class CadenceSketch
{
    public static readonly CourseSettings Windows = new()
    {
        Kind = CourseKind.Windows,
        DetectableFrom = new StatedRange(2),
        DetectableTo = new StatedRange(12),
        InfectiousFrom = new StatedRange(3),
        InfectiousTo = new StatedRange(9),
    };

    /// <summary>Everything stated, nothing uncertain, all infections brought in.</summary>
    public static readonly CadenceSettings Exact = new()
    {
        Course = Windows,
        Sensitivity = new StatedAccuracy(0.6, null, null, null, null),
        Specificity = new StatedAccuracy(0.998, null, null, null, null),
        DelayDays = new StatedRange(0.5),
        Participation = new StatedRange(1),
        Incidence = new StatedRange(0.0005),
        BroughtIn = new StatedRange(1),
        FalseAlarmDays = new StatedRange(1.5),
        People = 200,
    };

    /// <summary>The same with ranges, and a share that spreads inside.</summary>
    public static readonly CadenceSettings Ranged = Exact with
    {
        Course = Windows with { DetectableTo = new StatedRange(12, 10, 14), InfectiousTo = new StatedRange(9, 8, 11), Symptoms = new SymptomSettings { Share = new StatedRange(0.4, 0.3, 0.5), OnsetDays = new StatedRange(4, 3.5, 4.5), Spread = new StatedRange(0.3) } },
        Sensitivity = new StatedAccuracy(0.6, null, null, 0.4, 0.8),
        Specificity = new StatedAccuracy(0.998, 998, 1000, null, null),
        RepeatedMisses = new StatedRange(0.2, 0.05, 0.5),
        Incidence = new StatedRange(0.0005, 0.0003, 0.0008),
        BroughtIn = new StatedRange(0.7, 0.5, 0.9),
        Worthwhile = 3,
    };

    public static Tally Program(int people = 40, int screens = 14, int everyDays = 7, int confirmed = 2, int refuted = 3, int unsettled = 0, bool confirmatory = true, string? faultyLot = null)
    {
        var builder = new TallyCellsBuilder();
        var positives = confirmed + refuted + unsettled;
        for (var person = 0; person < people; person++)
        {
            var name = "p" + person.ToString(System.Globalization.CultureInfo.InvariantCulture);
            var positive = person < positives;
            for (var screen = 0; screen < screens; screen++)
            {
                var last = positive && screen == screens - 1;
                var followUp = !last ? FollowUp.None : person < confirmed ? FollowUp.Confirmed : person < confirmed + refuted ? FollowUp.Refuted : FollowUp.Unverified;
                builder.Add(name, last ? Outcome.Positive : Outcome.Negative, followUp, lot: last && followUp == FollowUp.Refuted && faultyLot is not null ? faultyLot : "L-1", day: screen * everyDays);
            }
        }

        return Tally.FromCells(builder.Cells() with { HasConfirmatory = confirmatory, Cases = confirmatory ? builder.Cells().Cases : [] });
    }

    public static CadenceFindings Cadence(this Tally tally, CadenceSettings? cadence = null, Func<ProgramSettings, ProgramSettings>? more = null)
    {
        var settings = new ProgramSettings { Cadence = cadence ?? new CadenceSettings() };
        return Evaluator.Evaluate(tally, more is null ? settings : more(settings)).Cadence;
    }

    public static double Value(this CadenceFindings findings, string option, CadenceMeasure measure, CadenceBasis? basis = null) => findings.Outcome(option, measure, basis)!.Figure.Estimate!.Value;

    public static string? Undefined(this CadenceFindings findings, string option, CadenceMeasure measure, CadenceBasis? basis = null) => findings.Outcome(option, measure, basis)!.Figure.EstimateUndefined;

    public static CadenceAssumption Assumption(this CadenceFindings findings, string name) => findings.Assumptions.Single(row => row.Assumption == name);

    public static string Text(this CadenceFindings findings) => string.Join(' ', findings.Sentences.Select(sentence => sentence.Text));

    public static ImmutableArray<CadenceMeasure> Measures { get; } = [.. Enum.GetValues<CadenceMeasure>()];
}
