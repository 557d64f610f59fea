using System.Collections.Immutable;
using System.Runtime.InteropServices;
using ScreenStats.Counting.Ledger;

namespace ScreenStats.Counting.Cubes;

/// <summary>The canonical order of each cube's cells (ordinal, coordinate by coordinate) and how equal cells are added up.</summary>
internal static class CellOrder
{
    public static int Compare(ScreenCell a, ScreenCell b) =>
        First(Text(a.Site, b.Site), Text(a.Lot, b.Lot), a.Day.CompareTo(b.Day), a.Specimen - b.Specimen,
            a.Collection - b.Collection, First(a.Outcome - b.Outcome, a.FollowUp - b.FollowUp, a.Occasion - b.Occasion));

    public static int Compare(OperatorCell a, OperatorCell b) =>
        First(Text(a.Operator, b.Operator), Text(a.Site, b.Site), a.Day.CompareTo(b.Day), a.Outcome - b.Outcome, a.FollowUp - b.FollowUp, a.Occasion - b.Occasion);

    public static int Compare(NotableRun a, NotableRun b) => First(
        First(a.Minute.CompareTo(b.Minute), a.DateOnly.CompareTo(b.DateOnly)),
        Text(a.Site, b.Site), Text(a.Lot, b.Lot), Text(a.Kit, b.Kit), Text(a.Operator, b.Operator),
        First(a.Specimen - b.Specimen, a.Collection - b.Collection, a.Outcome - b.Outcome, a.FollowUp - b.FollowUp),
        First(Nullable.Compare(a.MinutesToSpecimen, b.MinutesToSpecimen), Number(a.Control) - Number(b.Control), a.Occasion - b.Occasion));

    public static int Compare(PersonCell a, PersonCell b) =>
        First(a.Scope - b.Scope, Text(a.Level, b.Level), Nullable.Compare(a.PeriodStart, b.PeriodStart), a.Measure - b.Measure);

    public static int Compare(ParticipationCell a, ParticipationCell b) => a.Runs.CompareTo(b.Runs);

    public static int Compare(CaseCell a, CaseCell b) =>
        First(Text(a.Site, b.Site), Text(a.Lot, b.Lot), a.Day.CompareTo(b.Day), a.FoundThrough - b.FoundThrough);

    public static int Compare(GapCell a, GapCell b) => First(Text(a.Site, b.Site), a.Days.CompareTo(b.Days));

    public static int Compare(DelayCell a, DelayCell b) =>
        First(a.Kind - b.Kind, Text(a.Site, b.Site), Nullable.Compare(a.Minutes, b.Minutes), a.WholeDays.CompareTo(b.WholeDays));

    public static int Compare(AuditCell a, AuditCell b) =>
        First(Text(a.Site, b.Site), Text(a.Lot, b.Lot), a.Day.CompareTo(b.Day), Text(a.Stratum, b.Stratum), a.Result - b.Result);

    public static int Compare(AuditStratumCell a, AuditStratumCell b) => First(Text(a.Stratum, b.Stratum), a.Origin - b.Origin);

    public static int Compare(AuditProductCell a, AuditProductCell b) => First(
        Text(a.Stratum, b.Stratum), a.Total - b.Total, Text(a.OtherStratum, b.OtherStratum), a.OtherTotal - b.OtherTotal);

    public static int Compare(IntervalCaseCell a, IntervalCaseCell b) => First(Text(a.Site, b.Site), a.DaysSinceRun.CompareTo(b.DaysSinceRun));

    public static int Compare(ConductCell a, ConductCell b) => First(
        a.Kind - b.Kind, Text(a.Site, b.Site), Text(a.Lot, b.Lot), a.Day.CompareTo(b.Day));

    public static int Compare(RepeatCell a, RepeatCell b) => First(Text(a.Site, b.Site), a.Day.CompareTo(b.Day), a.Outcome - b.Outcome);

    public static int Compare(RetestCell a, RetestCell b) => First(
        Text(a.Site, b.Site), Text(a.Lot, b.Lot), a.Day.CompareTo(b.Day), Text(a.RetestLot, b.RetestLot), a.Retest - b.Retest, a.FollowUp - b.FollowUp);

    public static int Compare(SpecimenCell a, SpecimenCell b) => First(
        a.Reason - b.Reason, a.Positive.CompareTo(b.Positive), a.Negative.CompareTo(b.Negative), a.Indeterminate.CompareTo(b.Indeterminate), a.Rejected.CompareTo(b.Rejected));

