using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Lists;
using ScreenStats.Evaluation.Worth.Options;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Evaluation.Yield;
using ScreenStats.Statistics.Economics.Uncertainty.Information;
using ScreenStats.Statistics.Economics.Uncertainty.Ratios;
using ScreenStats.Statistics.Economics.Yield;
using ScreenStats.Statistics.Economics.Yield.Rules;
using ScreenStats.Statistics;

namespace ScreenStats.Evaluation.Worth.Spent;

/// <summary>What the spending comes to for each screen, case, infectious day and infection; and the marginal beside the average cost.</summary>
internal static class SpentFigures
{
    private const string Counted = "counted";
    private const string Modelled = "modelled";
    private const string NotDone = "nobody was tested twice";

    public static ImmutableArray<WorthFigure> Of(SpentItems spent, YieldFindings yield, CostModel model, OptionTable options)
    {
        var rows = ImmutableArray.CreateBuilder<WorthFigure>();
        var cost = spent.Cost;
        rows.Add(Row("total-cost", Counted, "money", cost.IsComplete
            ? new EstimateFinding(cost.Value, null, cost.Lower, cost.Upper, WorthNotes.ByItem, null)
            : new EstimateFinding(null, "not all of its items are priced and counted", cost.Lower, null, WorthNotes.ByItem, null)));
        rows.Add(Row("cost-per-screen", Counted, "money for each screen", Per(cost, spent.Runs)));
        rows.Add(Row("cost-per-case", Counted, "money for each case", spent.Cases is { } cases ? Per(cost, cases) : EstimateFinding.Undefined("there is no confirmatory export")));
        var perCase = yield.RunsPerCase;
        rows.Add(Row("screens-per-case", Counted, "screens for each case", perCase.Estimate is { } runs
            ? new EstimateFinding(runs, null, perCase.WidenedLower ?? perCase.Lower, perCase.WidenedUpper ?? perCase.Upper, Statistics.Clusters.WidenedInterval.MethodName, perCase.Confidence)
            : EstimateFinding.Undefined(perCase.EstimateUndefined ?? "not known")));
        rows.Add(Row("days-lost", Counted, "working days", Lost(spent)));
        AddModelled(rows, model);
        AddMargins(rows, options, model);
        return rows.ToImmutable();
    }

    /// <summary>Screens of one person over the time of the data, under the rule and as it was done.</summary>
    public static IEnumerable<WorthFigure> OfRule(ImmutableArray<WorthRulePeriod> rules, CadenceWork work)
    {
        if (rules.IsEmpty) yield break;
        var unit = "screens of one person";
        yield return Row("screens-per-person", "rule", unit, new EstimateFinding(rules.Sum(period => period.ScreensPerPerson), null, null, null, FrequencyHistory.Method, null));
        if (rules.All(period => period.WithoutFlaggedLots is not null))
            yield return Row("screens-per-person", "rule-without-flagged-lots", unit, new EstimateFinding(rules.Sum(period => period.WithoutFlaggedLots!.ScreensPerPerson), null, null, null, FrequencyHistory.Method, null));
        yield return Row("screens-per-person", "as-done", unit, work.Options.AsDone is { } done
            ? new EstimateFinding(done.ScreensPerDay * rules.Sum(period => period.Days), null, null, null, CadenceNotes.Schedule, null) : EstimateFinding.Undefined(NotDone));
    }

    private static EstimateFinding Lost(SpentItems spent) => spent.Refuted is not { } refuted ? EstimateFinding.Undefined("there is no confirmatory export")
        : refuted == 0 ? new EstimateFinding(spent.UnsettledDays, null, null, null, WorthNotes.ByItem, null)
        : spent.FalseAlarmDays.Estimate is not { } days ? EstimateFinding.Undefined("the working days that a false alarm costs are not known")
        : new EstimateFinding((refuted * days) + spent.UnsettledDays, null, (refuted * spent.FalseAlarmDays.Lower) + spent.UnsettledDays, (refuted * spent.FalseAlarmDays.Upper) + spent.UnsettledDays, WorthNotes.ByItem, null);

    private static EstimateFinding Per(ProgramCost cost, long number)
    {
        var per = CostYield.Per(cost, new StatedAmount(number));
        return new EstimateFinding(per.Value, per.Reason?.Describe(), per.Lower, per.Upper, CostYield.Method, null);
    }

