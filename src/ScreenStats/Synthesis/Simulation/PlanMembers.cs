using System.Text.Json.Serialization;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>How the members of plans and truths are written, made when the library is compiled.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata, PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(SynthesisPlan))]
[JsonSerializable(typeof(SynthesisTruth))]
internal sealed partial class PlanMembers : JsonSerializerContext;
