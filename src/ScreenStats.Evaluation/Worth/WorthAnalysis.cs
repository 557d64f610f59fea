using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.PredictiveValues;
using ScreenStats.Evaluation.Worth.Lists;
using ScreenStats.Evaluation.Worth.Options;
using ScreenStats.Evaluation.Worth.Prices;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Evaluation.Worth.Spent;
using ScreenStats.Evaluation.Worth.Sure;
using ScreenStats.Evaluation.Worth.Turns;
using ScreenStats.Evaluation.Worth.Words;
using ScreenStats.Evaluation.Yield;

namespace ScreenStats.Evaluation.Worth;

/// <summary>Whether screening is worth it.</summary>
internal static class WorthAnalysis
{
    /// <summary>Puts costs and effects into the same sum.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="settings">What the program file says.</param>
    /// <param name="cadence">What each way of screening gives.</param>
    /// <param name="yield">Screening done for each case.</param>
    /// <param name="positives">What positives were worth, and the lots flagged for refuted ones: the rule of frequency and the decision curve are also taken without these.</param>
    /// <returns>The findings.</returns>
    public static WorthFindings Of(Tally tally, ProgramSettings settings, CadenceFindings cadence, YieldFindings yield, PredictiveValueFindings positives)
    {
        var work = cadence.Work!;
        var costs = settings.Costs;
        var prices = new PriceList(costs, work.Draws.Count, settings.Cadence.Seed);
        var model = new CostModel(work, settings, prices);
        var spent = new SpentItems(tally, settings, yield, cadence.Inputs.FalseAlarmDays, prices);
        var options = new OptionTable(model);
        var rows = options.Rows();
        var flagged = positives.FlaggedLots.ToHashSet(StringComparer.Ordinal);
        var rules = RuleRows.Of(tally, costs, work, flagged);
        var nets = IncidenceNets.Of(model, options);
        var ladder = IncidenceRows.Ladder(nets);
        var pays = SureRows.PaysShare(model, options, model.Value?.Value);
        var growing = GrowingDraws.Of(model, options);
        var findings = new WorthFindings
        {
            Currency = costs.Currency ?? "units of money (no currency stated)",
            PriceYear = costs.PriceYear,
            PriceYearUndefined = costs.PriceYear is null ? "not stated" : null,
            Perspective = costs.Perspective ?? "",
            DiscountRate = costs.DiscountRate,
            DiscountRateUndefined = costs.DiscountRate is null ? "none is stated, so nothing is discounted" : null,
            Days = cadence.Days,
            People = cadence.People,
            Draws = cadence.Draws,
            Seed = cadence.Seed,
            Confidence = cadence.Confidence,
            Effect = model.Effect,
            Value = model.Value?.Value,
            ValueUndefined = model.Value is null ? $"the value of one {WorthNames.One(model.Effect)} is not stated" : null,
            ValueLower = model.Value?.Lower,
            ValueUpper = model.Value?.Upper,
            AnyStated = costs.AnyStated,
            Costs = spent.Rows,
            Figures = [.. SpentFigures.Of(spent, yield, positives, model, options), .. SpentFigures.OfRule(rules.Periods, work)],
            Options = rows,
            Turns = TurnRows.Of(model, options, nets),
            OptionTurns = IncidenceRows.Others(nets, options),
            Ladder = ladder,
            Periods = PeriodRows.Of(model, options, nets, ladder),
            PaysShare = pays,
            PaysShareUndefined = pays is null ? "cost, effect or value of the option is not known" : null,
            PaysShareAtLower = SureRows.PaysShare(model, options, model.Value?.Lower),
            PaysShareAtUpper = SureRows.PaysShare(model, options, model.Value?.Upper),
            GrowingShare = growing.Share,
            MeanWithoutGrowing = growing.MeanWithout,
            Acceptability = SureRows.Acceptability(model, options, rows),
            Information = SureRows.Information(model, options, tally),
            Swings = SwingsInMoney.Of(model, options),
            DecisionCurve = DecisionRows.Of(tally, work, flagged),
            Rules = rules.Periods,
            RuleLots = rules.Lots,
            Criteria = [],
            Missing = MissingAmounts.Of(settings, model, options, spent),
            AllowsPools = costs.LargestPool is not null,
            CountsOutbreaks = model.CountsOutbreaks,
            JudgedPlan = Plan(settings.Cadence, work, options),
            JudgedIsNearest = options.Judged is { } nearest && nearest.Choice.Option == work.Options.NearestToDone,
            LeavesOutFlaggedLots = cadence.FalseAlarmsFound is not null,
            KnowsImmunity = work.Known.Knows(Parameter.ImmunityDays),
            StatesIncidence = !work.Known.IncidenceFromCases,
            Sentences = [],
        };
        findings = findings with { Sentences = WorthSentences.Of(findings, cadence) };
        return findings with { Criteria = [.. ScreeningCriteria.Of(findings, cadence, settings, tally), .. ReportingItems.Of(findings, cadence, settings)] };
    }

    private static string Plan(CadenceSettings cadence, CadenceWork work, OptionTable options)
    {
        if (options.Judged is not { } judged || judged.Choice.Option == work.Options.Planned) return "";
        return cadence.PlannedAt.Any(plan => plan.Option.Name == judged.Choice.Option.Name) ? "the plan differs between sites"
            : cadence.PlannedAt.IsEmpty && cadence.Planned is null ? "no plan is stated" : "the program file plans it at no site";
    }
}
