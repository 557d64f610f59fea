using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Evaluation.Worth.Options;
using ScreenStats.Evaluation.Worth.Prices;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Economics.Turning;

namespace ScreenStats.Evaluation.Worth.Turns;

/// <summary>Where each figure turns the option judged from paying to not paying.</summary>
internal static class TurnRows
{
    private const double LeastParticipation = 0.02;
    private const int ParticipationSteps = 7;

    public static ImmutableArray<WorthTurn> Of(CostModel model, OptionTable options, IncidenceNets? nets)
    {
        var rows = ImmutableArray.CreateBuilder<WorthTurn>();
        if (options.Judged is { IsKnown: true } judged && model.Value is { } value)
        {
            var turn = new TurnModel(model, judged, value.Value);
            Func<TurnModel, WorthTurn?>[] turns = [Prevalence, Specificity, CostOfScreen, Participation, ValueOfEffect];
            if (nets is not null) rows.Add(IncidenceRows.Judged(nets, judged));
            rows.AddRange(AllAtOnce.Of(turns, of => of(turn)).OfType<WorthTurn>());
        }
        else if (options.Judged is { IsKnown: true } only && ValueOfEffect(new TurnModel(model, only, 0)) is { } least)
        {
            rows.Add(least);
        }

        if (HalfFalse(model, options) is { } half) rows.Add(half);
        return rows.ToImmutable();
    }

    private static WorthTurn? Prevalence(TurnModel turn)
    {
        var centre = turn.Centre;
        if (Accuracy(turn.Costs) is not { } accuracy || turn.Does(CadenceMeasure.TruePositives) is not > 0 || turn.Does(CadenceMeasure.Screens) is not > 0) return null;
        var (found, screens) = (turn.Does(CadenceMeasure.TruePositives), turn.Does(CadenceMeasure.Screens));
        var prices = turn.Costs.Prices.Centre;
        var alarm = prices[Price.ConfirmatoryTest] + (turn.Costs.Work.Known.DaysOfFalseAlarm(centre)!.Value * prices[Price.WorkingDay]);
        // What a true positive gains, less its own test and isolation: all gains of the option, shared out over those found; isolation is what screening adds to that of symptoms.
        var discounted = turn.Judged.Centre.Effect == 0 ? 1 : turn.Judged.Centre.Effect / turn.Does(turn.Costs.EffectMeasure);
        var net = discounted > 0 ? turn.Net / discounted : turn.Net;
        // A screen costs what its inconclusive ones make as well.
        var each = prices.Screen + (((turn.Does(CadenceMeasure.InconclusiveRepeats) * prices.Screen) + (turn.Does(CadenceMeasure.InconclusiveTests) * prices[Price.ConfirmatoryTest])) / screens);
        var worth = (net + (screens * each) + (turn.Does(CadenceMeasure.FalseAlarms) * alarm)) / found;
        if (!OptionFigures.Countable(worth) || !OptionFigures.Countable(alarm)) return null;
        var gain = new ScreenGain
        {
            Prevalence = 0,
            Sensitivity = accuracy.Sensitivity,
            Specificity = accuracy.Specificity,
            CostOfScreen = each,
            CostOfFalsePositive = alarm,
            BenefitOfTruePositive = Math.Max(worth, 0),
        };
        var least = BreakEven.Prevalence(gain);
        return Row("prevalence", "people infected among those screened", "share", least, least.Value, Among(turn.Costs, turn.Judged), above: true);
    }

    private static WorthTurn? Specificity(TurnModel turn)
    {
        if (turn.Centre[Parameter.FalsePositiveRate] is not { } rate) return null;
        var ends = turn.Costs.Work.Draws.Ends(Parameter.FalsePositiveRate);
        double Net(double specificity) => turn.NetAt(turn.Centre.With(Parameter.FalsePositiveRate, 1 - specificity));
        // A straight line: its values at both ends say where it is 0.
        var (none, all) = (Net(0), Net(1));
        var found = all < 0 ? Estimate.Undefined(UndefinedReason.NeverPays) : none >= 0 ? Estimate.Undefined(UndefinedReason.AlwaysPays)
            : Estimate.Point(none / (none - all), BreakEven.Method);
        return Row("specificity", "specificity of a screen", "share", found, found.Value, (1 - rate, null, 1 - ends?.Upper, 1 - ends?.Lower), above: true);
    }

    private static WorthTurn? CostOfScreen(TurnModel turn)
    {
        var screens = turn.Does(CadenceMeasure.Screens);
        var prices = turn.Costs.Prices;
        if (!(screens > 0)) return null;
        double Net(double cost) => turn.NetAt(turn.Centre, prices.Centre.With(Price.Screen, cost), turn.Value);
        // A straight line: its values at nothing and at one say where it is 0, whatever a screen costs now.
        var (free, one) = (Net(0), Net(1));
        var most = free > one ? free / (free - one) : double.PositiveInfinity;
        var found = free < 0 ? Estimate.Undefined(UndefinedReason.NeverPays) : double.IsFinite(most) ? Estimate.Point(most, BreakEven.Method) : Estimate.Undefined(UndefinedReason.TooLarge);
        var amount = prices.ScreenAmount()!.Value;
        return Row("cost-of-screen", "cost of a screen", "money", found, found.Value,
            (amount.Value, null, amount.IsExact ? null : amount.Lower, amount.IsExact ? null : amount.Upper), above: false);
    }

