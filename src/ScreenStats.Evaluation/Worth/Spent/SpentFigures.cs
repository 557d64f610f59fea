using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.PredictiveValues;
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
    private const string Prices = "prices";
    private const string Counts = "counts";
    private const string Both = "prices-and-counts";
    private const string Days = "days";
    private const string Drawn = "draws";

    public static ImmutableArray<WorthFigure> Of(SpentItems spent, YieldFindings yield, PredictiveValueFindings positives, CostModel model, OptionTable options)
    {
        var rows = ImmutableArray.CreateBuilder<WorthFigure>();
        var cost = spent.Cost;
        rows.Add(Row("total-cost", Counted, "money", cost.IsComplete
            ? new EstimateFinding(cost.Value, null, cost.Lower, cost.Upper, WorthNotes.ByItem, null)
            : new EstimateFinding(null, "not all of its items are priced and counted", cost.Lower, null, WorthNotes.ByItem, null), Prices));
        rows.Add(Row("cost-per-screen", Counted, "money for each screen", Per(cost, spent.Runs), Prices));
        rows.AddRange(PerCase(spent, yield));
        var perCase = yield.RunsPerCase;
        rows.Add(Row("screens-per-case", Counted, "screens for each case", perCase.Estimate is { } runs
            ? new EstimateFinding(runs, null, perCase.WidenedLower ?? perCase.Lower, perCase.WidenedUpper ?? perCase.Upper, Statistics.Clusters.WidenedInterval.MethodName, perCase.Confidence)
            : EstimateFinding.Undefined(perCase.EstimateUndefined ?? "not known"), Counts));
        rows.Add(Row("days-lost", Counted, "working days", Lost(spent), Days));
        rows.Add(Row("real-positives", Counted, "share", Share(positives.Observed), Counts));
        if (!positives.FlaggedLots.IsEmpty) rows.Add(Row("real-positives", Counted + "-without-flagged-lots", "share", Share(positives.WithoutFlaggedLots), Counts));
        if (options.Judged is { } judged) rows.Add(Row("real-positives", judged.Choice.Option.Name, "share", Real(judged, model), Drawn));
        AddModelled(rows, model);
        AddMargins(rows, options, model);
        return rows.ToImmutable();
    }

    /// <summary>Screens of one person over the time of the data, under the rule and as it was done.</summary>
    public static IEnumerable<WorthFigure> OfRule(ImmutableArray<WorthRulePeriod> rules, CadenceWork work)
    {
        if (rules.IsEmpty) yield break;
        var unit = "screens of one person";
        yield return Row("screens-per-person", "rule", unit, new EstimateFinding(rules.Sum(period => period.ScreensPerPerson), null, null, null, FrequencyHistory.Method, null), "");
        if (rules.All(period => period.WithoutFlaggedLots is not null))
            yield return Row("screens-per-person", "rule-without-flagged-lots", unit, new EstimateFinding(rules.Sum(period => period.WithoutFlaggedLots!.ScreensPerPerson), null, null, null, FrequencyHistory.Method, null), "");
        yield return Row("screens-per-person", "as-done", unit, work.Options.AsDone is { } done
            ? new EstimateFinding(done.ScreensPerDay * rules.Sum(period => period.Days), null, null, null, CadenceNotes.Schedule, null) : EstimateFinding.Undefined(NotDone), "");
    }

    // Isolation is of each case however many there are; everything else is shared out among them.
    private static IEnumerable<WorthFigure> PerCase(SpentItems spent, YieldFindings yield)
    {
        WorthFigure Case(EstimateFinding figure, string limits) => Row("cost-per-case", Counted, "money for each case", figure, limits);
        if (spent.Cases is not { } cases)
        {
            yield return Case(EstimateFinding.Undefined("there is no confirmatory export"), "");
            yield break;
        }

        var (prices, each) = (Per(spent.Cost, cases), yield.RunsPerCase);
        var (fewest, most) = each.WidenedUpper is null ? (each.Lower, each.Upper) : (each.WidenedLower, each.WidenedUpper);
        if (prices.Estimate is not { } centre || cases == 0 || fewest is not { } low || most is not { } high)
        {
            yield return Case(prices, Prices);
            yield break;
        }

        var isolation = spent.Rows.FirstOrDefault(row => row.Item == "isolation")?.Cost;
        var (own, ownLower, ownUpper) = (isolation?.Estimate ?? 0, isolation?.Lower ?? isolation?.Estimate ?? 0, isolation?.Upper ?? isolation?.Estimate ?? 0);
        // Prices and counts have nothing to do with each other: their distances to the limit, on the log scale, add as squares do.
        EstimateFinding Together(EstimateFinding one, EstimateFinding other)
        {
            double Limit(double? first, double? second, int side)
            {
                var (a, b) = (Math.Log((first ?? centre) / centre), Math.Log((second ?? centre) / centre));
                return centre * Math.Exp(side * Math.Sqrt((a * a) + (b * b)));
            }

            return centre <= 0 || one.Lower <= 0 || other.Lower <= 0 ? Within(At(spent.Cost.Lower, ownLower, low), At(spent.Cost.Upper, ownUpper, high)) : Within(Limit(one.Lower, other.Lower, -1), Limit(one.Upper, other.Upper, 1));
        }

        double At(double cost, double isolated, double runs) => ((cost - isolated) / spent.Runs * runs) + (isolated / cases);
        EstimateFinding Within(double lower, double upper) => new(centre, null, Math.Min(lower, centre), Math.Max(upper, centre), CostYield.Method, each.Confidence);
        var counts = Within(At(spent.Cost.Value, own, low), At(spent.Cost.Value, own, high));
        yield return Case(Together(prices, counts), Both);
        foreach (var (figure, limits) in new[] { (prices, Prices), (counts, Counts) })
            yield return Case(figure, limits) with { Key = $"cost-per-case|{Counted}|{limits}" };
    }

    private static EstimateFinding Share(ProportionFinding share) => new(
        share.Estimate, share.EstimateUndefined, share.WidenedLower, share.WidenedUpper, share.Estimate is null ? null : Statistics.Clusters.WidenedInterval.MethodName, share.Estimate is null ? null : share.Confidence);

    // Of the positives of an option: what decides whether pools of them save tests.
    private static EstimateFinding Real(OptionFigures option, CostModel model)
    {
        var outcomes = model.Work.Outcomes;
        static double Of(double found, double alarms) => found + alarms > 0 ? Math.Clamp(found / (found + alarms), 0, 1) : double.NaN;
        double[] Draws(CadenceMeasure measure) => outcomes.Drawn(option.Choice.Option, measure, outcomes.LeadingBasis);
        var at = model.Centre(option.Choice.Option);
        return outcomes.Figure(
            Of(at(CadenceMeasure.TruePositives), at(CadenceMeasure.FalseAlarms)), [.. Draws(CadenceMeasure.TruePositives).Zip(Draws(CadenceMeasure.FalseAlarms), Of)],
            "how many positives are real is not known", WorthNotes.Draws);
    }

    private static EstimateFinding Lost(SpentItems spent) => spent.Refuted is not { } refuted ? EstimateFinding.Undefined("there is no confirmatory export")
        : refuted == 0 ? new EstimateFinding(0, null, null, null, WorthNotes.ByItem, null)
        : spent.FalseAlarmDays.Estimate is not { } days ? EstimateFinding.Undefined("the working days that a false alarm costs are not known")
        : new EstimateFinding(refuted * days, null, refuted * spent.FalseAlarmDays.Lower, refuted * spent.FalseAlarmDays.Upper, WorthNotes.ByItem, null);

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
            foreach (var (measure, unit) in new[] { ("days-kept-out", "days"), ("days-lost", "working days"), ("days-kept-out-per-day-lost", "days for each day lost"), ("cost-per-infectious-day", "money spent for each day") })
                rows.Add(Row(measure, Modelled, unit, EstimateFinding.Undefined(NotDone), ""));
            return;
        }

        EstimateFinding Outcome(CadenceMeasure measure) => outcomes.Rows.First(row => row.Option == done.Name && row.Measure == measure && row.Leads).Figure;
        double[] Draws(CadenceMeasure measure) => outcomes.Drawn(done, measure, outcomes.LeadingBasis);
        var (kept, lost) = (Outcome(CadenceMeasure.InfectiousDaysRemoved), Outcome(CadenceMeasure.DaysLost));
        rows.Add(Row("days-kept-out", Modelled, "days", kept, Drawn));
        rows.Add(Row("days-lost", Modelled, "working days", lost, Drawn));
        rows.Add(Row("days-kept-out-per-day-lost", Modelled, "days for each day lost", kept.Estimate is null || lost.Estimate is null
            ? EstimateFinding.Undefined(kept.EstimateUndefined ?? lost.EstimateUndefined ?? "not known")
            : Ratio(kept.Estimate.Value, lost.Estimate.Value, Draws(CadenceMeasure.InfectiousDaysRemoved), Draws(CadenceMeasure.DaysLost), outcomes.Figure, "no working day is lost"), Drawn));
        var figures = OptionFigures.Of(model, new OptionChoice(done, WorthConfirmation.Confirmed), 1);
        rows.Add(Row("cost-per-infectious-day", Modelled, "money spent for each day", Cost(figures, Outcome(CadenceMeasure.InfectiousDaysRemoved), Draws(CadenceMeasure.InfectiousDaysRemoved), model), Drawn));
        if (outcomes.LeadingBasis == CadenceBasis.AsStated)
            rows.Add(Row("cost-per-infection-averted", Modelled, "money spent for each infection", Cost(figures, Outcome(CadenceMeasure.InfectionsAverted), Draws(CadenceMeasure.InfectionsAverted), model), Drawn));
    }

    private static EstimateFinding Cost(OptionFigures figures, EstimateFinding effect, double[] effects, CostModel model) =>
        figures.SpendingUndefined is { } reason ? EstimateFinding.Undefined(reason)
        : effect.Estimate is not { } centre ? EstimateFinding.Undefined(effect.EstimateUndefined ?? "not known")
        : Angle(figures.Centre.Spending, centre, figures.Spendings, effects, model.Work.Known.Confidence);

    private static void AddMargins(ImmutableArray<WorthFigure>.Builder rows, OptionTable options, CostModel model)
    {
        var unit = "money spent for each " + WorthNames.One(model.Effect);
        var steps = options.Known.Where(option => option.Choice.Confirmation is WorthConfirmation.NotNeeded or WorthConfirmation.Confirmed).ToList();
        for (var index = 0; index < steps.Count; index++)
        {
            var own = steps[index];
            if (own.Choice.Option.IsNone) continue;
            var name = own.Choice.Option.Name;
            rows.Add(Row("average-cost", name, unit, Angle(own.Centre.Spending, own.Centre.Effect, own.Spendings, own.Effects, model.Work.Known.Confidence, MarginalCost.Method), Drawn));
            if (index == 0) continue;
            var before = steps[index - 1];
            rows.Add(Row("marginal-cost", name, unit, Angle(
                own.Centre.Spending - before.Centre.Spending, own.Centre.Effect - before.Centre.Effect, Differences(own.Spendings, before.Spendings), Differences(own.Effects, before.Effects),
                model.Work.Known.Confidence, MarginalCost.Method), Drawn));
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

    private static WorthFigure Row(string measure, string basis, string unit, EstimateFinding figure, string limits) =>
        new(measure + "|" + basis, measure, basis, unit, figure) { LimitsOf = figure.Upper is null && figure is { Lower: null } or { Estimate: null, Lower: not > 0 } ? "" : limits };
}
