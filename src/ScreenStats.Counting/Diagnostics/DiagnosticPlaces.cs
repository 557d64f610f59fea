using System.Globalization;

namespace ScreenStats.Counting.Diagnostics;

/// <summary>The places of a diagnostic in words: one form for the console and the report.</summary>
public static class DiagnosticPlaces
{
    /// <summary>Where it was first seen: a file and up to <see cref="Diagnostic.MostPlaces"/> lines, file by file.</summary>
    /// <param name="diagnostic">The diagnostic.</param>
    /// <returns>Such as <c>screening.csv, lines 4, 9</c>; the file alone where no line is known; empty where it concerns no file.</returns>
    public static string Text(Diagnostic diagnostic)
    {
        ArgumentNullException.ThrowIfNull(diagnostic);
        if (diagnostic.Places.Length > 1)
        {
            return string.Join("; ", diagnostic.Places.GroupBy(place => place.File, StringComparer.Ordinal).Select(file =>
                $"{file.Key}, {(file.Skip(1).Any() ? "lines" : "line")} {string.Join(", ", file.Select(place => place.Line.ToString(CultureInfo.InvariantCulture)))}"));
        }

        return diagnostic.File.Length == 0 ? "" : diagnostic.Line is { } line
            ? string.Create(CultureInfo.InvariantCulture, $"{diagnostic.File}, line {line}")
            : diagnostic.File;
    }
}
