using System.Text.Json.Serialization;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Courses.ViralLoads;

namespace ScreenStats.Cli.Results.Cadence;

/// <summary>The course of an infection that the figures rest on, and what goes on around a screen.</summary>
internal sealed record CourseInputs(string Kind, string Method)
{
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? File { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ViralLoadCourses? ViralLoads { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? SimulatedPeople { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? LargestStandardError { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SymptomOnset? Symptoms { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? ConfirmationDelay { get; init; }

    public double Misses { get; init; }

    public double Participation { get; init; } = 1;
}
