using System.Collections.Immutable;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Courses;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Outcomes;

/// <summary>What was planned against what was done.</summary>
internal static class AdherenceRows
{
    private const string NoPlan = "no plan is stated";
    private const string NotDone = "nobody was tested twice";

    public static ImmutableArray<CadenceAdherence> Of(KnownFigures known, OptionList options, OutcomeDraws outcomes, ParameterDraws draws)
    {
        var rows = ImmutableArray.CreateBuilder<CadenceAdherence>();
        var data = known.Data;
        var plan = new SitePlans(data, known.Settings);
        var done = options.AsDone;
        rows.Add(Row("days-between-screens", plan.Due > 0 ? Point(plan.PersonDays / plan.Due) : EstimateFinding.Undefined(NoPlan), plan.Due > 0 ? Point(plan.PersonDays / (double)plan.Done) : done is null ? EstimateFinding.Undefined(NotDone) : Point(done.EveryDays!.Value), "days"));
        rows.Add(Row("screens", plan.Due > 0 ? Point(plan.Due) : EstimateFinding.Undefined(NoPlan), data.PersonDays == 0 ? EstimateFinding.Undefined(NotDone) : Point(plan.Due > 0 ? plan.Done : data.GapCount), "screens"));
        var settled = data.Settled;
        rows.Add(Row(
            "followed-up-positives", settled.Trials == 0 ? EstimateFinding.Undefined("no positive run was due for a confirmatory test") : Point(settled.Trials),
            settled.Trials == 0 ? EstimateFinding.Undefined("no positive run was due for a confirmatory test") : Point(settled.Events), "positive runs"));
        AddYield(rows, known, plan, done, outcomes, draws);
        return rows.ToImmutable();
    }

    private static void AddYield(ImmutableArray<CadenceAdherence>.Builder rows, KnownFigures known, SitePlans plan, ScreeningOption? done, OutcomeDraws outcomes, ParameterDraws draws)
    {
        var basis = outcomes.LeadingBasis;
        var planned = Planned(known, plan, outcomes, done, draws);
        foreach (var (measure, value) in new[] { (CadenceMeasure.Detection, planned?.Detection), (CadenceMeasure.ShareRemoved, planned?.Removed), (CadenceMeasure.InfectiousDaysRemoved, planned?.Days) })
        {
            var observed = done is null ? EstimateFinding.Undefined(NotDone) : outcomes.Rows.First(row => row.Option == done.Name && row.Measure == measure && row.Leads).Figure;
            var intended = value is { } some && double.IsFinite(some) ? Point(some)
                : EstimateFinding.Undefined(plan.Due > 0 ? observed.EstimateUndefined ?? "not known" : NoPlan);
            rows.Add(Row(CadenceNames.Of(measure), intended, observed, measure == CadenceMeasure.InfectiousDaysRemoved ? "days" : "share"));
        }
    }

    // The plans of the sites, each with everybody taking part, weighted by the person-days there. Infections inside stay as they were: what is compared is the screening.
    private static (double Detection, double? Removed, double? Days)? Planned(KnownFigures known, SitePlans plan, OutcomeDraws outcomes, ScreeningOption? done, ParameterDraws draws)
    {
        // Of viral loads only what was done is simulated.
        if (plan.Due <= 0 || done is null || known.Settings.Course?.Kind == CourseKind.ViralLoad || outcomes.Rows.First(row => row.Option == done.Name && row.Measure == CadenceMeasure.Detection).Figure.Estimate is null) return null;
        ImmutableArray<ScreeningOption> parts = [.. plan.Parts.Select(part => new ScreeningOption(part.Option))];
        var at = draws.Centre.With(Parameter.Participation, 1);
        var course = new ExactCourses(known, [done, .. parts]);
        var figures = course.Of(at);
        double Mean(double[] of) => plan.Parts.Select((part, index) => part.PersonDays * of[index + 1]).Sum() / plan.PersonDays;
        var detection = Mean(figures.Detection);
        if (!course.KnowsInfectious || outcomes.Incidence.Estimate is not { } incidence) return (detection, null, null);
        var removed = Mean(figures.Removed);
        var both = figures with { Detection = [figures.Detection[0], detection], Removed = [figures.Removed[0], removed], Caught = [] };
        var infections = new SpreadInside(known.People, known.Settings.Days, done: 0, [false, false]).Of(outcomes.LeadingBasis, at, both, incidence, course.InfectiousnessByDay(at));
        double Days(Infections of, double share) => of.Expected * figures.InfectiousDays * (1 - share);
        var without = Days(infections[^1], figures.RemovedBySymptoms);
        var days = without - Days(infections[1], removed);
        return (detection, without > 0 ? days / without : null, days);
    }

    private static CadenceAdherence Row(string measure, EstimateFinding planned, EstimateFinding observed, string unit) => new(
        measure, planned, observed,
        planned.Estimate is not { } due || observed.Estimate is not { } done ? EstimateFinding.Undefined(planned.EstimateUndefined ?? observed.EstimateUndefined ?? "not known")
            : due > 0 ? Point(done / due) : EstimateFinding.Undefined("nothing was planned"), unit);

    private static EstimateFinding Point(double value) => new(value, null, null, null, CadenceNotes.Adherence, null);
}
