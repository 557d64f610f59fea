using System.Text.Json;
using Json.Schema;
using ScreenStats.Evaluation;
using ScreenStats.Reporting.Files.Schema;
using ScreenStats.Testing;

namespace ScreenStats.Tests;

/// <summary>Holds findings.json against its schema by a validator that is not ours (JsonSchema.Net, draft 2020-12).</summary>
internal static class FindingsSchema
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(FindingsFile.ReadSchema());

    /// <summary>Places and errors, at most ten.</summary>
    public static IEnumerable<string> Faults(Findings findings)
    {
        var document = ThinnedJson.Of(FindingsFile.Of(findings));
        var options = new EvaluationOptions { OutputFormat = OutputFormat.List, RequireFormatValidation = true };
        if (Schema.Evaluate(document, new EvaluationOptions { RequireFormatValidation = true }).IsValid) return [];
        return Schema.Evaluate(document, options).Details!.Where(detail => detail.Errors is { Count: > 0 }).Select(detail => $"{detail.InstanceLocation}: {string.Join("; ", detail.Errors!.Values)}").Take(10);
    }
}
