using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Evaluation.WhatIf.Grids;

/// <summary>Grids of what screening every so many days gives. Days are whole: each that can be asked for is a node.</summary>
internal static class IntervalGrids
{
    /// <summary>Days that screens and false alarms are counted over, and the longest interval.</summary>
    public const int LongestDays = 28;

    /// <summary>People that false alarms are counted among.</summary>
    public const int People = 1_000;

    public const string Days = "days-between-screens";

    private static readonly GridAxis EveryDays = new(Days, GridScale.Linear, [.. Enumerable.Range(1, LongestDays).Select(day => (double)day)]);
    private static readonly GridAxis Sensitivities = new(PositiveGrids.Sensitivity, GridScale.Linear, [.. Enumerable.Range(8, 33).Select(step => step / 40.0)]);
    private static readonly GridAxis FewSpecificities = new(PositiveGrids.Specificity, GridScale.Linear, [PositiveGrids.LowestSpecificity, 0.9, 0.97, 0.997, PositiveGrids.HighestSpecificity]);

    /// <summary>All of them.</summary>
    /// <param name="model">What an interval gives; null where only screens and false alarms can be given.</param>
    /// <param name="participation">The share of screens due that are taken.</param>
    public static ImmutableArray<Grid> Of(IntervalModel model, double participation)
    {
        var sensitivities = model.TakesSensitivity ? Sensitivities.Nodes : [1.0];
        // Each is worked out once for all three figures.
        var outcomes = new Statistics.Cadence.Courses.CourseOutcome[LongestDays, sensitivities.Length];
        Parallel.For(0, LongestDays, day =>
        {
            for (var step = 0; step < sensitivities.Length; step++) outcomes[day, step] = model.Outcome(day + 1, sensitivities[step]);
        });
        Grid Over(string id, Func<Statistics.Cadence.Courses.CourseOutcome, double> value) =>
            Grid.Of(id, model.TakesSensitivity ? [EveryDays, Sensitivities] : [EveryDays], at => value(outcomes[(int)at.Span[0] - 1, at.Length > 1 ? sensitivities.IndexOf(at.Span[1]) : 0]));
        var grids = ImmutableArray.CreateBuilder<Grid>();
        grids.Add(Over("detection", outcome => outcome.DetectionProbability));
        if (outcomes[0, 0].FractionRemoved.Value is not null)
        {
            grids.Add(Over("removed", outcome => outcome.FractionRemoved.Value!.Value));
            grids.Add(Over("caught", outcome => outcome.CaughtBeforeInfectious.Value!.Value));
        }

        grids.Add(Grid.Of("screens", [EveryDays], at => Screens(at.Span[0], participation)));
        grids.Add(Grid.Of("false-alarms", [EveryDays, FewSpecificities], at => FalseAlarms(at.Span[0], at.Span[1], participation)));
        return grids.ToImmutable();
    }

    /// <summary>Screens of one person within the days counted over.</summary>
    public static double Screens(double everyDays, double participation) => LongestDays / FalseAlarm.DaysPerYear * FalseAlarm.ScreensPerPersonYear(everyDays) * participation;

    /// <summary>False alarms among the people within the days counted over.</summary>
    public static double FalseAlarms(double everyDays, double specificity, double participation) =>
        People * LongestDays / FalseAlarm.DaysPerYear * FalseAlarm.PerPersonYear(everyDays, specificity) * participation;
}
