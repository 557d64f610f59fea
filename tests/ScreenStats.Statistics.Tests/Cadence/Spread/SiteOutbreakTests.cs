using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Spread;

namespace ScreenStats.Statistics.Tests.Cadence.Spread;

public sealed class SiteOutbreakTests
{
    [Fact]
    public void Every_row_of_the_sites_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("site-outbreaks"), row =>
    {
        var process = new OffspringProcess(row.Number("reproduction"), row.Has("dispersion") ? row.Number("dispersion") : null, row.Number("caught"));
        var (people, introductions, size) = ((int)row.Count("people"), (int)row.Count("introductions"), (int)row.Count("size"));
        var sizes = SiteOutbreak.Sizes(process, people, introductions);
        return new[]
        {
            row.Mismatch("exactly", sizes[size]), row.Mismatch("at_least", SiteOutbreak.AtLeast(process, people, size, introductions)),
            row.Mismatch("mean", sizes.Select((chance, n) => n * chance).Sum()),
        };
    });

    [Fact]
    public void Chances_of_all_sizes_add_up_to_one_whatever_the_dispersion_and_the_reproduction()
    {
        foreach (var k in new double?[] { 1e-12, 1e-6, 0.01, 1, 99, 101, 1e4, 1e8, 1e15, null })
        foreach (var r in new[] { 0, 1e-6, 0.5, 3, 1e6, 1e15 })
        foreach (var people in new[] { 1, 2, 50, 200 })
        {
            var sizes = SiteOutbreak.Sizes(new OffspringProcess(r, k, 0.1), people);
            sizes.Should().OnlyContain(chance => chance >= 0 && chance <= 1 + 1e-12);
            sizes.Sum().Should().BeApproximately(1, 5e-12, $"k {k}, R {r}, {people} people");
        }
    }

    [Fact]
    public void Larger_sites_and_more_spread_make_an_outbreak_likelier() => Gen.Select(
        Gen.Int[1, 60], Gen.Double[0, 5], Gen.Double[-2, 2].Select(e => Math.Pow(10, e)), Gen.Double[0, 1], Gen.Int[1, 8]).Sample((people, r, k, caught, size) =>
    {
        var process = new OffspringProcess(r, k, caught);
        var chance = SiteOutbreak.AtLeast(process, people, size);
        return chance is >= 0 and <= 1
            && SiteOutbreak.AtLeast(process, people + 1, size) >= chance - 1e-12
            && SiteOutbreak.AtLeast(new OffspringProcess(r * 1.1, k, caught), people, size) >= chance - 1e-12
            && SiteOutbreak.AtLeast(new OffspringProcess(r, k, caught * 0.9), people, size) >= chance - 1e-12
            && chance <= process.AtLeast(size) + 1e-11;
    }, iter: 300);

    [Fact]
    public void Extremes_have_a_right_answer()
    {
        var process = new OffspringProcess(3, 0.2);
        SiteOutbreak.Sizes(process, 1).Should().Equal(0, 1);
        SiteOutbreak.Sizes(process, 3, 0).Should().Equal(1, 0, 0, 0);
        SiteOutbreak.Sizes(process, 3, 3).Should().Equal(0, 0, 0, 1);
        SiteOutbreak.AtLeast(process, 1, 2).Should().Be(0, "one worker has nobody to infect");
        SiteOutbreak.AtLeast(process, 4, 5).Should().Be(0);
        SiteOutbreak.AtLeast(process, 4, 1).Should().Be(1);
        SiteOutbreak.AtLeast(process, 4, 0, 0).Should().Be(1);
        SiteOutbreak.AtLeast(process, 4, 1, 0).Should().Be(0);
        SiteOutbreak.AtLeast(new OffspringProcess(0), 1_000_000, 5).Should().Be(0);
        SiteOutbreak.AtLeast(new OffspringProcess(1e15), 1_000_000, 5).Should().Be(1);
        SiteOutbreak.AtLeast(new OffspringProcess(1e15, 1, 0.25), 1_000_000, 5).Should().BeApproximately(0.75, 1e-9);
        SiteOutbreak.AtLeast(process, 1_000_000, 30).Should().BeGreaterThan(0);
    }

    [Fact]
    public void Separate_sites_add_up()
    {
        var process = new OffspringProcess(2, 0.3);
        var over = SiteOutbreak.Over(process, [new(4, 10), new(20, 0.5), new(400, 0.25), new(20, 0)], 5);
        over.Chances[0].Should().Be(0, "four people are no outbreak of five");
        over.Chances[1].Should().Be(SiteOutbreak.AtLeast(process, 20, 5));
        over.Expected.Should().BeApproximately((0.5 * over.Chances[1]) + (0.25 * over.Chances[2]), 1e-15);
        over.ChanceOfAny.Should().BeApproximately(1 - Math.Exp(-over.Expected), 1e-15);
        SiteOutbreak.Over(process, [], 5).Expected.Should().Be(0);
        SiteOutbreak.Over(process, [], 5).ChanceOfAny.Should().Be(0);
    }

    [Fact]
    public void Every_simulated_site_lies_within_four_standard_errors() => Mismatches.ShouldBeNone(ReferenceTable.Load("outbreak-simulations"), row =>
    {
        var process = new OffspringProcess(row.Number("reproduction"), row.Has("dispersion") ? row.Number("dispersion") : null, row.Number("caught"));
        var (introductions, size) = ((int)row.Count("introductions"), (int)row.Count("size"));
        var chance = row.Has("people") ? SiteOutbreak.AtLeast(process, (int)row.Count("people"), size, introductions) : process.AtLeast(size, introductions);
        var (reached, runs) = (row.Count("reached"), row.Count("runs"));
        var error = Math.Sqrt(chance * (1 - chance) / runs);
        return new[] { Math.Abs(((double)reached / runs) - chance) <= 4 * error + 1e-12 ? null : $"{row.Id}: {reached} of {runs} simulated, chance {chance}" };
    });

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var process = new OffspringProcess(2, 0.3);
        var calls = new (Action Call, string Name)[]
        {
            (() => SiteOutbreak.Sizes(process, 0), "people"), (() => SiteOutbreak.Sizes(process, 501), "people"), (() => SiteOutbreak.Sizes(process, 5, 6), "introductions"),
            (() => SiteOutbreak.Sizes(process, 5, -1), "introductions"), (() => SiteOutbreak.AtLeast(process, 0, 1), "people"), (() => SiteOutbreak.AtLeast(process, 5, -1), "size"),
            (() => SiteOutbreak.AtLeast(process, 501, 31), "size"), (() => SiteOutbreak.AtLeast(process, 5, 2, 6), "introductions"), (() => SiteOutbreak.Over(process, [], 0), "size"),
            (() => _ = new SiteIntroductions(0, 1), "people"), (() => _ = new SiteIntroductions(1, double.NaN), "introductions"), (() => _ = new SiteIntroductions(1, -1), "introductions"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().Which.ParamName.Should().Be(name);
        ((Action)(() => SiteOutbreak.Sizes(null!, 5))).Should().Throw<ArgumentNullException>();
        ((Action)(() => SiteOutbreak.Over(process, default, 5))).Should().Throw<ArgumentNullException>();
    }
}
