using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using ScreenStats.Cli.Results.Cadence;
using ScreenStats.Records.Deidentification.Pseudonyms;
using ScreenStats.Statistics;
using ScreenStats.Synthesis;

namespace ScreenStats.Cli.Results;

/// <summary>Writes result records as one JSON object on one line, in round-trip precision.</summary>
internal static class ResultJson
{
    private const string Compiled = "Numbers, texts and the words of ResultContext only: their converters are compiled ahead with it. Without one writing would fail, and the release script writes.";
    private static readonly JsonSerializerOptions Options = Layout();

    [UnconditionalSuppressMessage("AOT", "IL3050", Justification = Compiled)]
    private static JsonSerializerOptions Layout() => new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower) },
        TypeInfoResolver = ResultContext.Default.WithAddedModifier(SplitFigures),
    };

    /// <summary>The object with a line end.</summary>
    public static string Write<T>(T result) => JsonSerializer.Serialize(result, (JsonTypeInfo<T>)Options.GetTypeInfo(typeof(T))) + "\n";

    // A converter cannot write a sibling of its own property, so each figure becomes two properties here.
    [UnconditionalSuppressMessage("Trimming", "IL2026", Justification = Compiled)]
    [UnconditionalSuppressMessage("AOT", "IL3050", Justification = Compiled)]
    private static void SplitFigures(JsonTypeInfo type)
    {
        if (type.Kind != JsonTypeInfoKind.Object) return;
        for (var index = type.Properties.Count - 1; index >= 0; index--)
        {
            var property = type.Properties[index];
            if (type.Type == typeof(SynthesisTruth) && property.PropertyType == typeof(double?) && property.Get is { } share)
            {
                var why = type.CreateJsonPropertyInfo(typeof(string), property.Name + "Undefined");
                why.Get = item => share(item) is null ? UndefinedReason.NoTrials.Describe() : null;
                why.ShouldSerialize = (_, text) => text is not null;
                type.Properties.Insert(index + 1, why);
            }

            if (property.PropertyType != typeof(Figure) || property.Get is not { } get) continue;
            var value = type.CreateJsonPropertyInfo(typeof(double?), property.Name);
            value.Get = item => ((Figure)get(item)!).Value;
            var reason = type.CreateJsonPropertyInfo(typeof(string), property.Name + "Undefined");
            reason.Get = item => ((Figure)get(item)!).Reason;
            reason.ShouldSerialize = (_, text) => text is not null;
            type.Properties[index] = value;
            type.Properties.Insert(index + 1, reason);
            Limit(type, property.Name + "Lower", index + 2, item => ((Figure)get(item)!).Limits?.Lower);
            Limit(type, property.Name + "Upper", index + 3, item => ((Figure)get(item)!).Limits?.Upper);
        }
    }

    [UnconditionalSuppressMessage("Trimming", "IL2026", Justification = Compiled)]
    [UnconditionalSuppressMessage("AOT", "IL3050", Justification = Compiled)]
    private static void Limit(JsonTypeInfo type, string name, int place, Func<object, double?> of)
    {
        // Where limits stand as figures of their own the record has that name already.
        if (type.Properties.Any(other => other.Name == name)) return;
        var limit = type.CreateJsonPropertyInfo(typeof(double?), name);
        limit.Get = item => of(item);
        limit.ShouldSerialize = (_, number) => number is not null;
        type.Properties.Insert(Math.Min(place, type.Properties.Count), limit);
    }
}

[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata, PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(IntervalResult))]
[JsonSerializable(typeof(ContrastResult))]
[JsonSerializable(typeof(PairedContrastResult))]
[JsonSerializable(typeof(AgreementResult))]
[JsonSerializable(typeof(AdjustResult))]
[JsonSerializable(typeof(PredictResult))]
[JsonSerializable(typeof(PrevalenceResult))]
[JsonSerializable(typeof(AccuracyResult))]
[JsonSerializable(typeof(BoundsResult))]
[JsonSerializable(typeof(LatentClassResult))]
[JsonSerializable(typeof(SynthesisTruth))]
[JsonSerializable(typeof(InspectResult))]
[JsonSerializable(typeof(Evaluation.Alarms.AlarmsOfDay))]
[JsonSerializable(typeof(ClustersResult))]
[JsonSerializable(typeof(WidthPlanResult))]
[JsonSerializable(typeof(ZeroEventsPlanResult))]
[JsonSerializable(typeof(AuditPlanResult))]
[JsonSerializable(typeof(LotPlanResult))]
[JsonSerializable(typeof(CadenceResult))]
[JsonSerializable(typeof(PseudonymizeResult))]
[JsonSerializable(typeof(System.Text.Json.Nodes.JsonObject))]
[JsonSerializable(typeof(double?))]
internal sealed partial class ResultContext : JsonSerializerContext;
