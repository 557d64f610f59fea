using System.Collections.Immutable;
using System.Text.Json;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Synthesis.Simulation;

namespace ScreenStats.Synthesis;

/// <content>Reading, writing and checking a plan.</content>
public sealed partial record SynthesisPlan
{
    /// <summary>Reads a plan from a file.</summary>
    /// <param name="path">Path of the file.</param>
    /// <returns>The plan, checked.</returns>
    /// <exception cref="UnusableDataException">The file is missing, is no plan, has an unknown key or states something impossible.</exception>
    public static SynthesisPlan Read(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var name = Path.GetFileName(path);
        string text;
        try
        {
            text = File.ReadAllText(path);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw Unusable(name, null, "", $"The plan {name} cannot be read. Check that the file exists and may be opened.");
        }

        return Parse(text, name);
    }

    /// <summary>Reads a plan from JSON. Comments are allowed, unknown keys are not.</summary>
    /// <param name="json">The text.</param>
    /// <param name="name">Name of the file, for messages.</param>
    /// <returns>The plan, checked.</returns>
    /// <exception cref="UnusableDataException">The text is no plan, has an unknown key or states something impossible.</exception>
    public static SynthesisPlan Parse(string json, string name = "plan.json")
    {
        ArgumentNullException.ThrowIfNull(json);
        if (!PlanJson.CanRead) throw Unusable(name, null, "", $"{name}: the native program does not read plans. Run this command with the .NET tool, or leave the plan out.");
        try
        {
            var plan = PlanJson.Read(json)
                ?? throw Unusable(name, null, "", $"{name} holds null instead of a plan: write an object.");
            plan = plan with
            {
                ScreeningHeadings = plan.ScreeningHeadings.ToImmutableSortedDictionary(StringComparer.Ordinal),
                ScreeningWords = plan.ScreeningWords.ToImmutableSortedDictionary(StringComparer.Ordinal),
            };
            plan.Validate(name);
            return plan;
        }
        catch (JsonException problem)
        {
            var place = string.IsNullOrEmpty(problem.Path) || problem.Path == "$" ? "" : $" at {problem.Path[2..]}";
            var line = problem.LineNumber is { } number ? number + 1 : (long?)null;
            throw Unusable(
                name, line, "", $"{name}, line {line ?? 1}{place}: not a plan. Look for a misspelt or missing key, a value of the wrong kind, or a missing comma or bracket.");
        }
    }

    /// <summary>The plan as JSON that <see cref="Parse"/> reads back: every value is stated, lines end in a line feed.</summary>
    /// <returns>The text.</returns>
    public string ToJson() => JsonSerializer.Serialize(this, PlanJson.Plan) + "\n";

    /// <summary>Checks that the plan can be carried out.</summary>
    /// <param name="name">Name of the file, for messages.</param>
    /// <exception cref="UnusableDataException">It cannot; every fault is in it.</exception>
    public void Validate(string name = "plan.json")
    {
        var faults = PlanCheck.Faults(this);
        if (faults.Count == 0) return;
        throw new UnusableDataException([.. faults.Select(fault =>
            new Diagnostic(PlanCheck.Code, Severity.Error, name, null, fault.Key, $"{name}, {fault.Key}: {fault.Message}"))]);
    }

    private static UnusableDataException Unusable(string name, long? line, string key, string message) =>
        new(new Diagnostic(PlanCheck.Code, Severity.Error, name, line, key, message));
}
