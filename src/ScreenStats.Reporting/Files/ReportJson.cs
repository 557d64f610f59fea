using System.Text.Json.Serialization;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Reporting.Pages.WhatIf;

namespace ScreenStats.Reporting.Files;

/// <summary>How the members of everything that a report writes are read, made when the library is compiled: nothing is looked up or made while it runs.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata, PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(Findings))]
[JsonSerializable(typeof(ReleaseDisclosure))]
[JsonSerializable(typeof(Manifest))]
[JsonSerializable(typeof(WhatIfView))]
internal sealed partial class ReportJson : JsonSerializerContext;
