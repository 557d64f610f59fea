using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Lists;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Statistics.Economics.Decision;
using ScreenStats.Statistics.Economics.Frontier;
using ScreenStats.Statistics.Economics.Turning;
using ScreenStats.Statistics.Economics.Uncertainty.Acceptability;
using ScreenStats.Statistics.Economics.Uncertainty.OneWay;
using ScreenStats.Statistics.Economics.Yield;
using ScreenStats.Statistics.Economics.Yield.Rules;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Worth;

/// <summary>The tables of whether screening is worth it. Money is in the currency of the program file.</summary>
internal static class WorthTables
{
    public static Table<WorthCostItem> Costs(ImmutableArray<WorthCostItem> rows) => new(
        "worth-costs",
        "What the program paid for",
        "Over the time of the data, item by item: price, number and their product. What is not priced has no cost here and is not in the sum.",
        [
            new("item", "Item", Unit.Text, "What was paid for.", row => Cell.Text(row.Item)),
            new("unit_cost", "Price of one", Unit.Ratio, "What one costs, as the program file states it.", row => Number(row.UnitCost.Estimate, row.UnitCost)) { Method = MethodNames.Stated },
            new("unit_cost_lower", "Lower", Unit.Ratio, "Lower end of its 95 % range; empty where it is taken as exact.", row => Limit(row.UnitCost.Lower, row.UnitCost)) { Method = MethodNames.Stated },
            new("unit_cost_upper", "Upper", Unit.Ratio, "Upper end of it.", row => Limit(row.UnitCost.Upper, row.UnitCost)) { Method = MethodNames.Stated },
            new("units", "Number", Unit.Ratio, "How many.", row => Number(row.Units.Estimate, row.Units)) { Method = WorthNotes.ByItem },
            new("cost", "Cost", Unit.Ratio, "Price times number.", row => Number(row.Cost.Estimate, row.Cost)) { Method = WorthNotes.ByItem },
            new("cost_lower", "Lower", Unit.Ratio, "No cost within the ranges is lower.", row => Limit(row.Cost.Lower, row.Cost)) { Method = WorthNotes.ByItem },
            new("cost_upper", "Upper", Unit.Ratio, "No cost within the ranges is higher.", row => Limit(row.Cost.Upper, row.Cost)) { Method = WorthNotes.ByItem },
            new("origin", "Origin", Unit.Text, "Where the price comes from: stated, or not known.", row => Cell.Text(CadenceNames.Of(row.Origin))),
            new("source", "Source", Unit.Text, "Its source, or what stating it would allow.", row => row.Source.Length == 0 ? Cell.Empty : Cell.Text(row.Source)),
            new("name", "Name", Unit.Text, "What it is called.", row => Cell.Text(row.Name)),
            new("part", "Part", Unit.Text, "yes where it is a part of the item before it: it is not added up.", row => Cell.Text(row.IsPart ? "yes" : "no")),
        ],
        rows);

    public static Table<WorthFigure> Figures(ImmutableArray<WorthFigure> rows) => new(
        "worth-figures",
        "What screening cost for each thing it did",
        "Costs are gross: what is spent on screens, confirmatory tests, isolation and false alarms, before what illness and outbreaks avoided save. Counted ones hold all of the time of the data, audits of negatives and flagged lots included; modelled ones hold neither.",
        [
            new("measure", "What", Unit.Text, "What is divided by what.", row => Cell.Text(row.Measure)),
            new("basis", "Basis", Unit.Text, "counted: in the data; counted-without-flagged-lots: without the runs of lots flagged for refuted positives; modelled: of screening as it was done, over the days looked at; rule, rule-without-flagged-lots and as-done: over the time of the data, by the rule of frequency, by the same on the runs of the other lots, and by the gaps as they were; else the option, its step from the next less frequent one.", row => Cell.Text(row.Basis)),
            new("estimate", "Figure", Unit.Ratio, "The figure.", row => Number(row.Figure.Estimate, row.Figure)),
            new("lower", "Lower", Unit.Ratio, "Lower limit.", row => Limit(row.Figure.Lower, row.Figure)),
            new("upper", "Upper", Unit.Ratio, "Upper limit; empty where there is none.", row => Limit(row.Figure.Upper, row.Figure)),
            new("unit", "Unit", Unit.Text, "In what it is measured.", row => Cell.Text(row.Unit)),
            new("method", "Method", Unit.Text, "Method of the figure and its limits.", row => row.Figure.Method is { } method ? Cell.Text(method) : Cell.Empty),
            new("confidence", "Confidence", Unit.Proportion, "Confidence of the limits; empty for bounds that hold for every choice within the ranges.", row => row.Figure.Confidence is { } confidence ? Cell.Number(confidence) : Cell.Empty),
            new("limits_of", "Limits hold", Unit.Text, "What the limits hold: prices (the ranges of prices and of stated figures, at their ends), counts (chance in what was counted), days (those that one false alarm takes), prices-and-counts (both, as independent: distances on the log scale squared and added), draws (all that is uncertain); empty where there are none.", row => row.LimitsOf.Length == 0 ? Cell.Empty : Cell.Text(row.LimitsOf)),
        ],
        rows);

