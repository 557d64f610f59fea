using System.Globalization;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Tests.Proportions;

/// <summary>The committed study (made by hand: "coverage" of tests/ScreenStats.Benchmarks) is what the code gives, and says what the docs say.</summary>
public sealed class CoverageStudyTests
{
    private static readonly List<(string Method, int Trials, double Mean, double Least, double Where, double Width)> Study =
    [
        .. File.ReadLines(RepositoryRoot.Combine("tests", "reference", "studies", "coverage-study.csv")).Skip(1).Select(line => line.Split(','))
            .Select(part => (part[0], int.Parse(part[1], CultureInfo.InvariantCulture), Number(part[2]), Number(part[3]), Number(part[4]), Number(part[5]))),
    ];

    [Fact]
    public void It_holds_every_method_at_every_number_of_trials_from_five_to_five_hundred() =>
        Study.Select(row => (row.Trials, row.Method)).Should().Equal(
            Enumerable.Range(5, 496).SelectMany(trials => IntervalMethods.All.Select(method => (trials, method.Name()))));

    [Fact]
    public void A_part_computed_anew_is_the_same()
    {
        var part = Study.Where(row => row.Trials is 5 or 10 or 23 or 50 or 177 or 500).ToList();
        part.Count.Should().Be(36);
        foreach (var row in part)
        {
            IntervalMethods.TryParse(row.Method, out var method).Should().BeTrue();
            var study = IntervalCoverage.Of(method, row.Trials);
            var rates = Enumerable.Range(1, 500).Select(step => step / 1000.0).ToList();
            var covered = rates.Select(study.At).ToList();
            covered.Average().Should().BeApproximately(row.Mean, 1e-6, row.ToString());
            covered.Min().Should().BeApproximately(row.Least, 1e-6, row.ToString());
            study.At(row.Where).Should().BeApproximately(row.Least, 1e-6, row.ToString());
            rates.Average(study.WidthAt).Should().BeApproximately(row.Width, 1e-6, row.ToString());
        }
    }

    [Fact]
    public void Clopper_Pearson_never_covers_less_than_it_says_and_the_means_of_wilson_and_jeffreys_are_near()
    {
        Study.Where(row => row.Method == "clopper-pearson").Should().OnlyContain(row => row.Least >= 0.95);
        Study.Where(row => row.Method is "wilson" or "jeffreys" && row.Trials >= 20).Should().OnlyContain(row => Math.Abs(row.Mean - 0.95) < 0.01);
    }

    // The lower limit of one event is l/n with (1 - l)² = z² l in the limit; just below it only "no event" covers: exp(-l) = 0.8382. Brown, Cai and
    // DasGupta, Stat Sci 2001;16:101-133, print 0.838 at l = 0.1765 (from memory).
    [Fact]
    public void Wilsons_deepest_dip_is_that_of_the_paper()
    {
        var below = Math.BitDecrement(ProportionInterval.Wilson(1, 100_000).Lower!.Value);
        (below * 100_000).Should().BeApproximately(0.1765, 5e-5);
        IntervalCoverage.Of(IntervalMethod.Wilson, 100_000).At(below).Should().BeApproximately(0.838, 5e-4);
        Study.Where(row => row.Method == "wilson").Should().OnlyContain(row => row.Least > 0.83);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
