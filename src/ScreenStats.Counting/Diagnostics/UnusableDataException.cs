using System.Collections.Immutable;

namespace ScreenStats.Counting.Diagnostics;

/// <summary>The data or the program file cannot be used until what the diagnostics say is mended.</summary>
public class UnusableDataException : Exception
{
    /// <summary>Creates the exception from at least one diagnostic of severity error.</summary>
    /// <param name="diagnostics">Everything that was found, errors first.</param>
    /// <exception cref="ArgumentException">There is none.</exception>
    public UnusableDataException(ImmutableArray<Diagnostic> diagnostics)
        : base(diagnostics.IsDefaultOrEmpty ? "" : diagnostics[0].Message)
    {
        if (diagnostics.IsDefaultOrEmpty) throw new ArgumentException("At least one diagnostic is needed.", nameof(diagnostics));
        Diagnostics = diagnostics;
    }

    /// <summary>Creates the exception from one diagnostic.</summary>
    /// <param name="diagnostic">What was found.</param>
    public UnusableDataException(Diagnostic diagnostic) : this([diagnostic])
    {
    }

    /// <summary>Everything that was found, errors first.</summary>
    public ImmutableArray<Diagnostic> Diagnostics { get; }
}