    public static Table<WorthOption> Options(ImmutableArray<WorthOption> rows, WorthEffect effect) => new(
        "worth-options",
        "What to choose",
        "Each way of screening, with what follows a positive: what it costs and gains more than no screening, over the days looked at and for all people screened. Last what was done, which is no option to choose.",
        [
            new("option", "Option", Unit.Text, "The way of screening; (as done) for what was done, site by site.", row => Cell.Text(row.Option)),
            new("confirmation", "Confirmation", Unit.Text, "confirmed: a confirmatory test of each positive; pooled: these in pools; without: none, and every positive is away for the whole isolation time.", row => Cell.Text(WorthNames.Of(row.Confirmation))),
            .. Columns("cost", "Cost, net", "What is spent, less illness and outbreaks saved where these are priced.", row => row.Cost, WorthNotes.Draws),
            .. Columns("effect", "Effect", "What it gains.", row => row.Effect, WorthNotes.Draws),
            new("effect_kind", "Effect is", Unit.Text, "infections-averted, or infectious-days-removed.", _ => Cell.Text(WorthNames.Of(effect))),
            .. Columns("net_benefit", "Net benefit", "Value of the effect at the stated value, less the cost.", row => row.NetBenefit, NetBenefit.Method),
            new("mean_net_benefit", "Mean of the draws", Unit.Ratio, "The mean net benefit over the draws: what counts for a choice under uncertainty.", row => Cell.NumberOr(row.MeanNetBenefit, row.MeanNetBenefitUndefined ?? "not known")) { Method = NetBenefit.Method },
            new("standing", "Standing", Unit.Text, "on-frontier, dominated (another costs no more and does no less), extendedly-dominated (a mix of two others does as much for less), same-as-earlier, no-option (what was done, where none of these holds of it) or not-known.", row => Cell.Text(WorthNames.Of(row.Standing))),
            new("dominated_by", "Dominated by", Unit.Text, "By which options.", row => row.DominatedBy.Length == 0 ? Cell.Empty : Cell.Text(row.DominatedBy)),
            new("incremental_ratio", "Net cost of one more effect", Unit.Ratio, "On the frontier: what one more effect costs, savings taken off, against the next cheaper option on it.", row => Number(row.IncrementalRatio.Estimate, row.IncrementalRatio)) { Method = CostEffectivenessFrontier.Method },
            new("best_share", "Share of draws", Unit.Proportion, "In which its net benefit is highest at the stated value; what was done is left out of it.", row => Cell.NumberOr(row.BestShare, row.BestShareUndefined ?? "not known")) { Method = AcceptabilityCurve.Method },
            new("best", "Best", Unit.Text, "yes for the highest net benefit at the central figures.", row => Cell.Text(row.IsBest ? "yes" : "no")),
            new("judged", "Judged", Unit.Text, "yes for the one that the verdict is of.", row => Cell.Text(row.IsJudged ? "yes" : "no")),
            .. Columns("spending", "Spending, gross", "What is spent on screens, confirmatory tests, isolation and false alarms.", row => row.Spending, WorthNotes.Draws),
        ],
        rows);

