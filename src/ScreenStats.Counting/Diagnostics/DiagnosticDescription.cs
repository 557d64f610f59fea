namespace ScreenStats.Counting.Diagnostics;

/// <summary>The meaning of a diagnostic code.</summary>
/// <param name="Code">Stable code, words in lower case joined by hyphens.</param>
/// <param name="Severity">Its severity.</param>
/// <param name="Meaning">What it means, in one sentence.</param>
/// <param name="Advice">What to do about it, in one sentence.</param>
public sealed record DiagnosticDescription(string Code, Severity Severity, string Meaning, string Advice);
