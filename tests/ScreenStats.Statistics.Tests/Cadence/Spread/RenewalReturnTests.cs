using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Spread;

namespace ScreenStats.Statistics.Tests.Cadence.Spread;

/// <summary>The renewal equation where immunity ends after some days.</summary>
public sealed class RenewalReturnTests
{
    private static readonly ImmutableArray<double> Profile = [0, 1, 3, 4, 3, 2, 1];

    [Fact]
    public void Every_row_of_the_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("renewal-returns"), row =>
    {
        ImmutableArray<double> profile = [.. row.Numbers("profile")];
        var course = RenewalSpread.Run(row.Number("people"), row.Number("imports"), row.Number("reproduction"), profile, (int)row.Count("days"), row.Number("earlier"), row.Number("immunity"), row.Count("immune") == 1);
        return new[] { row.Mismatch("imported", course.Totals.Imported), row.Mismatch("inside", course.Totals.Inside), row.Mismatch("last", course.Days.IsEmpty ? 0 : course.Days[^1].Infections) };
    });

    [Fact]
    public void With_imports_alone_the_days_settle_where_as_many_return_as_are_infected() => Gen.Select(Gen.Double[1, 1000], Gen.Double[0.0005, 0.05], Gen.Int[1, 60]).Sample((people, each, immunity) =>
    {
        var imports = people * each;
        var day = RenewalSpread.Run(people, imports, 0, [], 20_000, immunityDays: immunity).Days[^1].Infections;
        var chance = 1 - Math.Exp(-imports / people);
        return Math.Abs(day - (people * chance / (1 + ((immunity - 1) * chance)))) <= 1e-6 * people;
    });

    [Fact]
    public void Immunity_of_one_day_leaves_everybody_to_be_infected_on_each_day() => Gen.Select(Gen.Double[1, 1000], Gen.Double[0, 30]).Sample((people, imports) =>
        RenewalSpread.Run(people, imports, 0, [], 50, immunityDays: 1).Days.All(day => Math.Abs(day.Infections - (people * (1 - Math.Exp(-imports / people)))) <= 1e-9 * people));

    [Fact]
    public void Immunity_of_all_the_days_is_immunity_for_good_and_where_it_ends_no_fewer_are_infected() => Gen.Select(
        Gen.Double[0, 6].Select(e => Math.Pow(10, e)), Gen.Double[0, 100], Gen.Double[0, 10], Gen.Int[1, 200], Gen.Double[1, 200]).Sample((people, imports, r, days, immunity) =>
    {
        var good = RenewalSpread.Totals(people, imports, r, Profile.AsSpan(), days);
        var whole = RenewalSpread.Totals(people, imports, r, Profile.AsSpan(), days, immunityDays: days + immunity);
        var once = RenewalSpread.Totals(people, imports, r, Profile.AsSpan(), days, immunityDays: immunity);
        return good == whole && once.Infections >= good.Infections * (1 - 1e-9);
    });

    [Fact]
    public void Who_was_infected_earlier_and_is_immune_is_fewer_to_infect_and_without_days_of_immunity_nobody_was() => Gen.Select(
        Gen.Double[1, 1000], Gen.Double[0, 10], Gen.Double[0, 5], Gen.Double[1, 200], Gen.Double[0, 1]).Sample((people, imports, r, immunity, share) =>
    {
        var earlier = share * people / immunity;
        double First(double? days, bool immune) => RenewalSpread.Totals(people, imports, r, Profile.AsSpan(), 1, earlier, days, immune).Infections;
        return First(immunity, true) <= First(immunity, false) && First(null, true) == First(null, false)
            && RenewalSpread.Totals(people, imports, r, Profile.AsSpan(), 200, 0, immunity, true) == RenewalSpread.Totals(people, imports, r, Profile.AsSpan(), 200, 0, immunity);
    });

    [Fact]
    public void More_immune_of_earlier_days_than_people_are_refused()
    {
        var call = () => RenewalSpread.Run(100, 1, 1, Profile, 10, 11, 10, earlierImmune: true);
        call.Should().Throw<ArgumentOutOfRangeException>().Which.ParamName.Should().Be("earlierPerDay");
        RenewalSpread.Run(100, 1, 1, Profile, 10, 11, 10).Days.Should().HaveCount(10, "where they are not immune");
    }

    [Fact]
    public void Immunity_that_is_no_number_of_days_is_refused()
    {
        foreach (var immunity in new[] { 0, 0.5, -1, double.NaN, double.PositiveInfinity, 100_001 })
        {
            var call = () => RenewalSpread.Run(5, 1, 1, Profile, 10, immunityDays: immunity);
            call.Should().Throw<ArgumentOutOfRangeException>().Which.ParamName.Should().Be("immunityDays");
        }
    }
}