    public static Table<WorthTurn> Turns(ImmutableArray<WorthTurn> rows) => new(
        "worth-turning",
        "When it turns",
        "The value of each figure at which the option judged just repays its cost against no screening, the others at their centre, beside the figure as it is; and the number of infections at which each other option, and what was done, does.",
        [
            new("figure", "Figure", Unit.Text, "Which figure.", row => Cell.Text(row.Figure)),
            new("option", "Option", Unit.Text, "Option and confirmation that it turns; empty for the one judged.", row => row.Option.Length == 0 ? Cell.Empty : Cell.Text(row.Option)),
            new("break_even", "Break-even", Unit.Ratio, "Where it turns; the place nearest to the figure as it is where there are several.", row => Cell.NumberOr(row.BreakEven, row.BreakEvenUndefined ?? "not known")),
            new("other_break_even", "Other break-even", Unit.Ratio, "The other end of the range in which it pays, where that has two.", row => row.OtherBreakEven is { } other ? Cell.Number(other) : Cell.Empty),
            new("present", "As it is", Unit.Ratio, "The figure as it is.", row => Cell.NumberOr(row.Present, row.PresentUndefined ?? "not known")) { Method = WorthNotes.Draws },
            new("lower", "Lower", Unit.Ratio, "Lower limit of the figure as it is; empty where it is taken as exact.", row => row.Lower is { } lower ? Cell.Number(lower) : Cell.Empty) { Method = WorthNotes.Draws },
            new("upper", "Upper", Unit.Ratio, "Upper limit of it.", row => row.Upper is { } upper ? Cell.Number(upper) : Cell.Empty) { Method = WorthNotes.Draws },
            new("pays", "Pays", Unit.Text, "On which side of the break-even the option pays: above, below, between (it and the other break-even), always or never. Of half-false-prevalence: above, where most alarms are real.", row => Cell.Text(WorthNames.Of(row.Pays))),
            new("method", "Method", Unit.Text, "Method of the break-even.", row => row.Method is { } method ? Cell.Text(method) : Cell.Empty),
            new("unit", "Unit", Unit.Text, "In what it is measured.", row => Cell.Text(row.Unit)),
            new("name", "Name", Unit.Text, "What it is called.", row => Cell.Text(row.Name)),
        ],
        rows);

    public static Table<WorthRung> Ladder(ImmutableArray<WorthRung> rows) => new(
        "worth-ladder",
        "The option by how much infection there is",
        "Between which numbers of infections in 1,000 people in a week each way of screening gains most at the stated value, with what is worth most after a positive; all other figures at their centre. Empty where no effect is valued.",
        [
            new("option", "Option", Unit.Text, "The way of screening; none for no screening.", row => Cell.Text(row.Option)),
            new("confirmation", "Confirmation", Unit.Text, "What is worth most after a positive: confirmed, pooled (where pools save tests in all of it), without, or not-needed for no screening.", row => Cell.Text(WorthNames.Of(row.Confirmation))),
            new("from", "From", Unit.Ratio, "From so many infections in 1,000 people in a week.", row => Cell.Number(row.From)) { Method = TurningPoint.Method },
            new("to", "To", Unit.Ratio, "Up to so many; empty for the last.", row => row.To is { } to ? Cell.Number(to) : Cell.Empty) { Method = TurningPoint.Method },
            new("here", "Here", Unit.Text, "yes where the infections of the verdict lie.", row => Cell.Text(row.IsPresent ? "yes" : "no")),
        ],
        rows);

    public static Table<WorthPeriod> Periods(ImmutableArray<WorthPeriod> rows) => new(
        "worth-periods",
        "How much infection there was, and what gains most for so much",
        "Infections in all days of the data and in their last days, where what comes may be nearer to these. Empty where the data are too short, the incidence is not from their cases, or no effect is valued.",
        [
            new("period", "Period", Unit.Text, "all-days, last-91-days or last-28-days of the data.", row => Cell.Text(row.Period)),
            new("days", "Days", Unit.Count, "Days of it.", row => Cell.Count(row.Days)),
            new("cases", "Cases", Unit.Count, "Cases found in it.", row => Cell.Count(row.Cases)),
            new("weekly_incidence", "Infected in a week", Unit.Ratio, "Infections in a week among 1,000 people.", row => Number(row.WeeklyIncidence.Estimate, row.WeeklyIncidence)) { Method = CadenceNotes.Turns },
            new("lower", "Lower", Unit.Ratio, "Lower limit of it.", row => Limit(row.WeeklyIncidence.Lower, row.WeeklyIncidence)) { Method = CadenceNotes.Turns },
            new("upper", "Upper", Unit.Ratio, "Upper limit of it.", row => Limit(row.WeeklyIncidence.Upper, row.WeeklyIncidence)) { Method = CadenceNotes.Turns },
            new("option", "Gains most", Unit.Text, "The way of screening that gains most there; none for no screening.", row => Cell.Text(row.Option)),
            new("confirmation", "Confirmation", Unit.Text, "What is worth most after a positive there, as in the table before.", row => Cell.Text(WorthNames.Of(row.Confirmation))),
            new("option_at_lower", "At the lower limit", Unit.Text, "The same at the lower limit.", row => row.OptionAtLower is { } option ? Cell.Text(option) : Cell.Empty) { Method = TurningPoint.Method },
            new("confirmation_at_lower", "Confirmation at the lower limit", Unit.Text, "What is worth most after a positive at the lower limit.", row => row.ConfirmationAtLower is { } after ? Cell.Text(WorthNames.Of(after)) : Cell.Empty) { Method = TurningPoint.Method },
            new("option_at_upper", "At the upper limit", Unit.Text, "The same at the upper limit.", row => row.OptionAtUpper is { } option ? Cell.Text(option) : Cell.Empty) { Method = TurningPoint.Method },
            new("confirmation_at_upper", "Confirmation at the upper limit", Unit.Text, "What is worth most after a positive at the upper limit.", row => row.ConfirmationAtUpper is { } after ? Cell.Text(WorthNames.Of(after)) : Cell.Empty) { Method = TurningPoint.Method },
            new("net_benefit", "Net benefit of the option judged", Unit.Ratio, "At that incidence, all else at the centre.", row => Cell.Number(row.NetBenefit)) { Method = NetBenefit.Method },
        ],
        rows);