    // Screening as it was done, over the days and people of the comparison.
    private static void AddModelled(ImmutableArray<WorthFigure>.Builder rows, CostModel model)
    {
        var outcomes = model.Work.Outcomes;
        if (model.Work.Options.AsDone is not { } done)
        {
            foreach (var (measure, unit) in new[] { ("days-kept-out", "days"), ("days-lost", "working days"), ("days-kept-out-per-day-lost", "days for each day lost"), ("cost-per-infectious-day", "money for each day") })
                rows.Add(Row(measure, Modelled, unit, EstimateFinding.Undefined(NotDone)));
            return;
        }

        EstimateFinding Outcome(CadenceMeasure measure) => outcomes.Rows.First(row => row.Option == done.Name && row.Measure == measure && row.Leads).Figure;
        double[] Drawn(CadenceMeasure measure) => outcomes.Drawn(done, measure, outcomes.LeadingBasis);
        var (kept, lost) = (Outcome(CadenceMeasure.InfectiousDaysRemoved), Outcome(CadenceMeasure.DaysLost));
        rows.Add(Row("days-kept-out", Modelled, "days", kept));
        rows.Add(Row("days-lost", Modelled, "working days", lost));
        rows.Add(Row("days-kept-out-per-day-lost", Modelled, "days for each day lost", kept.Estimate is null || lost.Estimate is null
            ? EstimateFinding.Undefined(kept.EstimateUndefined ?? lost.EstimateUndefined ?? "not known")
            : Ratio(kept.Estimate.Value, lost.Estimate.Value, Drawn(CadenceMeasure.InfectiousDaysRemoved), Drawn(CadenceMeasure.DaysLost), outcomes.Figure, "no working day is lost")));
        var figures = OptionFigures.Of(model, new OptionChoice(done, WorthConfirmation.Confirmed), 1);
        rows.Add(Row("cost-per-infectious-day", Modelled, "money for each day", Cost(figures, Outcome(CadenceMeasure.InfectiousDaysRemoved), Drawn(CadenceMeasure.InfectiousDaysRemoved), model)));
        if (outcomes.LeadingBasis == CadenceBasis.AsStated)
            rows.Add(Row("cost-per-infection-averted", Modelled, "money for each infection", Cost(figures, Outcome(CadenceMeasure.InfectionsAverted), Drawn(CadenceMeasure.InfectionsAverted), model)));
    }

    private static EstimateFinding Cost(OptionFigures figures, EstimateFinding effect, double[] effects, CostModel model) =>
        figures.SpendingUndefined is { } reason ? EstimateFinding.Undefined(reason)
        : effect.Estimate is not { } centre ? EstimateFinding.Undefined(effect.EstimateUndefined ?? "not known")
        : Angle(figures.Centre.Spending, centre, figures.Spendings, effects, model.Work.Known.Confidence);

    private static void AddMargins(ImmutableArray<WorthFigure>.Builder rows, OptionTable options, CostModel model)
    {
        var unit = "money for each " + WorthNames.One(model.Effect);
        var steps = options.Known.Where(option => option.Choice.Confirmation is WorthConfirmation.NotNeeded or WorthConfirmation.Confirmed).ToList();
        for (var index = 0; index < steps.Count; index++)
        {
            var own = steps[index];
            if (own.Choice.Option.IsNone) continue;
            var name = own.Choice.Option.Name;
            rows.Add(Row("average-cost", name, unit, Angle(own.Centre.Spending, own.Centre.Effect, own.Spendings, own.Effects, model.Work.Known.Confidence, MarginalCost.Method)));
            if (index == 0) continue;
            var before = steps[index - 1];
            rows.Add(Row("marginal-cost", name, unit, Angle(
                own.Centre.Spending - before.Centre.Spending, own.Centre.Effect - before.Centre.Effect, Differences(own.Spendings, before.Spendings), Differences(own.Effects, before.Effects),
                model.Work.Known.Confidence, MarginalCost.Method)));
        }
    }

    private static double[] Differences(double[] more, double[] less) => [.. more.Zip(less, (high, low) => high - low)];

    // The value at the centre, with limits from the draws in order of their angle.
    private static EstimateFinding Angle(double cost, double effect, double[] costs, double[] effects, double confidence, string method = DrawnRatio.Method)
    {
        if (!(effect > 0)) return EstimateFinding.Undefined(UndefinedReason.NoEffect.Describe());
        if (!Array.TrueForAll(costs, OptionFigures.Countable) || !Array.TrueForAll(effects, OptionFigures.Countable) || !double.IsFinite(cost / effect)) return EstimateFinding.Undefined(UndefinedReason.TooLarge.Describe());
        var drawn = DrawnRatio.Of(new OptionDraws(costs, effects), confidence);
        var value = cost / effect;
        return new EstimateFinding(
            value, null, drawn.Lower is { } lower ? Math.Min(lower, value) : null, drawn.Upper is { } upper ? Math.Max(upper, value) : null, method, drawn.Lower is null ? null : confidence);
    }

    private static EstimateFinding Ratio(double over, double under, double[] overs, double[] unders, Func<double, double[], string, string, EstimateFinding> figure, string undefined) =>
        figure(under > 0 ? over / under : double.NaN, [.. overs.Zip(unders, (more, less) => less > 0 ? more / less : double.NaN)], undefined, WorthNotes.Draws);

    private static WorthFigure Row(string measure, string basis, string unit, EstimateFinding figure) => new(measure + "|" + basis, measure, basis, unit, figure);
}
