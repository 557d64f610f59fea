using System.Diagnostics.CodeAnalysis;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>How plans and truths are written: camelCase, line feeds, unknown keys refused.</summary>
internal static class PlanJson
{
    private const string NotCompiledAhead = "Asked for only where reflection is there (CanRead); a program compiled ahead of time says that it does not read plans.";
    private static readonly JsonSerializerOptions Written = Options(PlanMembers.Default);

    /// <summary>How a plan is written.</summary>
    public static JsonTypeInfo<SynthesisPlan> Plan { get; } = (JsonTypeInfo<SynthesisPlan>)Written.GetTypeInfo(typeof(SynthesisPlan));

    /// <summary>How a truth is written.</summary>
    public static JsonTypeInfo<SynthesisTruth> Truth { get; } = (JsonTypeInfo<SynthesisTruth>)Written.GetTypeInfo(typeof(SynthesisTruth));

    /// <summary>Whether plans can be read: members made when the library is compiled forget the defaults of keys that a plan leaves out, so reading needs reflection.</summary>
    public static bool CanRead => JsonSerializer.IsReflectionEnabledByDefault;

    /// <summary>Reads a plan.</summary>
    /// <exception cref="JsonException">The text is no plan.</exception>
    [UnconditionalSuppressMessage("Trimming", "IL2026", Justification = NotCompiledAhead)]
    [UnconditionalSuppressMessage("AOT", "IL3050", Justification = NotCompiledAhead)]
    public static SynthesisPlan? Read(string json) => JsonSerializer.Deserialize<SynthesisPlan>(json, Options(new DefaultJsonTypeInfoResolver()));

    [UnconditionalSuppressMessage("AOT", "IL3050", Justification = "The converter of each word is asked for by PlanMembers too, so it is compiled ahead; without it writing would fail, and the release script writes.")]
    private static JsonSerializerOptions Options(IJsonTypeInfoResolver members) => new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        ReadCommentHandling = JsonCommentHandling.Skip,
        AllowTrailingCommas = true,
        RespectNullableAnnotations = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        WriteIndented = true,
        NewLine = "\n",
        TypeInfoResolver = members,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
    };
}
