using System.Collections.Immutable;

namespace ScreenStats.Counting.Diagnostics;

/// <summary>One thing found in the data: what, where, what to do. Never holds the text of a cell, but for names of sites, lots and kits.</summary>
/// <param name="Code">Stable code from <see cref="DiagnosticCatalogue"/>.</param>
/// <param name="Severity">How much it matters.</param>
/// <param name="File">Name of the file without its folder; empty where it concerns none.</param>
/// <param name="Line">Physical line of the first occurrence, from 1; null where it concerns a whole file.</param>
/// <param name="Column">Canonical column, or empty.</param>
/// <param name="Message">What, where, what to do, in one or two sentences.</param>
/// <param name="Occurrences">How often it occurred, at least 1.</param>
public sealed record Diagnostic(
    string Code, Severity Severity, string File, long? Line, string Column, string Message, long Occurrences = 1)
{
    /// <summary>How many of the first places are kept.</summary>
    public const int MostPlaces = 5;

    /// <summary>The first places, at most <see cref="MostPlaces"/>, in the order of files and lines; empty where only one or none is known.</summary>
    public ImmutableArray<DiagnosticPlace> Places { get; init; } = [];

    /// <summary>Two are equal where all values are, place by place.</summary>
    /// <param name="other">The other.</param>
    /// <returns>Whether they are equal.</returns>
    public bool Equals(Diagnostic? other) => other is not null && Code == other.Code && Severity == other.Severity && File == other.File && Line == other.Line
        && Column == other.Column && Message == other.Message && Occurrences == other.Occurrences && Places.SequenceEqual(other.Places);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Code, File, Line, Column, Message, Occurrences);
}
