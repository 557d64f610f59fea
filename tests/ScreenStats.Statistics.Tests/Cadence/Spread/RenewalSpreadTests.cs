using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Spread;

namespace ScreenStats.Statistics.Tests.Cadence.Spread;

public sealed class RenewalSpreadTests
{
    private static readonly ImmutableArray<double> Profile = [0, 1, 3, 4, 3, 2, 1];

    [Fact]
    public void Without_depletion_the_days_settle_at_imports_over_one_minus_reproduction() =>
        Gen.Select(Gen.Double[0.01, 1], Gen.Double[0, 0.8]).Sample((imports, r) =>
        {
            var day = RenewalSpread.Run(1e15, imports, r, Profile, 1500).Days[^1];
            var steady = RenewalSpread.SteadyState(imports, r).Value!.Value;
            return Math.Abs(day.Infections - steady) <= 1e-9 * steady && Math.Abs(day.Imported - imports) <= 1e-9 * imports;
        });

    [Fact]
    public void Without_depletion_the_days_grow_at_the_rate_of_the_equation() => Gen.Double[0.5, 4].Sample(r =>
    {
        var days = RenewalSpread.Run(1e15, 0, r, Profile, 60, earlierPerDay: 1e-15).Days;
        var rate = RenewalSpread.GrowthRate(r, Profile).Value!.Value;
        return Math.Abs(Math.Log(days[59].Inside / days[58].Inside) - rate) <= 1e-6;
    });

    [Fact]
    public void Extremes_have_a_right_answer_or_a_reason()
    {
        RenewalSpread.Totals(100, 0, 3, Profile.AsSpan(), 91).Should().Be(new RenewalTotals(0, 0), "nothing is brought in");
        RenewalSpread.Totals(100, 2, 0, Profile.AsSpan(), 91).Inside.Should().Be(0);
        RenewalSpread.Totals(100, 2, 1, Profile.AsSpan(), 0).Infections.Should().Be(0);
        RenewalSpread.Totals(1, 0.01, 1e9, Profile.AsSpan(), 91).Inside.Should().Be(0, "one worker has nobody to infect");
        RenewalSpread.Totals(1, 0.01, 1e9, Profile.AsSpan(), 91).Imported.Should().BeApproximately(1 - Math.Exp(-0.91), 1e-12);
        RenewalSpread.Totals(1e6, 1, 1e15, Profile.AsSpan(), 91).Infections.Should().BeApproximately(1e6, 1e-6, "everybody and no more");
        RenewalSpread.SteadyState(1, 1).Reason.Should().Be(UndefinedReason.SpreadWithoutBound);
        RenewalSpread.GrowthRate(0, Profile).Reason.Should().Be(UndefinedReason.NoSpread);
        RenewalSpread.GrowthRate(1, Profile).Value.Should().Be(0);
    }

    [Fact]
    public void Every_row_of_the_renewal_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("renewal-spread"), row =>
    {
        ImmutableArray<double> profile = [.. row.Numbers("profile")];
        var totals = RenewalSpread.Totals(row.Number("people"), row.Number("imports"), row.Number("reproduction"), profile.AsSpan(), (int)row.Count("days"), row.Number("earlier"));
        return new[]
        {
            row.Mismatch("imported", totals.Imported), row.Mismatch("inside", totals.Inside),
            row.Mismatch("growth", RenewalSpread.GrowthRate(row.Number("reproduction"), profile).Value),
        };
    });

    [Fact]
    public void No_more_are_infected_than_there_are_and_less_spread_never_infects_more() => Gen.Select(
        Gen.Double[0, 7].Select(e => Math.Pow(10, e)), Gen.Double[0, 100], Gen.Double[0, 10], Gen.Double[0, 1], Gen.Int[0, 200]).Sample((people, imports, r, less, days) =>
    {
        var course = RenewalSpread.Run(people, imports, r, Profile, days);
        var totals = RenewalSpread.Totals(people, imports, r, Profile.AsSpan(), days);
        var thinned = RenewalSpread.Totals(people, imports, r * less, Profile.AsSpan(), days);
        return course.Totals == totals && course.Days.Length == days && totals.Infections <= people * (1 + 1e-12) && totals.Imported >= 0 && totals.Inside >= 0
            && thinned.Infections <= totals.Infections * (1 + 1e-9) && Math.Abs(course.Days.Sum(day => day.Infections) - totals.Infections) <= 1e-9 * (1 + totals.Infections);
    });

    [Fact]
    public void Steady_before_the_first_day_and_the_same_spread_stay_steady() => Gen.Select(Gen.Double[0, 0.95], Gen.Double[0.1, 3]).Sample((r, imports) =>
    {
        var steady = RenewalSpread.SteadyState(imports, r).Value!.Value;
        return RenewalSpread.Run(1e15, imports, r, Profile, 91, earlierPerDay: steady).Days.All(day => Math.Abs(day.Infections - steady) <= 1e-10 * steady);
    });

    [Fact]
    public void The_simulated_means_lie_within_four_standard_errors() => Mismatches.ShouldBeNone(ReferenceTable.Load("renewal-simulations"), row =>
    {
        ImmutableArray<double> profile = [.. row.Numbers("profile")];
        var totals = RenewalSpread.Totals(row.Number("people"), row.Number("imports"), row.Number("reproduction"), profile.AsSpan(), (int)row.Count("days"));
        var gap = Math.Abs(totals.Infections - row.Number("mean"));
        return new[] { gap <= (4 * row.Number("error")) + (row.Number("correction") * totals.Infections) ? null : $"{row.Id}: {row.Number("mean")} simulated, {totals.Infections} expected" };
    });

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var calls = new (Action Call, string Name)[]
        {
            (() => RenewalSpread.Run(0, 1, 1, Profile, 1), "people"), (() => RenewalSpread.Run(5, -1, 1, Profile, 1), "importsPerDay"), (() => RenewalSpread.Run(5, 1, double.NaN, Profile, 1), "reproduction"),
            (() => RenewalSpread.Run(5, 1, 1, [], 1), "infectiousnessByDay"), (() => RenewalSpread.Run(5, 1, 1, default, 1), "infectiousnessByDay"), (() => RenewalSpread.Run(5, 1, 1, [0, 0], 1), "infectiousnessByDay"),
            (() => RenewalSpread.Run(5, 1, 1, [1, -1], 1), "infectiousnessByDay"), (() => RenewalSpread.Run(5, 1, 1, Profile, -1), "days"), (() => RenewalSpread.Run(5, 1, 1, Profile, 100_001), "days"),
            (() => RenewalSpread.Run(5, 1, 1, Profile, 1, -1), "earlierPerDay"), (() => RenewalSpread.SteadyState(-1, 0), "importsPerDay"), (() => RenewalSpread.SteadyState(1, -1), "reproduction"),
            (() => RenewalSpread.GrowthRate(2, []), "infectiousnessByDay"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().Which.ParamName.Should().Be(name);
        RenewalSpread.Run(5, 1, 0, [], 10).Totals.Inside.Should().Be(0, "where nothing is passed on no day need be infectious");
    }
}
