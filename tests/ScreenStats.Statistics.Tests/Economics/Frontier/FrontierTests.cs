using ScreenStats.Statistics.Economics.Frontier;

namespace ScreenStats.Statistics.Tests.Economics.Frontier;

public sealed class FrontierTests
{
    private static readonly Gen<OptionOutcome[]> Coarse =
        Gen.Select(Gen.Int[-5, 9], Gen.Int[-4, 7]).Select((cost, effect) => new OptionOutcome(cost, effect)).Array[1, 12];

    private static readonly Gen<OptionOutcome[]> Fine =
        Gen.Select(Gen.Double[-1e6, 1e6], Gen.Double[-1e3, 1e3]).Select((cost, effect) => new OptionOutcome(cost, effect)).Array[1, 12];

    [Fact]
    public void Every_row_of_the_frontiers_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("frontiers"), row =>
    {
        var places = CostEffectivenessFrontier.Of(Options(row));
        var on = places.Where(place => place.Standing == OptionStanding.OnFrontier).OrderBy(place => place.Outcome.Effect).ToArray();
        return
        [
            row.Same("standing", string.Join(' ', places.Select(place => Word(place.Standing)))),
            row.Same("by", string.Join(' ', places.Select(place => place.DominatedBy.IsEmpty ? "-" : string.Join('+', place.DominatedBy)))),
            row.Same("on", string.Join(' ', on.Select(place => place.Index))),
            .. row.Differences("ratios", [.. on.Skip(1).Select(place => place.IncrementalRatio.Value)]),
        ];
    });

    [Fact]
    public void Every_row_of_the_ratios_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("incremental-ratios"), row => new[]
    {
        row.Mismatch("ratio", CostEffectivenessFrontier.Ratio(
            new OptionOutcome(row.Number("cost_from"), row.Number("effect_from")), new OptionOutcome(row.Number("cost_to"), row.Number("effect_to"))).Value),
    });

    [Fact]
    public void Every_row_of_the_net_benefits_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("net-benefits"), row =>
    {
        var (options, value) = (Options(row), row.Number("value"));
        return
        [
            .. row.Differences("net", [.. options.Select(option => (double?)NetBenefit.Of(option, value))]),
            row.Same("best", string.Join(' ', NetBenefit.Best(options, value))),
        ];
    });

    [Fact]
    public void Dominance_agrees_with_a_search_over_all_mixes_of_two() => Coarse.Sample(options =>
    {
        var places = CostEffectivenessFrontier.Of(options);
        return places.All(place =>
        {
            var own = place.Outcome;
            var strict = options.Any(other => other.Cost <= own.Cost && other.Effect >= own.Effect && other != own);

            // Whole numbers: cost of the mix times the distance of the effects, without division.
            var mixed = options.Any(a => options.Any(b => a.Effect <= own.Effect && own.Effect <= b.Effect && a.Effect < b.Effect
                && (a.Cost * (b.Effect - own.Effect)) + (b.Cost * (own.Effect - a.Effect)) < own.Cost * (b.Effect - a.Effect)));
            var same = options.Take(place.Index).Contains(own);
            return place.Standing == (strict ? OptionStanding.StrictlyDominated : same ? OptionStanding.SameAsEarlier
                : mixed ? OptionStanding.ExtendedlyDominated : OptionStanding.OnFrontier);
        });
    });

    [Fact]
    public void For_any_value_the_best_net_benefit_lies_on_the_frontier_within_its_stated_range() => Gen.Select(Fine, Gen.Double[0, 5e3]).Sample((options, value) =>
    {
        var places = CostEffectivenessFrontier.Of(options);
        return NetBenefit.Best(options, value).Any(best => places[best] is { Standing: OptionStanding.OnFrontier, BestFrom: { } from } place
            && from <= value * (1 + 1e-9) && !(place.BestTo < value * (1 - 1e-9)));
    });

    [Fact]
    public void Ratios_along_the_frontier_rise_and_its_ranges_join() => Gen.OneOf(Coarse, Fine).Sample(options =>
    {
        var on = CostEffectivenessFrontier.Of(options).Where(place => place.Standing == OptionStanding.OnFrontier).OrderBy(place => place.Outcome.Effect).ToArray();
        return on[0].IncrementalRatio.Reason == UndefinedReason.FirstOfFrontier && on[0].BestFrom == 0 && on[^1].BestTo is null
            && on.Zip(on.Skip(1)).All(pair => pair.Second.Previous == pair.First.Index && pair.First.Outcome.Cost < pair.Second.Outcome.Cost
                && pair.First.BestTo >= pair.First.BestFrom && Math.Abs(pair.First.BestTo.GetValueOrDefault() - pair.Second.BestFrom.GetValueOrDefault()) <= 1e-9 * pair.Second.BestFrom)
            && on.Skip(1).Zip(on.Skip(2)).All(pair => pair.First.IncrementalRatio.Value <= pair.Second.IncrementalRatio.Value * (1 + 1e-11));
    });

    [Fact]
    public void The_mix_that_dominates_has_the_effect_at_less_cost() => Fine.Sample(options =>
        CostEffectivenessFrontier.Of(options).Where(place => place.Standing == OptionStanding.ExtendedlyDominated).All(place =>
        {
            var pair = place.DominatedBy.Select(index => options[index]).OrderBy(option => option.Effect).ToArray();
            var share = place.ShareOfDearer.GetValueOrDefault();
            var effect = pair[0].Effect + (share * (pair[1].Effect - pair[0].Effect));
            var cost = pair[0].Cost + (share * (pair[1].Cost - pair[0].Cost));
            return share is >= 0 and <= 1 && Math.Abs(effect - place.Outcome.Effect) < 1e-9 && place.MixSaves >= 0 && Math.Abs(cost + place.MixSaves.GetValueOrDefault() - place.Outcome.Cost) < 1e-6;
        }));

    [Fact]
    public void The_order_of_the_options_does_not_matter() => Gen.Select(Fine, Gen.Int[0, 1000]).Sample((options, turn) =>
    {
        var by = turn % options.Length;
        OptionOutcome[] turned = [.. options.Skip(by), .. options.Take(by)];
        // Which of two equal options stands for both depends on the order; the rest does not.
        (OptionOutcome, OptionStanding)[] Standings(OptionOutcome[] list) =>
            [.. CostEffectivenessFrontier.Of(list).Where(place => place.Standing != OptionStanding.SameAsEarlier).Select(place => (place.Outcome, place.Standing))];
        return Standings(options).ToHashSet().SetEquals(Standings(turned));
    });

    [Fact]
    public void The_increment_is_the_difference_of_net_benefits()
    {
        OptionOutcome screening = new(900, 12), nothing = new(100, 2);
        NetBenefit.Incremental(screening, nothing, 90).Should().Be(100);
        NetBenefit.Incremental(nothing, screening, 90).Should().Be(-100);
        CostEffectivenessFrontier.Ratio(nothing, screening).Value.Should().Be(80);
    }

    [Fact]
    public void A_ratio_that_would_say_nothing_has_a_reason()
    {
        CostEffectivenessFrontier.Ratio(new(1, 3), new(2, 3)).Reason.Should().Be(UndefinedReason.EffectsAlike);
        CostEffectivenessFrontier.Ratio(new(1, 3), new(2, 2)).Reason.Should().Be(UndefinedReason.OneOptionDominates);
        CostEffectivenessFrontier.Ratio(new(2, 2), new(1, 3)).Reason.Should().Be(UndefinedReason.OneOptionDominates);
        CostEffectivenessFrontier.Ratio(new(0, 0), new(1e15, 1e-300)).Reason.Should().Be(UndefinedReason.TooLarge);
        CostEffectivenessFrontier.Of([new(1, 1), new(2, 0)])[1].IncrementalRatio.Reason.Should().Be(UndefinedReason.NotOnFrontier);
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var calls = new (Action Call, string Name)[]
        {
            (() => _ = new OptionOutcome(double.NaN, 1), "cost"), (() => _ = new OptionOutcome(0, 1e16), "effect"),
            (() => NetBenefit.Of(new(1, 1), -1), "valueOfEffect"), (() => NetBenefit.Best([new(1, 1)], double.NaN), "valueOfEffect"),
            (() => NetBenefit.Incremental(new(1, 1), new(1, 1), double.PositiveInfinity), "valueOfEffect"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
        FluentActions.Invoking(() => CostEffectivenessFrontier.Of([])).Should().Throw<ArgumentException>().WithParameterName("options");
        FluentActions.Invoking(() => NetBenefit.Best([], 1)).Should().Throw<ArgumentException>().WithParameterName("options");
    }

    private static OptionOutcome[] Options(ReferenceRow row) => [.. row.Pairs("options").Select(pair => new OptionOutcome(pair.First, pair.Second))];

    private static string Word(OptionStanding standing) => standing switch
    {
        OptionStanding.OnFrontier => "on",
        OptionStanding.StrictlyDominated => "strict",
        OptionStanding.ExtendedlyDominated => "extended",
        _ => "same",
    };
}
