using ScreenStats.Statistics.Economics.Yield.Rules;

namespace ScreenStats.Statistics.Tests.Economics.Yield;

public sealed class FrequencyHistoryTests
{
    private static readonly FrequencyRule Rule = new([new(0, 28), new(0.05, 7), new(0.1, 3.5, beginsAbove: true)]);

    [Fact]
    public void Every_row_of_the_rules_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("frequency-rules"), row =>
    {
        var bands = row.Words("bands").Select(word => word.Split(':')).Select(part => new FrequencyBand(Lists.Number(part[0].TrimStart('>')), Lists.Number(part[1]), part[0][0] == '>')).ToArray();
        var rule = new FrequencyRule(bands, (int)row.Count("rise"), (int)row.Count("fall"));
        var periods = row.Words("periods").Select(word => word.Split('/')).Select(part => new YieldPeriod((long)Lists.Number(part[0]), (long)Lists.Number(part[1]), Lists.Number(part[2]))).ToArray();
        var decisions = FrequencyHistory.Replay(rule, periods, (int)row.Count("start"));
        return new[]
        {
            row.Same("band", string.Join(' ', decisions.Select(decision => decision.Band is { } band ? $"{band}" : "-"))),
            row.Same("in_force", string.Join(' ', decisions.Select(decision => decision.InForce))), row.Same("next", string.Join(' ', decisions.Select(decision => decision.Next))),
            row.Mismatch("screens", decisions.Sum(decision => decision.ScreensPerPerson)),
        };
    });

    [Fact]
    public void What_is_in_force_was_decided_on_earlier_periods_alone() =>
        Gen.Select(Gen.Select(Gen.Long[0, 30], Gen.Long[0, 200]).Select((x, more) => new YieldPeriod(x, x + more, 7)).Array[2, 20], Gen.Int[1, 3], Gen.Int[1, 3]).Sample((periods, rise, fall) =>
        {
            var rule = new FrequencyRule(Rule.Bands, rise, fall);
            var all = FrequencyHistory.Replay(rule, periods, 1);
            var short1 = FrequencyHistory.Replay(rule, periods[..^1], 1);
            return all.Take(short1.Length).Zip(short1).All(pair => pair.First == pair.Second) && all.Zip(all.Skip(1)).All(pair => pair.First.Next == pair.Second.InForce);
        });

    [Fact]
    public void A_yield_whose_limits_lie_in_two_bands_is_not_sure()
    {
        var decisions = FrequencyHistory.Replay(Rule, [new(5, 100, 28), new(700, 10_000, 28), new(0, 0, 28)], 0);
        decisions.Select(decision => decision.IsSure).Should().Equal(false, true, false);
        decisions.Select(decision => decision.Next).Should().Equal(1, 1, 1);
        decisions[0].ScreensPerPerson.Should().Be(1);
        decisions[1].ScreensPerPerson.Should().Be(4);
    }

    [Fact]
    public void No_screening_may_be_the_first_band_only()
    {
        var rule = new FrequencyRule([new(0, null), new(0.01, 7)]);
        FrequencyHistory.Replay(rule, [new(0, 10, 14), new(1, 10, 14)], 0).Select(decision => decision.ScreensPerPerson).Should().Equal(0, 0);
        FluentActions.Invoking(() => new FrequencyRule([new(0, 7), new(0.01, null)])).Should().Throw<ArgumentException>().WithParameterName("bands");
        FluentActions.Invoking(() => new FrequencyRule([new(0, null), new(0.01, null)])).Should().Throw<ArgumentException>().WithParameterName("bands");
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var calls = new (Action Call, string Name)[]
        {
            (() => _ = new FrequencyBand(2, 7), "from"), (() => _ = new FrequencyBand(0, 0), "everyDays"), (() => _ = new FrequencyRule([]), "bands"), (() => _ = new FrequencyRule([new(0.1, 7)]), "bands"),
            (() => _ = new FrequencyRule([new(0, 7), new(0, 3)]), "bands"), (() => _ = new FrequencyRule([new(0, 7), new(0.1, 14)]), "bands"), (() => _ = new FrequencyRule([new(0, 7)], 0), "periodsToRise"),
            (() => _ = new FrequencyRule([new(0, 7)], 1, 0), "periodsToFall"), (() => _ = new YieldPeriod(2, 1, 7), "found"), (() => _ = new YieldPeriod(0, -1, 7), "screens"),
            (() => _ = new YieldPeriod(0, 1, 0), "days"), (() => FrequencyHistory.Replay(Rule, [], 3), "startsIn"), (() => Rule.BandOf(1.5), "share"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentException>().WithParameterName(name);
        new FrequencyRule([new(0, 7), new(0, 3, beginsAbove: true)]).BandOf(0).Should().Be(0, "a band may begin just above none");
    }
}