    public static int Compare(ControlCell a, ControlCell b) => First(
        Text(a.Site, b.Site), Text(a.Lot, b.Lot), Text(a.Kit, b.Kit), a.Day.CompareTo(b.Day), Nullable.Compare(a.Time, b.Time),
        First(Text(a.Operator, b.Operator), a.Expected - b.Expected, a.Observed - b.Observed));

    public static int Compare(SettlementCell a, SettlementCell b) => First(
        First(a.Known.CompareTo(b.Known), a.Minute.CompareTo(b.Minute), a.DateOnly.CompareTo(b.DateOnly)),
        Text(a.Site, b.Site), Text(a.Lot, b.Lot), Text(a.Kit, b.Kit), Text(a.Operator, b.Operator),
        First(a.Specimen - b.Specimen, a.Collection - b.Collection, a.Outcome - b.Outcome, a.Before - b.Before, a.After - b.After),
        First(Nullable.Compare(a.MinutesBefore, b.MinutesBefore), Nullable.Compare(a.MinutesAfter, b.MinutesAfter), a.Occasion - b.Occasion));

    public static int Compare(KitCell a, KitCell b) => First(Text(a.Site, b.Site), Text(a.Lot, b.Lot), a.Day.CompareTo(b.Day));

    public static int Compare(HeadcountCell a, HeadcountCell b) => First(Text(a.Site, b.Site), a.Week.CompareTo(b.Week));

    public static int Compare(SiteCell a, SiteCell b) => First(Text(a.Site, b.Site), Text(a.Region, b.Region));

    public static int Compare(CompletenessCell a, CompletenessCell b) => First(a.Export - b.Export, Text(a.Column, b.Column), a.Mapped.CompareTo(b.Mapped));

    public static int Compare(LedgerCell a, LedgerCell b) => First(a.Export - b.Export, a.Entry - b.Entry);

    /// <summary>Cells in canonical order, equal coordinates once, without empty ones. Cells that are so already are returned as they are.</summary>
    /// <param name="cells">Cells in any order.</param>
    /// <param name="compare">Order of the coordinates.</param>
    /// <param name="add">Adds two cells of equal coordinates; null where each cell stands for itself.</param>
    /// <param name="isEmpty">True for a cell that counts nothing and is left out.</param>
    public static ImmutableArray<T> Canonical<T>(ImmutableArray<T> cells, Comparison<T> compare, Func<T, T, T>? add, Func<T, bool> isEmpty)
    {
        if (cells.IsDefaultOrEmpty) return [];
        var span = cells.AsSpan();
        var ready = !isEmpty(span[0]);
        for (var i = 1; i < span.Length && ready; i++)
        {
            var order = compare(span[i - 1], span[i]);
            ready = (order < 0 || (order == 0 && add is null)) && !isEmpty(span[i]);
        }

        if (ready) return cells;
        var sorted = span.ToArray();
        sorted.AsSpan().Sort(compare);
        var kept = 0;
        for (var i = 0; i < sorted.Length;)
        {
            var cell = sorted[i++];
            if (add is not null)
            {
                for (; i < sorted.Length && compare(cell, sorted[i]) == 0; i++) cell = add(cell, sorted[i]);
            }

            if (!isEmpty(cell)) sorted[kept++] = cell;
        }

        Array.Resize(ref sorted, kept);
        return ImmutableCollectionsMarshal.AsImmutableArray(sorted);
    }

    // Cells of one level mostly share the string.
    private static int Text(string a, string b) => ReferenceEquals(a, b) ? 0 : string.CompareOrdinal(a, b);

    private static int Number(ControlExpectation? control) => control is { } expected ? (int)expected : -1;

    private static int First(int a, int b) => a != 0 ? a : b;

    private static int First(int a, int b, int c) => a != 0 ? a : b != 0 ? b : c;

    private static int First(int a, int b, int c, int d) => a != 0 ? a : First(b, c, d);

    private static int First(int a, int b, int c, int d, int e) => a != 0 ? a : First(b, c, d, e);

    private static int First(int a, int b, int c, int d, int e, int f) => a != 0 ? a : First(b, c, d, e, f);

    private static int First(int a, int b, int c, int d, int e, int f, int g) => a != 0 ? a : First(b, c, d, e, f, g);
}
