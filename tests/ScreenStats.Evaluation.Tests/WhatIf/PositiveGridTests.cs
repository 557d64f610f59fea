using System.Globalization;
using CsCheck;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.WhatIf.Grids;
using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Evaluation.Tests.WhatIf;

/// <summary>What the page looks up and interpolates is what the library would print.</summary>
public class PositiveGridTests(ITestOutputHelper output)
{
    private static readonly Dictionary<string, Grid> Grids = PositiveGrids.All.ToDictionary(grid => grid.Id, StringComparer.Ordinal);

    private static IEnumerable<double> Prevalences =>
        [PositiveGrids.LowestPrevalence, 0.0001, PositiveGrids.HighestPrevalence, .. Enumerable.Range(0, 97).Select(step => 0.00001 * Math.Pow(50_000, (step + 0.37) / 97))];

    private static IEnumerable<double> Sensitivities => [0.2, 0.5, 0.8, 1, .. Enumerable.Range(0, 29).Select(step => 0.2 + (0.8 * (step + 0.41) / 29))];

    private static IEnumerable<double> Specificities =>
        [0.8, 0.99, 0.999, 0.9999, .. Enumerable.Range(0, 83).Select(step => 1 - (0.0001 * Math.Pow(2_000, (step + 0.59) / 83)))];

    [Fact]
    public void Interpolated_figures_are_off_by_less_than_a_quarter_of_half_the_last_printed_digit_anywhere_rare_infection_and_specificity_near_one_included()
    {
        var error = new PrintedError();
        foreach (var prevalence in Prevalences)
        {
            foreach (var sensitivity in Sensitivities)
            {
                foreach (var specificity in Specificities) Compare(error, prevalence, sensitivity, specificity);
            }
        }

        output.WriteLine(error.ToString());
        error.Largest.Should().BeLessThan(0.25);
        error.Differing.Should().BeLessThan(0.005, "a last digit differs only where the figure lies between two printed ones");
    }

    [Fact]
    public void The_same_holds_at_any_place()
    {
        Gen.Select(Gen.Double[-11.5, -0.7], Gen.Double[0.2, 1], Gen.Double[-9.2, -1.61]).Sample((prevalence, sensitivity, rest) =>
        {
            var error = new PrintedError();
            Compare(error, Math.Exp(prevalence), sensitivity, 1 - Math.Exp(rest));
            return error.Largest < 0.25;
        });
    }

    [Fact]
    public void At_a_node_the_grid_is_what_the_library_gives_to_seven_digits()
    {
        foreach (var grid in PositiveGrids.All)
        {
            grid.Values.Should().HaveCount(grid.Axes.Aggregate(1, (product, axis) => product * axis.Nodes.Length), grid.Id);
            grid.Axes.Should().AllSatisfy(axis => axis.Nodes.Should().BeInAscendingOrder().And.OnlyHaveUniqueItems());
        }

        var values = Grids["positive-predictive-value"];
        var (prevalence, ratio) = (values.Axes[0].Nodes[20], values.Axes[1].Nodes[30]);
        values.At(prevalence, ratio).Should().Be(values.Values[(20 * values.Axes[1].Nodes.Length) + 30]);
        values.At(prevalence, ratio).Should().BeApproximately(prevalence * ratio / ((prevalence * ratio) + 1 - prevalence), 1e-7, "Bayes' theorem, written out here");
    }

    [Fact]
    public void Worked_examples_come_out_of_the_grids()
    {
        // 10 per 100,000 infected, sensitivity 80 %, specificity 99.9 %: of a million screened 80 of 100 infected and 999.9 of 999,900 others are positive; by hand.
        At("true-positives", 0.0001, 0.8).Should().BeApproximately(0.8, 1e-6);
        At("missed", 0.0001, 0.8).Should().BeApproximately(0.2, 1e-6);
        At("false-positives", 0.0001, 0.999).Should().BeApproximately(9.999, 1e-5);
        At("likelihood-ratio-positive", 0.8, 0.999).Should().BeApproximately(800, 0.02);
        At("positive-predictive-value", 0.0001, At("likelihood-ratio-positive", 0.8, 0.999)).Should().BeApproximately(80 / 1079.9, 2e-6);
        At("negative-predictive-value", 0.0001, At("likelihood-ratio-negative", 0.8, 0.999)).Should().BeApproximately(1 - (20 / (20 + 998_900.1)), 1e-8);
    }

    [Fact]
    public void A_place_needs_one_value_for_each_axis()
    {
        var act = () => Grids["missed"].At(0.1);
        act.Should().Throw<ArgumentException>();
    }

    private static double At(string grid, params double[] at) => Grids[grid].At(at);

    private static void Compare(PrintedError error, double prevalence, double sensitivity, double specificity)
    {
        var where = string.Create(CultureInfo.InvariantCulture, $"prevalence {prevalence:G6}, sensitivity {sensitivity:G6}, specificity {specificity:G8}");
        var expected = new ExpectedResults(sensitivity, specificity, prevalence, PositiveGrids.People);
        error.Add("true positives", At("true-positives", prevalence, sensitivity), expected.TruePositives, Unit.Ratio, where);
        error.Add("missed", At("missed", prevalence, sensitivity), expected.FalseNegatives, Unit.Ratio, where);
        error.Add("false positives", At("false-positives", prevalence, specificity), expected.FalsePositives, Unit.Ratio, where);
        error.Add("a positive", At("positive-predictive-value", prevalence, At("likelihood-ratio-positive", sensitivity, specificity)), PredictiveValue.Positive(sensitivity, specificity, prevalence).Value!.Value, Unit.Proportion, where);
        error.Add("a negative", At("negative-predictive-value", prevalence, At("likelihood-ratio-negative", sensitivity, specificity)), PredictiveValue.Negative(sensitivity, specificity, prevalence).Value!.Value, Unit.Proportion, where);
    }
}
