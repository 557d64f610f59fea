using System.Collections.Immutable;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Counting.Diagnostics;

/// <summary>Every diagnostic code there is. Codes are stable: a program may filter on them.</summary>
public static class DiagnosticCatalogue
{
    /// <summary>All codes with their meaning, in the order in which they are declared.</summary>
    public static ImmutableArray<DiagnosticDescription> All { get; } =
    [
        .. ProgramFileCodes(),
    ];

    private static IEnumerable<DiagnosticDescription> ProgramFileCodes() =>
    [
        new(ProgramFile.NotJsonCode, Severity.Error, "The program file is not valid JSON.",
            "Look for a missing comma, quote or bracket at the line named."),
        new(ProgramFile.UnknownKeyCode, Severity.Error, "The program file holds a key that is not known where it stands.",
            "Write the nearest known key, which the message names, or remove it."),
        new(ProgramFile.RepeatedKeyCode, Severity.Error, "A key of the program file is given twice.", "Keep one of the two."),
        new(ProgramFile.WrongValueCode, Severity.Error, "A value in the program file has the wrong type or is impossible.",
            "Write it as the message says."),
    ];
}
