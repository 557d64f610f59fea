using ScreenStats.Statistics.Cadence.Courses;

namespace ScreenStats.Cli.Results.Cadence;

/// <summary>What a course gives beside the figures of every option.</summary>
internal sealed record CourseItem(
    Figure FractionRemovedBySymptoms, Figure FractionRemovedByScreening, Figure CaughtBeforeInfectious, double InfectiousDays, double ScreensPerInfection)
{
    public static CourseItem Of(CourseOutcome outcome) => new(
        Figure.Of(outcome.FractionRemovedBySymptoms), Figure.Of(outcome.FractionRemovedByScreening), Figure.Of(outcome.CaughtBeforeInfectious),
        outcome.InfectiousDays, outcome.ScreensTaken);
}
