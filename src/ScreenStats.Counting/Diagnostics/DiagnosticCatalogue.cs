using System.Collections.Immutable;

namespace ScreenStats.Counting.Diagnostics;

/// <summary>Every diagnostic code there is. Codes are stable: a program may filter on them.</summary>
public static class DiagnosticCatalogue
{
    /// <summary>All codes with their meaning, in the order in which they are declared.</summary>
    public static ImmutableArray<DiagnosticDescription> All { get; } = [];
}