    public static Table<WorthAcceptability> Acceptability(ImmutableArray<WorthAcceptability> rows) => new(
        "worth-acceptability",
        "How likely each option is the best",
        "The share of draws in which the net benefit of an option is highest, over values of one effect. Options that are never the best are left out.",
        [
            new("value", "Value of one effect", Unit.Ratio, "What one effect is worth.", row => Cell.Number(row.Value)) { Method = MethodNames.Grid },
            new("option", "Option", Unit.Text, "Option and confirmation.", row => Cell.Text(row.Option)),
            new("share", "Share of draws", Unit.Proportion, "In which it is the best.", row => Cell.Number(row.Share)) { Method = AcceptabilityCurve.Method },
            new("on_frontier", "On the frontier", Unit.Text, "yes where its mean net benefit is highest: the one to choose at that value.", row => Cell.Text(row.OnFrontier ? "yes" : "no")),
        ],
        rows);

    public static Table<WorthInformation> Information(ImmutableArray<WorthInformation> rows) => new(
        "worth-information",
        "What knowing more would be worth",
        "What it would be worth to know a figure exactly before choosing: no study of it is worth more, for one choice over the days looked at.",
        [
            new("parameter", "Figure", Unit.Text, "everything, one figure, or sample-of-negatives: verifying a sample of them.", row => Cell.Text(row.Parameter)),
            new("value", "Worth", Unit.Ratio, "In money; of sample-of-negatives before the cost of the sample.", row => Cell.Number(row.Value)),
            new("standard_error", "Standard error", Unit.Ratio, "From the number of draws; a figure that does not matter has a small value above 0.", row => row.StandardError is { } error ? Cell.Number(error) : Cell.Empty),
            new("method", "Method", Unit.Text, "The method.", row => Cell.Text(row.Method)),
            new("name", "Name", Unit.Text, "What it is called.", row => Cell.Text(row.Name)),
            new("sample", "Sample", Unit.Count, "Negatives to verify.", row => row.Sample is { } sample ? Cell.Count(sample) : Cell.Empty),
            new("sample_cost", "Cost of the sample", Unit.Ratio, "What these cost.", row => row.SampleCost is { } cost ? Cell.Number(cost) : Cell.Empty),
        ],
        rows);

    public static Table<WorthSwing> Swings(ImmutableArray<WorthSwing> rows) => new(
        "worth-swings",
        "Which figures matter most",
        "Net benefit of the option judged against no screening, with each figure at the ends of its 95 % range and the others at their centre; the one that does most first.",
        [
            new("figure", "Figure", Unit.Text, "As in the tables of assumptions and of costs.", row => Cell.Text(row.Figure)),
            new("at_lower", "Lower end", Unit.Ratio, "The lower end of its range.", row => Cell.Number(row.AtLower)) { Method = OneWayAnalysis.Method },
            new("at_upper", "Upper end", Unit.Ratio, "The upper end of its range.", row => Cell.Number(row.AtUpper)) { Method = OneWayAnalysis.Method },
            new("low", "Net benefit at the lower end", Unit.Ratio, "Net benefit at the lower end.", row => Cell.Number(row.Low)) { Method = OneWayAnalysis.Method },
            new("high", "Net benefit at the upper end", Unit.Ratio, "Net benefit at the upper end.", row => Cell.Number(row.High)) { Method = OneWayAnalysis.Method },
            new("swing", "Swing", Unit.Ratio, "How far they lie apart.", row => Cell.Number(row.Swing)) { Method = OneWayAnalysis.Method },
            new("best_at_lower", "Best at the lower end", Unit.Text, "The best option there.", row => Cell.Text(row.BestAtLower)) { Method = OneWayAnalysis.Method },
            new("best_at_upper", "Best at the upper end", Unit.Text, "The best option there.", row => Cell.Text(row.BestAtUpper)) { Method = OneWayAnalysis.Method },
            new("name", "Name", Unit.Text, "What it is called.", row => Cell.Text(row.Name)),
        ],
        rows);

