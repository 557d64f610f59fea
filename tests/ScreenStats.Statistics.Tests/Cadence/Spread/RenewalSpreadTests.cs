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
}
