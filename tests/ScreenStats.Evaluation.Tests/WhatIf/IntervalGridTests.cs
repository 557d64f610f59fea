using System.Globalization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Tests.Cadence;
using ScreenStats.Evaluation.WhatIf.Grids;

namespace ScreenStats.Evaluation.Tests.WhatIf;

/// <summary>What the page looks up of intervals is what the library would print.</summary>
public class IntervalGridTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData("by windows, with symptoms", 0.0)]
    [InlineData("by windows, misses repeat", 0.3)]
    public void Interpolated_figures_are_off_by_less_than_a_quarter_of_half_the_last_printed_digit(string name, double repeated)
    {
        var settings = CadenceSketch.Ranged with { RepeatedMisses = repeated > 0 ? new(repeated) : null };
        var findings = Evaluator.Evaluate(CadenceSketch.Program(), new() { Cadence = settings });
        var (model, _) = IntervalModel.Of(findings.Cadence.Work!, onlyStated: false);
        var grids = findings.WhatIf.Interval.Grids.ToDictionary(grid => grid.Id, StringComparer.Ordinal);
        var error = new PrintedError();
        foreach (var days in Enumerable.Range(1, IntervalGrids.LongestDays))
        {
            foreach (var sensitivity in Enumerable.Range(0, 23).Select(step => 0.2 + (0.8 * (step + 0.43) / 23)).Append(0.2).Append(1))
            {
                var where = string.Create(CultureInfo.InvariantCulture, $"{days} days, sensitivity {sensitivity:G6}");
                var exact = model!.Outcome(days, sensitivity);
                error.Add("found", grids["detection"].At(days, sensitivity), exact.DetectionProbability, Unit.Proportion, where);
                error.Add("removed", grids["removed"].At(days, sensitivity), exact.FractionRemoved.Value!.Value, Unit.Proportion, where);
                error.Add("caught", grids["caught"].At(days, sensitivity), exact.CaughtBeforeInfectious.Value!.Value, Unit.Proportion, where);
            }

            error.Add("screens", grids["screens"].At(days), IntervalGrids.Screens(days, model!.Participation), Unit.Ratio, $"{days} days");
            foreach (var specificity in Enumerable.Range(0, 41).Select(step => 1 - (0.0001 * Math.Pow(2_000, (step + 0.59) / 41))))
                error.Add("false alarms", grids["false-alarms"].At(days, specificity), IntervalGrids.FalseAlarms(days, specificity, model!.Participation), Unit.Ratio, string.Create(CultureInfo.InvariantCulture, $"{days} days, specificity {specificity:G8}"));
        }

        output.WriteLine(name + "\n" + error);
        error.Largest.Should().BeLessThan(0.25);
        error.Differing.Should().BeLessThan(0.01);
    }
}
