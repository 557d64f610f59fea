using System.Globalization;
using ScreenStats.Statistics.Cadence.Spread;
using ScreenStats.Statistics.Economics.Frontier;

namespace ScreenStats.Statistics.Tests.Economics.Frontier;

/// <summary>The frontier of a campus's compartment model: twelve ways of screening, and none.</summary>
/// <remarks>
/// Paltiel AD, Zheng A, Walensky RP, JAMA Netw Open 2020;3:e2016818. The infections of the base case were read there; its incremental ratios were not: these were computed with numpy from the equations before this
/// code was written, over screening every 1, 2, 3 and 7 days with sensitivity and cost 70 % at 10, 80 % at 25, 90 % at 50.
/// </remarks>
public sealed class CampusFrontierTests
{
    private static readonly CompartmentSettings Base = new()
    {
        Uninfected = 4990, InfectiousAtStart = 10, Days = 80, Reproduction = 2.5, DaysToInfectious = 3, DaysToRecovery = 14, SymptomShare = 0.3, FatalShare = 0.0005,
        Imports = 10, ImportEveryDays = 7, Specificity = 0.98, CostPerConfirmation = 100,
    };

    private static readonly (double Sensitivity, double Cost)[] Screens = [(0.7, 10), (0.8, 25), (0.9, 50)];

    private static readonly CompartmentSettings Mild = Base with { Reproduction = 1.5, Imports = 5, Specificity = 0.997 };

    [Fact]
    public void The_base_case_has_the_frontier_that_was_computed_before() => Holds(
        Base, ["none", "70 % every 7", "70 % every 3", "70 % every 2", "70 % every 1", "80 % every 1", "90 % every 1"], [(222.4, 0.05), (594.2, 0.05), (5717.5, 0.05), (28_404, 0.5), (752_606, 0.5), (1_692_949, 0.5)]);

    [Fact]
    public void The_best_case_has_the_frontier_that_was_computed_before() => Holds(
        Mild, ["none", "70 % every 7", "70 % every 3", "70 % every 2", "70 % every 1"], [(668.9, 0.05), (9146.1, 0.05), (38_802, 0.5), (128_065, 0.5)]);

    [Fact]
    public void The_value_of_an_infection_averted_chooses_as_the_paper_remembers()
    {
        // Values from memory; that 5,500 belongs to the best case is inferred.
        Best(Base, 8500).Should().Be("70 % every 2");
        Best(Mild, 5500).Should().Be("70 % every 7");
    }

    private static void Holds(CompartmentSettings settings, string[] names, (double Ratio, double Half)[] ratios)
    {
        var (labels, options) = Options(settings);
        var on = CostEffectivenessFrontier.Of(options).Where(place => place.Standing == OptionStanding.OnFrontier).OrderBy(place => place.Outcome.Effect).ToArray();
        on.Select(place => labels[place.Index]).Take(names.Length).Should().Equal(names);
        foreach (var (place, (ratio, half)) in on.Skip(1).Zip(ratios))
        {
            // Half a unit of the last digit, or four digits where more were written.
            place.IncrementalRatio.Value.Should().BeApproximately(ratio, Math.Max(half, ratio * 5e-5), labels[place.Index]);
        }
    }

    private static string Best(CompartmentSettings settings, double value)
    {
        var (labels, options) = Options(settings);
        return labels[NetBenefit.Best(options, value).Single()];
    }

    private static (string[] Labels, OptionOutcome[] Options) Options(CompartmentSettings settings)
    {
        (string Label, CompartmentSettings Settings)[] ways =
        [
            ("none", settings),
            .. from screen in Screens
               from every in new[] { 7, 3, 2, 1 }
               select (string.Create(CultureInfo.InvariantCulture, $"{screen.Sensitivity * 100:0} % every {every}"), settings with { Sensitivity = screen.Sensitivity, CostPerScreen = screen.Cost, EveryDays = every }),
        ];
        return ([.. ways.Select(way => way.Label)], [.. ways.Select(way => CompartmentModel.Run(way.Settings)).Select(course => new OptionOutcome(course.Cost, -course.Infections))]);
    }
}
