using System.Text.Json;
using ScreenStats.Records.Understanding;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Formats.Converting;

/// <summary>
/// What one FHIR R4 Observation says of a confirmatory test (https://hl7.org/fhir/R4/observation.html). Elements that are
/// not named here make no difference, but for modifierExtension and implicitRules, which the standard forbids to pass over.
/// </summary>
internal static class ObservationLine
{
    public const string Malformed = "malformed-line";
    public const string NotAnObservation = "not-an-observation";
    public const string NotFinal = "result-not-final";
    public const string Modified = "modified-observation";
    public const string Contradictory = "contradictory-observation";

    private const string Snomed = "http://snomed.info/sct";

    private static readonly string[] Interpretations =
        ["http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation", "http://hl7.org/fhir/v3/ObservationInterpretation"];

    private static readonly Func<string, int> InWords = Words.Confirmation.Reader([]);

    private static readonly JsonDocumentOptions Options = new() { AllowDuplicateProperties = false };

    /// <summary>Why a line is not to be used, as a finding.</summary>
    public static Finding Why(string reason) => reason switch
    {
        NotAnObservation => Finding.NotAnObservation,
        NotFinal => Finding.ResultNotFinal,
        Modified => Finding.ModifiedObservation,
        Contradictory => Finding.ContradictoryObservation,
        _ => Finding.MalformedLine,
    };

    /// <summary>Reads a line; why it is not to be used, or null.</summary>
    /// <param name="text">The line.</param>
    /// <param name="fields">Takes person, collection, result, report and method.</param>
    public static string? Read(ReadOnlyMemory<byte> text, string?[] fields)
    {
        try
        {
            using var document = JsonDocument.Parse(text, Options);
            var resource = document.RootElement;
            if (resource.ValueKind != JsonValueKind.Object) return Malformed;
            if (Text(resource, "resourceType") != "Observation") return NotAnObservation;
            if (Text(resource, "status") is not ("final" or "amended" or "corrected")) return NotFinal;
            if (Elements(resource, "modifierExtension").Any() || resource.TryGetProperty("implicitRules", out _)) return Modified;
            fields[0] = Person(resource);
            fields[1] = Text(resource, "effectiveDateTime") ?? Text(resource, "effectiveInstant");
            fields[3] = Text(resource, "issued");
            fields[4] = Concept(resource, "method");
            return Result(resource, out fields[2]) ? null : Contradictory;
        }
        catch (Exception exception) when (exception is JsonException or InvalidOperationException)
        {
            // An InvalidOperationException is a text that is no Unicode, such as half of a surrogate pair.
            return Malformed;
        }
    }

    /// <summary>The identifier in a reference such as Patient/x, a whole address that ends so, or urn:uuid:x; else the business identifier.</summary>
    private static string? Person(JsonElement resource)
    {
        if (!resource.TryGetProperty("subject", out var subject) || subject.ValueKind != JsonValueKind.Object) return null;
        if (Text(subject, "reference") is { } reference)
        {
            var history = reference.IndexOf("/_history/", StringComparison.Ordinal);
            if (history >= 0) reference = reference[..history];
            return reference[(reference.LastIndexOfAny(['/', ':']) + 1)..].TrimStart('#');
        }

        return subject.TryGetProperty("identifier", out var identifier) && identifier.ValueKind == JsonValueKind.Object ? Text(identifier, "value") : null;
    }

    /// <summary>
    /// The result by the codes of its value and of its interpretation. False where two of them say different things.
    /// Where no code is known the words or the code themselves, which the program file may give a meaning.
    /// </summary>
    private static bool Result(JsonElement resource, out string? result)
    {
        result = null;
        string? other = null;
        if (resource.TryGetProperty("valueCodeableConcept", out var value) && value.ValueKind == JsonValueKind.Object)
        {
            foreach (var coding in Elements(value, "coding"))
            {
                var code = Text(coding, "code");
                var known = Text(coding, "system") == Snomed ? OfValue(code) : null;
                if (known is null) other ??= code;
                else if (result is null) result = known;
                else if (result != known) return false;
            }

            other = Text(value, "text") ?? other;
        }

        other = Text(resource, "valueString") ?? other;
        foreach (var concept in Elements(resource, "interpretation"))
        {
            foreach (var coding in Elements(concept, "coding"))
            {
                if (!Interpretations.Contains(Text(coding, "system")) || OfInterpretation(Text(coding, "code")) is not { } known) continue;
                if (result is not null && result != known) return false;
                result = known;
            }
        }

        // Words must not say otherwise than the codes.
        if (result is not null && other is not null && InWords(other) is var word and >= 0 && Words.Confirmation.Canonical[word] != result) return false;
        result ??= other;
        return true;
    }

    private static string? OfValue(string? code) => code switch
    {
        "260373001" or "10828004" => "positive", // Detected; Positive
        "260415000" or "260385009" => "negative", // Not detected; Negative
        "419984006" or "82334004" => "indeterminate", // Inconclusive; Indeterminate
        "125154007" => "rejected", // Specimen unsatisfactory for evaluation
        _ => null,
    };

    private static string? OfInterpretation(string? code) => code switch
    {
        "POS" or "DET" or "RR" => "positive", // Positive; Detected; Reactive
        "NEG" or "ND" or "NR" => "negative", // Negative; Not detected; Non-reactive
        "IND" or "E" or "WR" => "indeterminate", // Indeterminate; Equivocal; Weakly reactive
        _ => null,
    };

    private static string? Concept(JsonElement resource, string name)
    {
        if (!resource.TryGetProperty(name, out var concept) || concept.ValueKind != JsonValueKind.Object) return null;
        if (Text(concept, "text") is { } text) return text;
        foreach (var coding in Elements(concept, "coding"))
        {
            if ((Text(coding, "display") ?? Text(coding, "code")) is { } shown) return shown;
        }

        return null;
    }

    private static string? Text(JsonElement item, string name) =>
        item.ValueKind == JsonValueKind.Object && item.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    private static JsonElement.ArrayEnumerator Elements(JsonElement item, string name) =>
        item.ValueKind == JsonValueKind.Object && item.TryGetProperty(name, out var list) && list.ValueKind == JsonValueKind.Array ? list.EnumerateArray() : default;
}
