using System.Collections.Immutable;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.PersonLog.Rows;

namespace ScreenStats.Records.PersonLog.Checks;

/// <summary>Collects diagnostics of counting, with the places of their first rows.</summary>
internal sealed class FoundDiagnostics
{
    private static readonly Dictionary<string, Severity> Severities =
        DiagnosticCatalogue.All.ToDictionary(one => one.Code, one => one.Severity, StringComparer.Ordinal);

    private readonly ImmutableArray<Diagnostic>.Builder all = ImmutableArray.CreateBuilder<Diagnostic>();

    public ImmutableArray<Diagnostic>.Builder All => all;

    /// <summary>Adds what was found in rows; nothing where the count is 0.</summary>
    /// <param name="code">Code of the catalogue.</param>
    /// <param name="column">Canonical column, or empty.</param>
    /// <param name="source">The export.</param>
    /// <param name="first">Its first rows, in any order; more than are shown may be given.</param>
    /// <param name="count">How often it was found.</param>
    /// <param name="message">The message.</param>
    public void Add(string code, string column, IRowSource source, IEnumerable<uint> first, long count, FormattableString message)
    {
        if (count <= 0) return;
        var places = Places(first, source, out var file);
        all.Add(new(code, Severities[code], file, places.IsEmpty ? null : places[0].Line, column, FormattableString.Invariant(message), count)
        {
            Places = places.Length > 1 ? places : [],
        });
    }

    private static ImmutableArray<DiagnosticPlace> Places(IEnumerable<uint> first, IRowSource source, out string file)
    {
        file = "";
        var records = new List<uint>(first);
        records.Sort();
        var places = ImmutableArray.CreateBuilder<DiagnosticPlace>();
        for (var i = 0; i < records.Count && places.Count < Diagnostic.MostPlaces; i++)
        {
            if (i > 0 && records[i] == records[i - 1]) continue;
            var place = source.Place(records[i]);
            if (file.Length == 0) file = place.File;
            // Rows of a view may have no number.
            if (place.Line > 0) places.Add(new DiagnosticPlace(place.File, place.Line));
        }

        return places.ToImmutable();
    }
}
