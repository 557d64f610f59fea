using ScreenStats.Evaluation.Worth.Options;

namespace ScreenStats.Evaluation.Worth.Sure;

/// <summary>How many draws let infection grow by itself, and the mean net benefit of the others: a few such draws may make most of a mean.</summary>
/// <param name="Share">Their share; null where what passes on is not known.</param>
/// <param name="MeanWithout">The mean net benefit of the option judged over the other draws; null where there are none, or it is not known.</param>
internal readonly record struct GrowingDraws(double? Share, double? MeanWithout)
{
    public static GrowingDraws Of(CostModel model, OptionTable options)
    {
        var outcomes = model.Work.Outcomes;
        if (outcomes.Reproduction.Estimate is null) return new GrowingDraws(null, null);
        if (model.Value is not { } value || options.Judged is not { IsKnown: true } judged) return new GrowingDraws(outcomes.Growing, null);
        var reproductions = outcomes.Reproductions;
        double[] others = [.. judged.NetBenefits(value.Value).Where((_, draw) => !(reproductions[draw] >= 1))];
        return new GrowingDraws(outcomes.Growing, others.Length == 0 ? null : others.Average());
    }
}