    public static Table<WorthDecisionPoint> Decisions(ImmutableArray<WorthDecisionPoint> rows) => new(
        "worth-decision-curve",
        "Whom to send away",
        "Net benefit in true positives for each 1,000 screens, over the chance of infection from which a person would be sent away. Sending no one away has 0. Limits are widened for sites and weeks.",
        [
            new("threshold", "Threshold", Unit.Proportion, "The chance of infection from which a person would be sent away.", row => Cell.Number(row.Threshold)) { Method = MethodNames.Grid },
            .. Columns<WorthDecisionPoint>("screen", "By the screen", "Net benefit of sending away those whose screen is positive.", row => row.Screened, DecisionCurve.WidenedMethod),
            new("everyone", "Everyone", Unit.Ratio, "Net benefit of sending everyone away.", row => Number(row.Everyone.Estimate, row.Everyone)) { Method = DecisionCurve.Method },
            new("best", "Best", Unit.Text, "screen, everyone or no-one.", row => Cell.Text(row.Best)),
            .. Columns<WorthDecisionPoint>("screen_without_flagged_lots", "By the screen, without flagged lots", "The same without the runs of flagged lots; empty where none is flagged.", row => row.WithoutFlaggedLots?.Screened ?? Nothing, DecisionCurve.WidenedMethod),
            new("everyone_without_flagged_lots", "Everyone, without flagged lots", Unit.Ratio, "Net benefit of sending everyone away, by the infected among the runs of the other lots.", row => row.WithoutFlaggedLots is { } without ? Number(without.Everyone.Estimate, without.Everyone) : Cell.Empty) { Method = DecisionCurve.Method },
            new("best_without_flagged_lots", "Best, without flagged lots", Unit.Text, "screen, everyone or no-one.", row => row.WithoutFlaggedLots is { } without ? Cell.Text(without.Best) : Cell.Empty),
        ],
        rows);

