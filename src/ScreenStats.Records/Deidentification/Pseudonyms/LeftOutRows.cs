using System.Text;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Records.Formats;
using ScreenStats.Records.Formats.Converting;
using ScreenStats.Records.Understanding;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>Counts the rows that are left out: lines of totals, and resources that the reader sets aside.</summary>
internal sealed class LeftOutRows(PseudonymPlan plan)
{
    private readonly SortedDictionary<Finding, (long Count, List<DiagnosticPlace> Places)> found = [];

    /// <summary>Lines of totals.</summary>
    public long Totals => Count(Finding.TotalsLine);

    /// <summary>Resources that are not to be read.</summary>
    public long Resources => found.Sum(one => one.Value.Count) - Totals;

    /// <summary>Takes a row.</summary>
    public void Take(RecordSplitter record, long line)
    {
        var aside = plan.AsideField >= 0 ? record.Field(plan.AsideField) : default;
        var why = aside.IsEmpty ? Finding.TotalsLine : ObservationLine.Why(Encoding.UTF8.GetString(aside));
        var (count, places) = found.TryGetValue(why, out var known) ? known : (0, []);
        if (places.Count < Diagnostic.MostPlaces) places.Add(new DiagnosticPlace(plan.Name, line));
        found[why] = (count + 1, places);
    }

    /// <summary>What is said of them, in the words of the reader.</summary>
    public IEnumerable<Diagnostic> Diagnostics() => found.Select(one => one.Key == Finding.TotalsLine
        ? new Diagnostic(ReadingDiagnostics.TotalsLine, Severity.Note, plan.Name, one.Value.Places[0].Line, "",
            $"{FindingTexts.Figure(one.Value.Count)} {(one.Value.Count == 1 ? "line" : "lines")} of totals in {plan.Name} ({(one.Value.Count == 1 ? "" : "the first on ")}line {FindingTexts.Figure(one.Value.Places[0].Line)}) {(one.Value.Count == 1 ? "was" : "were")} left out; nobody stands there.", one.Value.Count)
        { Places = Places(one.Value.Places) }
        : FindingTexts.Diagnostic(one.Key, ExportKind.Confirmatory, "", plan.Name, one.Value.Places[0].Line, one.Value.Count) with { Places = Places(one.Value.Places) });

    private static System.Collections.Immutable.ImmutableArray<DiagnosticPlace> Places(List<DiagnosticPlace> places) => places.Count > 1 ? [.. places] : [];

    private long Count(Finding finding) => found.TryGetValue(finding, out var known) ? known.Count : 0;
}
