using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Statistics.Economics.Frontier;
using ScreenStats.Statistics.Economics.Uncertainty.Acceptability;
using ScreenStats.Statistics.Economics.Uncertainty.Information;

namespace ScreenStats.Evaluation.Worth.Options;

/// <summary>All options with what follows a positive, side by side.</summary>
internal sealed class OptionTable
{
    private readonly CostModel model;

    public OptionTable(CostModel model)
    {
        this.model = model;
        All = [.. AllAtOnce.Of(Choices().ToList(), one => OptionFigures.Of(model, one.Choice, one.Pool))];
        Known = [.. All.Where(option => option.IsKnown)];
        Contenders = [.. Known.Where((option, place) => !Known.Where((other, at) => at != place && other.Choice.Option == option.Choice.Option && Always(other, option, at < place)).Any())];
        Judged = Pick();
        AsDone = model.Work.Options.AsDone is { } done ? OptionFigures.Of(model, new OptionChoice(done, WorthConfirmation.Confirmed), 1) : null;
        None = Known.FirstOrDefault(option => option.Choice.Option.IsNone);
        if (model.Value is { } value && Known.Length > 0) Best = Known.MaxBy(option => (value.Value * option.Centre.Effect) - option.Centre.Cost);
    }

    /// <summary>Every option to choose, the least frequent first; no screening always, for all others are held against it.</summary>
    public ImmutableArray<OptionFigures> All { get; }

    /// <summary>Those whose cost and effect are known.</summary>
    public ImmutableArray<OptionFigures> Known { get; }

    /// <summary>The known ones but those that the same way of screening with something else after a positive beats in every draw, or equals where it comes earlier: they can never be the best.</summary>
    public ImmutableArray<OptionFigures> Contenders { get; }

    /// <summary>The option that the verdict is of: the plan, else what is nearest to what was done; null where there is none.</summary>
    public OptionFigures? Judged { get; }

    /// <summary>What was done, site by site: no option to choose, and held against them; null where nobody was tested twice.</summary>
    public OptionFigures? AsDone { get; }

    /// <summary>No screening; null where its effect is not known.</summary>
    public OptionFigures? None { get; }

    /// <summary>The highest net benefit at the stated value; null where that is not known.</summary>
    public OptionFigures? Best { get; }

    /// <summary>The draws as the statistics take them.</summary>
    public static OptionDraws Draws(OptionFigures option) => new(option.Costs, option.Effects);

    public ImmutableArray<WorthOption> Rows()
    {
        var places = Known.IsEmpty ? [] : CostEffectivenessFrontier.Of([.. Known.Select(option => new OptionOutcome(option.Centre.Cost, option.Centre.Effect))]);
        var chances = model.Value is { } value && !Known.IsEmpty ? AcceptabilityCurve.Of([.. Contenders.Select(Draws)], [value.Value])[0].Chances : [];
        ImmutableArray<double> shares = chances.IsEmpty ? [] : [.. Known.Select(option => Contenders.IndexOf(option) is >= 0 and var at ? chances[at] : 0)];
        var rows = All.Select(option => Row(option, Known.IndexOf(option) is >= 0 and var at ? (places[at], shares.IsEmpty ? null : shares[at]) : null));
        return AsDone is { } done ? [.. rows, Done(done)] : [.. rows];
    }

    // Costs less and does as much in every draw; one that comes earlier, no more.
    private static bool Always(OptionFigures better, OptionFigures worse, bool earlier)
    {
        for (var draw = 0; draw < worse.Costs.Length; draw++)
        {
            if (!(better.Costs[draw] < worse.Costs[draw] || (earlier && better.Costs[draw] == worse.Costs[draw])) || !(better.Effects[draw] >= worse.Effects[draw])) return false;
        }

        return true;
    }

    private IEnumerable<(OptionChoice Choice, int Pool)> Choices()
    {
        var options = model.Work.Options.Options;
        if (!options.IsEmpty && !options.Any(option => option.IsNone)) yield return (new OptionChoice(ScreeningOption.NoScreening, WorthConfirmation.NotNeeded), 1);
        foreach (var option in options)
        {
            if (option.IsNone)
            {
                yield return (new OptionChoice(option, WorthConfirmation.NotNeeded), 1);
                continue;
            }

            yield return (new OptionChoice(option, WorthConfirmation.Confirmed), 1);
            if (model.PoolSize(option) is > 1 and var size) yield return (new OptionChoice(option, WorthConfirmation.Pooled), size);
            yield return (new OptionChoice(option, WorthConfirmation.Without) { Does = model.Work.Options.OnScreen(option) }, 1);
        }
    }

