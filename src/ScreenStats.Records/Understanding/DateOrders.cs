using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Understanding;

/// <summary>Settles the order of day and month of an export's columns from all their values.</summary>
internal static class DateOrders
{
    /// <summary>Why a column is read as ISO 8601 although some of its dates are not.</summary>
    public const string MostlyIso = "more than nine in ten dates are ISO 8601; the few others are in doubt and not read";

    /// <summary>The order of each column and where it comes from; doubts become errors.</summary>
    public static (DateOrder? Order, string Why)[] Settle(
        ExportKind export, IReadOnlyList<DateEvidence> evidence, Func<long, (string File, long Line)> at, List<Diagnostic> errors)
    {
        var columns = CanonicalColumns.Of(export);
        var name = export.ToString().ToLowerInvariant();
        var settled = new (DateOrder? Order, string Why)[columns.Count];
        for (var c = 0; c < columns.Count; c++)
        {
            var seen = evidence[c];
            settled[c] = (seen.Order(), Why(seen, at));
            if (settled[c].Order is not null || seen.DayFirst + seen.MonthFirst + seen.Either == 0) continue;
            if (seen.DayFirst > 0)
            {
                var (file, line) = at(Math.Min(seen.FirstDayFirst, seen.FirstMonthFirst));
                errors.Add(new Diagnostic(ReadingDiagnostics.ContradictoryDates, Severity.Error, file, line, columns[c].Name,
                    $"In the {name} export, {columns[c].Name} on {Shown(at(seen.FirstDayFirst))} can only be day-first and on {Shown(at(seen.FirstMonthFirst))} only month-first. "
                    + "Export the column in one form, ISO 8601 (2026-01-05) at best."));
            }
            else
            {
                var first = at(seen.FirstEither.First);
                var second = seen.FirstEither.Second == long.MaxValue ? "" : $" and {Shown(at(seen.FirstEither.Second))}";
                errors.Add(new Diagnostic(ReadingDiagnostics.AmbiguousDates, Severity.Error, first.File, first.Line, columns[c].Name,
                    $"In the {name} export, {columns[c].Name} could be day-first or month-first: {Shown(first)}{second} would be read as another day, and nothing in the column decides it. "
                    + $"State dateOrder in the program file (exports.{name}.dateOrder): \"day-first\" or \"month-first\"."));
            }
        }

        return settled;
    }

    private static string Shown((string File, long Line) place) => $"{Validation.FindingTexts.Place(place.File, place.Line)} of {place.File}";

    private static string Why(DateEvidence seen, Func<long, (string File, long Line)> at) => seen.Order() switch
    {
        DateOrder.DayFirst => $"the whole column: {Validation.FindingTexts.Figure(seen.DayFirst)} dates can only be day-first, the first on {Shown(at(seen.FirstDayFirst))}, and none only month-first",
        DateOrder.MonthFirst => $"the whole column: {Validation.FindingTexts.Figure(seen.MonthFirst)} dates can only be month-first, the first on {Shown(at(seen.FirstMonthFirst))}, and none only day-first",
        DateOrder.Iso => MostlyIso,
        _ => "ISO 8601",
    };
}