    private static WorthTurn? Participation(TurnModel turn)
    {
        if (turn.Judged.Choice.Option.IsAsDone || turn.Centre[Parameter.Participation] is not { } present) return null;
        double Net(double share) => turn.NetAt(turn.Centre.With(Parameter.Participation, share));
        var ends = turn.Costs.Work.Draws.Ends(Parameter.Participation);
        return Searched(new("participation", "due screens that are taken", "share"), new PayingRange(Net, LeastParticipation, 1, ParticipationSteps, present), (present, null, ends?.Lower, ends?.Upper));
    }

    private static WorthTurn? ValueOfEffect(TurnModel turn)
    {
        var (cost, effect) = (turn.Judged.Centre.Cost, turn.Judged.Centre.Effect);
        var found = cost <= 0 ? Estimate.Undefined(UndefinedReason.AlwaysPays)
            : !(effect > 0) ? Estimate.Undefined(UndefinedReason.NeverPays)
            : double.IsFinite(cost / effect) ? Estimate.Point(cost / effect, BreakEven.Method) : Estimate.Undefined(UndefinedReason.TooLarge);
        var stated = turn.Costs.Value;
        var one = WorthNames.One(turn.Costs.Effect);
        return Row("value-of-effect", $"value of one {one}", $"money for each {one}", found, found.Value,
            (stated?.Value, stated is null ? "not stated" : null, stated?.Lower, stated?.Upper), above: true);
    }

    // Known without any price.
    private static WorthTurn? HalfFalse(CostModel model, OptionTable options)
    {
        if (options.Judged is not { } judged || Accuracy(model) is not { } accuracy) return null;
        var found = PredictiveValue.PrevalenceForPositiveShare(0.5, AccuracyStatement.Exact(accuracy.Sensitivity), AccuracyStatement.Exact(accuracy.Specificity));
        return Row("half-false-prevalence", "people infected among those screened, below which half of the alarms are false", "share", found, found.Value, Among(model, judged), above: true)
            with { Method = found.Value is null ? null : BreakEven.Method };
    }

    private static (double Sensitivity, double Specificity)? Accuracy(CostModel model) =>
        model.Work.Draws.Centre[Parameter.Sensitivity] is > 0 and var sensitivity && model.Work.Draws.Centre[Parameter.FalsePositiveRate] is { } rate ? (sensitivity, 1 - rate) : null;

    // Infected people among those screened: those found, by the sensitivity. With its limits from the draws.
    private static (double? Value, string? Undefined, double? Lower, double? Upper) Among(CostModel model, OptionFigures option)
    {
        var (work, outcomes) = (model.Work, model.Work.Outcomes);
        double[] Drawn(CadenceMeasure measure) => outcomes.Drawn(option.Choice.Option, measure, outcomes.LeadingBasis);
        var sensitivity = work.Draws.Drawn(Parameter.Sensitivity);
        static double Share(double found, double screens, double sensitivity) => screens > 0 && sensitivity > 0 ? Math.Min(1, found / screens / sensitivity) : double.NaN;
        var of = model.Centre(option.Choice.Option);
        var (found, screens) = (Drawn(CadenceMeasure.TruePositives), Drawn(CadenceMeasure.Screens));
        var figure = outcomes.Figure(
            Share(of(CadenceMeasure.TruePositives), of(CadenceMeasure.Screens), work.Draws.Centre.Known(Parameter.Sensitivity)),
            [.. found.Select((positives, draw) => Share(positives, screens[draw], sensitivity(draw) ?? double.NaN))], "how many are found is not known");
        return (figure.Estimate, figure.EstimateUndefined, figure.Lower, figure.Upper);
    }

    /// <summary>A row found by search; the place nearest to the figure as it is counts, and where the stretch that pays has another end that stands beside.</summary>
    public static WorthTurn Searched(TurnName name, PayingRange range, (double? Value, string? Undefined, double? Lower, double? Upper) present) =>
        Row(name.Figure, name.Name, name.Unit, range.Nearest is { } at ? Estimate.Point(at, TurningPoint.Method) : Estimate.Undefined(range.Starts ? UndefinedReason.AlwaysPays : UndefinedReason.NeverPays), range.Nearest, present, range.Rises)
            with { OtherBreakEven = range.Other, Option = name.Option, Key = name.Key, Pays = range.Other is not null ? WorthPays.Between : range.Nearest is null ? range.Starts ? WorthPays.Always : WorthPays.Never : range.Rises ? WorthPays.Above : WorthPays.Below };

    private static WorthTurn Row(
        string figure, string name, string unit, Estimate found, double? breakEven, (double? Value, string? Undefined, double? Lower, double? Upper) present, bool above) => new()
    {
        Figure = figure,
        Name = name,
        Unit = unit,
        BreakEven = breakEven,
        BreakEvenUndefined = breakEven is null ? (found.Reason ?? UndefinedReason.TooLarge).Describe() : null,
        Present = present.Value,
        PresentUndefined = present.Value is null ? present.Undefined ?? "not known" : null,
        Lower = present.Value is null ? null : present.Lower,
        Upper = present.Value is null ? null : present.Upper,
        Pays = breakEven is not null ? above ? WorthPays.Above : WorthPays.Below : found.Reason switch
        {
            UndefinedReason.AlwaysPays => WorthPays.Always,
            UndefinedReason.NeverPays => WorthPays.Never,
            _ => WorthPays.NotKnown,
        },
        Method = breakEven is null ? null : found.Method,
    };
}
