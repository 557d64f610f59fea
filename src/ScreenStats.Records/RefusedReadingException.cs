using System.Collections.Immutable;
using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Records;

/// <summary>The exports cannot be used; says also how far they were understood.</summary>
public sealed class RefusedReadingException : UnusableDataException
{
    /// <summary>Creates the exception.</summary>
    /// <param name="diagnostics">Everything that was found, errors first.</param>
    /// <param name="understanding">How each export was understood as far as that went; an export that was not read has no rows.</param>
    /// <exception cref="ArgumentException">There is no diagnostic.</exception>
    public RefusedReadingException(ImmutableArray<Diagnostic> diagnostics, ImmutableArray<ExportUnderstanding> understanding)
        : base(diagnostics) => Understanding = understanding;

    /// <summary>How each export was understood as far as that went.</summary>
    public ImmutableArray<ExportUnderstanding> Understanding { get; }
}
