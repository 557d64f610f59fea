using System.Globalization;
using ScreenStats.Evaluation;
using ScreenStats.Reporting.Assets;

namespace ScreenStats.Reporting.Files.Schema;

/// <summary>
/// findings.json: every figure of a report, for other programs. Its first two members say which schema describes it and which format it
/// has; the schema is written beside it.
/// </summary>
public static class FindingsFile
{
    /// <summary>Name of the file in a report folder.</summary>
    public const string FileName = "findings.json";

    /// <summary>Name of the schema in a report folder, and what <c>$schema</c> says in the file beside it.</summary>
    public const string SchemaName = "findings.schema.json";

    /// <summary>
    /// Version of the format. It rises when a member is removed or renamed or comes to mean something else; a member that is added leaves
    /// it as it is.
    /// </summary>
    public const int Format = 1;

    /// <summary>The JSON Schema (draft 2020-12) of the file, made from the records that are written into it.</summary>
    /// <returns>The text of the schema.</returns>
    public static string ReadSchema() => Asset.Text(SchemaName);

    /// <summary>The text of the file: as much as the findings may show.</summary>
    /// <param name="findings">The findings. Small counts are hidden only where they have been through the disclosure stage; <see cref="Report.Write"/> sees to that.</param>
    /// <returns>The text, with <c>\n</c> at the end of each line.</returns>
    public static string Of(Findings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        var members = findings.Disclosure is { } disclosure ? DisclosedJson.Of(findings, disclosure) : JsonText.Of(findings);
        return string.Create(CultureInfo.InvariantCulture, $"{{\n \"$schema\": \"{SchemaName}\",\n \"format\": {Format},{members.AsSpan(1)}");
    }
}
