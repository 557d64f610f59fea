using System.Diagnostics.CodeAnalysis;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Files;

/// <summary>
/// Results as JSON, one way for findings.json and for every command: names in camelCase, words in kebab-case, numbers in
/// round-trip precision, an undefined figure as null beside a <c>…Undefined</c> with the reason.
/// </summary>
public static class JsonText
{
    /// <summary>The way in which everything is written, over lines.</summary>
    internal static JsonSerializerOptions Layout => Indented;

    private const string ReflectionOnly = "Only where reflection is there; a program compiled ahead of time writes nothing but what ReportJson names.";
    private static readonly JsonSerializerOptions Indented = Options(indented: true);
    private static readonly JsonSerializerOptions OneLine = Options(indented: false);

    /// <summary>A result as JSON text.</summary>
    /// <typeparam name="T">Type of the result.</typeparam>
    /// <param name="result">The result; its numbers are finite.</param>
    /// <param name="indented">Whether it is laid out over lines, with <c>\n</c> at the end of each; else it is one line without an end.</param>
    /// <returns>The text.</returns>
    /// <exception cref="ArgumentException">A number in the result is not finite.</exception>
    public static string Of<T>(T result, bool indented = true) =>
        JsonSerializer.Serialize(result, Members<T>(indented ? Indented : OneLine)) + (indented ? "\n" : "");

    /// <summary>How the members of a type are written.</summary>
    internal static JsonTypeInfo<T> Members<T>(JsonSerializerOptions options) => (JsonTypeInfo<T>)options.GetTypeInfo(typeof(T));

    [UnconditionalSuppressMessage("AOT", "IL3050", Justification = "The converter of each word is asked for by ReportJson too, so it is compiled ahead; without it writing would fail, and the release script writes.")]
    private static JsonSerializerOptions Options(bool indented)
    {
        var options = new JsonSerializerOptions
        {
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            WriteIndented = indented,
            NewLine = "\n",
            IndentSize = 1,
            // The file is data, not part of a page: letters beyond ASCII stay readable, and what HTML would take for markup is still escaped.
            Encoder = JavaScriptEncoder.Create(System.Text.Unicode.UnicodeRanges.All),
            TypeInfoResolver = Resolver().WithAddedModifier(LeaveOutReasonsOfDefinedFigures),
        };
        options.Converters.Add(new FlagConverter());
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower));
        return options;
    }

    // What a report writes is known beforehand; anything else that somebody writes this way is looked at while it runs, where that can be done.
    [UnconditionalSuppressMessage("Trimming", "IL2026", Justification = ReflectionOnly)]
    [UnconditionalSuppressMessage("AOT", "IL3050", Justification = ReflectionOnly)]
    private static IJsonTypeInfoResolver Resolver() =>
        JsonSerializer.IsReflectionEnabledByDefault ? JsonTypeInfoResolver.Combine(ReportJson.Default, new DefaultJsonTypeInfoResolver()) : ReportJson.Default;

    private static void LeaveOutReasonsOfDefinedFigures(JsonTypeInfo type)
    {
        foreach (var property in type.Properties)
        {
            // Written, never read: what is left out of the file cannot be required in it.
            property.IsRequired = false;
            if (property.PropertyType == typeof(string) && property.Name.EndsWith("Undefined", StringComparison.Ordinal))
            {
                property.ShouldSerialize = (_, value) => value is not null;
            }
        }
    }

    /// <summary>A flag by the words of the tables: empty, refuted, invalid, refuted-and-invalid.</summary>
    private sealed class FlagConverter : JsonConverter<Flag>
    {
        public override Flag Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetString() switch
        {
            "" => Flag.None,
            "refuted" => Flag.Refuted,
            "invalid" => Flag.Invalid,
            "refuted-and-invalid" => Flag.Refuted | Flag.Invalid,
            _ => throw new JsonException("A flag is empty, refuted, invalid or refuted-and-invalid."),
        };

        public override void Write(Utf8JsonWriter writer, Flag value, JsonSerializerOptions options) => writer.WriteStringValue(LevelNames.Of(value));
    }
}