    public static Table<WorthRulePeriod> Rules(ImmutableArray<WorthRulePeriod> rows) => new(
        "worth-rules",
        "What the rule of frequency would have done",
        "The rule of the program file replayed over the periods of the data: the positivity of one period decides on the next. The positivity is that under the screening that there was.",
        [
            new("period", "Period", Unit.Date, "Its first day.", row => Cell.Date(row.Period)),
            new("days", "Days", Unit.Count, "Its days within the data.", row => Cell.Count(row.Days)),
            new("tests", "Valid tests", Unit.Count, "Valid tests in it.", row => Cell.Count(row.Tests)),
            new("positives", "Positive", Unit.Count, "Positive ones.", row => Cell.Count(row.Positives)),
            new("estimate", "Positivity", Unit.Proportion, "Their share.", row => Number(row.Positivity.Estimate, row.Positivity)),
            new("lower", "Lower", Unit.Proportion, "Lower limit.", row => Limit(row.Positivity.Lower, row.Positivity)),
            new("upper", "Upper", Unit.Proportion, "Upper limit.", row => Limit(row.Positivity.Upper, row.Positivity)),
            new("method", "Method", Unit.Text, "Method of the limits.", row => row.Positivity.Method is { } method ? Cell.Text(method) : Cell.Empty),
            new("in_force", "In force", Unit.Text, "The option in force, decided on the periods before.", row => Cell.Text(row.InForce)),
            new("next", "Next", Unit.Text, "The option from the next period on.", row => Cell.Text(row.Next)),
            new("sure", "Sure", Unit.Text, "yes where both limits lead to the same option.", row => Cell.Text(row.IsSure ? "yes" : "no")),
            new("screens_per_person", "Screens of one person", Unit.Ratio, "In the period, under the option in force.", row => Cell.Number(row.ScreensPerPerson)) { Method = FrequencyHistory.Method },
            new("tests_without_flagged_lots", "Valid tests, without flagged lots", Unit.Count, "Valid tests in it without the runs of flagged lots; this and what follows is empty where none is flagged.", row => row.WithoutFlaggedLots is { } without ? Cell.Count(without.Tests) : Cell.Empty),
            new("positives_without_flagged_lots", "Positive, without flagged lots", Unit.Count, "Positive ones among these.", row => row.WithoutFlaggedLots is { } without ? Cell.Count(without.Positives) : Cell.Empty),
            .. Columns<WorthRulePeriod>("estimate_without_flagged_lots", "Positivity, without flagged lots", "Their share.", row => row.WithoutFlaggedLots?.Positivity ?? Nothing, IntervalMethod.Wilson.Name(), Unit.Proportion),
            new("in_force_without_flagged_lots", "In force, without flagged lots", Unit.Text, "The option in force, decided on the periods before without the runs of flagged lots.", row => row.WithoutFlaggedLots is { } without ? Cell.Text(without.InForce) : Cell.Empty),
            new("next_without_flagged_lots", "Next, without flagged lots", Unit.Text, "The option from the next period on.", row => row.WithoutFlaggedLots is { } without ? Cell.Text(without.Next) : Cell.Empty),
            new("sure_without_flagged_lots", "Sure, without flagged lots", Unit.Text, "yes where both limits lead to the same option.", row => row.WithoutFlaggedLots is { } without ? Cell.Text(without.IsSure ? "yes" : "no") : Cell.Empty),
            new("screens_per_person_without_flagged_lots", "Screens of one person, without flagged lots", Unit.Ratio, "In the period, under that option.", row => row.WithoutFlaggedLots is { } without ? Cell.Number(without.ScreensPerPerson) : Cell.Empty) { Method = FrequencyHistory.Method },
        ],
        rows);

    public static Table<WorthCriterion> Criteria(ImmutableArray<WorthCriterion> rows) => new(
        "worth-criteria",
        "The lists of the field",
        "The ten criteria for screening of Wilson and Jungner (1968) as far as the data can answer, and the 28 items of CHEERS 2022 for reporting an economic evaluation, in words of our own.",
        [
            new("list", "List", Unit.Text, "wilson-jungner or cheers-2022.", row => Cell.Text(row.List)),
            new("item", "Item", Unit.Count, "Its number in the list.", row => Cell.Count(row.Item)),
            new("question", "Question", Unit.Text, "What it asks.", row => Cell.Text(row.Question)),
            new("answer", "Answer", Unit.Text, "met, not met, in part, for people to say; of cheers-2022: stated, in part or not stated.", row => Cell.Text(row.Answer)),
            new("evidence", "Evidence", Unit.Text, "What data or program file say of it.", row => row.Evidence.Length == 0 ? Cell.Empty : Cell.Text(row.Evidence)),
        ],
        rows);

    private static IEnumerable<Column<WorthOption>> Columns(string name, string heading, string meaning, Func<WorthOption, EstimateFinding> figure, string method) => Columns<WorthOption>(name, heading, meaning, figure, method);

    private static IEnumerable<Column<TRow>> Columns<TRow>(string name, string heading, string meaning, Func<TRow, EstimateFinding> figure, string method, Unit unit = Unit.Ratio)
    {
        yield return new(name, heading, unit, meaning, row => Number(figure(row).Estimate, figure(row))) { Method = method };
        yield return new(name + "_lower", "Lower", unit, "Lower limit of it.", row => Limit(figure(row).Lower, figure(row))) { Method = method };
        yield return new(name + "_upper", "Upper", unit, "Upper limit of it.", row => Limit(figure(row).Upper, figure(row))) { Method = method };
    }

    // What does not apply to a row, where something undefined would be given a reason.
    private static EstimateFinding Nothing { get; } = new(null, null, null, null, null, null);

    private static Cell Number(double? value, EstimateFinding of) => ReferenceEquals(of, Nothing) ? Cell.Empty : Cell.NumberOr(value, of.EstimateUndefined ?? "not known");

    private static Cell Limit(double? value, EstimateFinding of) => value is { } some ? Cell.Number(some) : of.EstimateUndefined is { } reason ? Cell.Undefined(reason) : Cell.Empty;
}
