using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog.Checks;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Scanning;

namespace ScreenStats.Records.PersonLog;

/// <summary>The counted confirmatory specimens by person and in order of time, without duplicates.</summary>
internal sealed class SpecimenIndex
{
    private static readonly SpecimenReason[] Reasons = Enum.GetValues<SpecimenReason>();
    private readonly Dictionary<ulong, (int Start, int Count)> persons = [];
    private readonly bool[] met;

    /// <summary>Sorts the specimens and takes out duplicates.</summary>
    /// <param name="rows">The rows; null without a confirmatory export.</param>
    /// <param name="source">The export; may be null only without rows.</param>
    /// <param name="reportLagHours">Hours to the report of a specimen without one.</param>
    public SpecimenIndex(IReadOnlyList<SpecimenRow>? rows, IRowSource? source, double reportLagHours)
    {
        HasExport = rows is not null;
        if (rows is null || rows.Count == 0)
        {
            Events = [];
            KnownDays = [];
            Rows = [];
            met = [];
            return;
        }

        ArgumentNullException.ThrowIfNull(source);
        var sorted = new SpecimenRow[rows.Count];
        for (var i = 0; i < sorted.Length; i++) sorted[i] = rows[i];
        Array.Sort(sorted, static (a, b) =>
            a.Person != b.Person ? a.Person.CompareTo(b.Person)
            : a.Instant != b.Instant ? a.Instant.CompareTo(b.Instant)
            : a.Record.CompareTo(b.Record));
        var removed = FindTwins(sorted, new TwinFinder(source, new Lock()));
        Rows = removed.Count == 0 ? sorted : Array.FindAll(sorted, row => !removed.Contains(row.Record));
        Events = new SpecimenEvent[Rows.Length];
        for (var i = 0; i < Rows.Length; i++) Events[i] = new(Time(Rows[i]), Rows[i].Result, Rows[i].Reason);
        KnownDays = new int[Rows.Length];
        for (var i = 0; i < Rows.Length; i++) KnownDays[i] = SettlementRule.KnownDay(Time(Rows[i]), Report(Rows[i]), reportLagHours);
        met = new bool[Rows.Length];
        for (var i = 0; i < Rows.Length;)
        {
            var start = i;
            while (i < Rows.Length && Rows[i].Person == Rows[start].Person) i++;
            persons.Add(Rows[start].Person, (start, i - start));
        }
    }

    /// <summary>True where there is a confirmatory export, with or without rows.</summary>
    public bool HasExport { get; }

    /// <summary>Counted specimens by person, time and record.</summary>
    public SpecimenRow[] Rows { get; }

    /// <summary>The same as the rules see them.</summary>
    public SpecimenEvent[] Events { get; }

    /// <summary>The day at whose end each is known.</summary>
    public int[] KnownDays { get; }

    /// <summary>Duplicates, by record.</summary>
    public List<RemovedRow> Removed { get; } = [];

    /// <summary>Possible duplicates: date-only twins, by record.</summary>
    public List<uint> PossibleDuplicates { get; } = [];

    /// <summary>Where a person's specimens stand; an empty range without any.</summary>
    public (int Start, int Count) Of(ulong person) => persons.GetValueOrDefault(person);

    /// <summary>People with specimens.</summary>
    public int Persons => persons.Count;

    /// <summary>Says that the person whose specimens start there is in the screening export. From several threads, each for its own people.</summary>
    public void Meet(int start) => met[start] = true;

    /// <summary>The first specimen of everybody who is not.</summary>
    public IEnumerable<uint> NeverMet() => persons.Values.Where(place => !met[place.Start]).Select(place => Rows.AsSpan(place.Start, place.Count).ToArray().Min(row => row.Record));

    public static Moment Time(in SpecimenRow row) => new(row.Instant, row.OffsetMinutes, row.DateOnly);

    /// <summary>When a specimen was reported; null where that is not recorded, or earlier than its collection.</summary>
    public static Moment? Report(in SpecimenRow row)
    {
        if (row.Reported is not { } reported) return null;
        var moment = new Moment(reported, row.OffsetMinutes, row.ReportedDateOnly);
        return ReportingLag.Seconds(Time(row), moment) < 0 ? null : moment;
    }

    /// <summary>People by their specimens of each reason.</summary>
    public ImmutableArray<SpecimenCell> ByReason()
    {
        var counts = new Dictionary<SpecimenCell, long>();
        foreach (var (start, count) in persons.Values)
        {
            foreach (var reason in Reasons)
            {
                var (positive, negative, indeterminate, rejected) = (0, 0, 0, 0);
                for (var i = start; i < start + count; i++)
                {
                    if (Events[i].Reason != reason) continue;
                    switch (Events[i].Result)
                    {
                        case ConfirmatoryResult.Positive: positive++; break;
                        case ConfirmatoryResult.Negative: negative++; break;
                        case ConfirmatoryResult.Indeterminate: indeterminate++; break;
                        default: rejected++; break;
                    }
                }

                if (positive + negative + indeterminate + rejected == 0) continue;
                var cell = new SpecimenCell(reason, positive, negative, indeterminate, rejected, 0);
                counts[cell] = counts.GetValueOrDefault(cell) + 1;
            }
        }

        return [.. counts.Select(pair => pair.Key with { Persons = pair.Value })];
    }

    private HashSet<uint> FindTwins(SpecimenRow[] sorted, TwinFinder twins)
    {
        var removed = new HashSet<uint>();
        for (var i = 0; i < sorted.Length;)
        {
            var start = i;
            while (i < sorted.Length && sorted[i].Person == sorted[start].Person && sorted[i].Instant == sorted[start].Instant) i++;
            if (i - start == 1) continue;
            foreach (var dateOnly in (ReadOnlySpan<bool>)[false, true])
            {
                for (var k = start; k < i; k++)
                {
                    if (sorted[k].DateOnly == dateOnly) twins.Add(sorted[k].Meaning, sorted[k].Record);
                }

                twins.Find((record, first) =>
                {
                    if (DuplicateRule.IsProof(hasScreenId: false, hasTimeOfDay: !dateOnly))
                    {
                        removed.Add(record);
                        Removed.Add(new(ExportKind.Confirmatory, record, CountingDiagnostics.Duplicate, first));
                    }
                    else
                    {
                        PossibleDuplicates.Add(record);
                    }
                });
            }
        }

        return removed;
    }
}
