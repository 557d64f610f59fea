namespace ScreenStats.Counting.Diagnostics;

/// <summary>One thing found in the data: what, where, what to do. Never holds the text of a cell.</summary>
/// <param name="Code">Stable code from <see cref="DiagnosticCatalogue"/>.</param>
/// <param name="Severity">How much it matters.</param>
/// <param name="File">Name of the file without its folder; empty where it concerns none.</param>
/// <param name="Line">Physical line of the first occurrence, from 1; null where it concerns a whole file.</param>
/// <param name="Column">Canonical column, or empty.</param>
/// <param name="Message">What, where, what to do, in one or two sentences.</param>
/// <param name="Occurrences">How often it occurred, at least 1.</param>
public sealed record Diagnostic(
    string Code, Severity Severity, string File, long? Line, string Column, string Message, long Occurrences = 1);