    private OptionFigures? Pick()
    {
        var options = model.Work.Options;
        var option = options.Planned is { IsNone: false } planned ? planned : options.NearestToDone ?? options.Options.LastOrDefault(one => !one.IsNone);
        return option is null ? null : All.FirstOrDefault(one => one.Choice.Option == option && one.Choice.Confirmation == WorthConfirmation.Confirmed);
    }

    // Where it would stand among the options; what would be on their frontier is beside it, and none of them is moved by it.
    private WorthOption Done(OptionFigures done)
    {
        const string reason = "it is what was done, and no option to choose";
        FrontierPlace? place = done.IsKnown ? CostEffectivenessFrontier.Of([.. Known.Append(done).Select(option => new OptionOutcome(option.Centre.Cost, option.Centre.Effect))])[^1] : null;
        var row = Row(done, place is null ? null : (place, null)) with { IsAsDone = true, BestShareUndefined = reason };
        return row.Standing == WorthStanding.OnFrontier ? row with { Standing = WorthStanding.NoOption, IncrementalRatio = EstimateFinding.Undefined(reason) } : row;
    }

    private WorthOption Row(OptionFigures option, (FrontierPlace Place, double? Share)? known)
    {
        var undefined = option.SpendingUndefined ?? option.EffectUndefined;
        var noValue = model.Value is null ? $"the value of one {WorthNames.One(model.Effect)} is not stated" : null;
        return new WorthOption
        {
            Key = option.Choice.Key,
            Option = option.Choice.Option.Name,
            Confirmation = option.Choice.Confirmation,
            Spending = Figure(option.Centre.Spending, option.Spendings, option.SpendingUndefined, WorthNotes.Draws),
            Cost = Figure(option.Centre.Cost, option.Costs, option.SpendingUndefined ?? Saved(option), WorthNotes.Draws),
            Effect = Figure(option.Centre.Effect, option.Effects, option.EffectUndefined, WorthNotes.Draws),
            NetBenefit = model.Value is { } value
                ? Figure((value.Value * option.Centre.Effect) - option.Centre.Cost, option.NetBenefits(value.Value), undefined, NetBenefit.Method)
                : EstimateFinding.Undefined(noValue!),
            MeanNetBenefit = model.Value is { } worth && option.IsKnown && Draws(option).Mean is var mean ? (worth.Value * mean.Effect) - mean.Cost : null,
            MeanNetBenefitUndefined = model.Value is not null && option.IsKnown ? null : noValue ?? undefined ?? "not known",
            Standing = known is null ? WorthStanding.NotKnown : known.Value.Place.Standing switch
            {
                OptionStanding.OnFrontier => WorthStanding.OnFrontier,
                OptionStanding.StrictlyDominated => WorthStanding.Dominated,
                OptionStanding.ExtendedlyDominated => WorthStanding.ExtendedlyDominated,
                _ => WorthStanding.SameAsEarlier,
            },
            DominatedBy = known is null ? "" : DominatedBy(known.Value.Place),
            IncrementalRatio = known is null ? EstimateFinding.Undefined(undefined ?? "not known") : EstimateFinding.Of(known.Value.Place.IncrementalRatio),
            BestShare = known?.Share,
            BestShareUndefined = known?.Share is not null ? null : undefined ?? noValue ?? "not known",
            IsBest = option == Best,
            IsJudged = option == Judged,
            IsNone = option.Choice.Option.IsNone,
        };
    }

    // Of those that dominate strictly, the cheapest says enough.
    private string DominatedBy(FrontierPlace place) => place.Standing == OptionStanding.StrictlyDominated
        ? Known[place.DominatedBy.MinBy(by => Known[by].Centre.Cost)].Choice.Name
        : string.Join(" and ", place.DominatedBy.Select(by => Known[by].Choice.Name));

    // Where savings are counted the infections averted must be known for the cost.
    private static string? Saved(OptionFigures option) => double.IsFinite(option.Centre.Cost) ? null : option.EffectUndefined ?? "what it saves is not known";

    private EstimateFinding Figure(double value, double[] draws, string? undefined, string method) =>
        undefined is not null ? EstimateFinding.Undefined(undefined) : model.Work.Outcomes.Figure(value, draws, "not known", method);
}
