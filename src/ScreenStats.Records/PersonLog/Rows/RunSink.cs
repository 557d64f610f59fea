using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog.Checks;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Identifiers;
using ScreenStats.Records.PersonLog.Scanning;
using ScreenStats.Records.PersonLog.Spilling;
using ScreenStats.Records.PersonLog.Sums;

namespace ScreenStats.Records.PersonLog.Rows;

/// <summary>
/// One thread's rows: 20 bytes each in the log, and the counts that need no other row. What turns out to be a duplicate later is
/// counted off again by <see cref="Count"/> with -1.
/// </summary>
internal sealed class RunSink : IRunSink
{
    private readonly SpillRoom? room;
    private readonly DeviceOfLot devices;
    private readonly bool anyReadingWindow;
    private readonly bool anyKitContents;
    private uint dayStart = 1;
    private int dayNumber;

    /// <param name="settings">The program file.</param>
    /// <param name="vocabularies">The texts behind the rows' codes.</param>
    /// <param name="room">What the rows may take in memory, and where those go that are beyond it; null: memory is not bounded.</param>
    public RunSink(ProgramSettings settings, Vocabularies vocabularies, SpillRoom? room = null)
    {
        this.room = room;
        devices = new(settings, vocabularies);
        anyReadingWindow = devices.AnyReadingWindow;
        anyKitContents = devices.AnyKitContents;
    }

    public PartitionedBuffer<LogEntry> Log { get; } = new();

    public ScreenIdLog ScreenIds { get; } = new();

    /// <summary>What was written away of the log; null: nothing.</summary>
    public PartitionSpill<LogEntry>? WrittenLog { get; private set; }

    /// <summary>What was written away of the identifiers; null: nothing.</summary>
    public PartitionSpill<ulong>? WrittenIds { get; private set; }

    public ShapeTable Shapes { get; } = new();

    /// <summary>Counted runs by shape and day.</summary>
    public CountTable Screens { get; } = new();

    /// <summary>Counted runs by operator, site, day, outcome and mark of an outbreak.</summary>
    public CountTable Operators { get; } = new();

    /// <summary>Findings of conduct that need one row only.</summary>
    public CountTable Conduct { get; } = new(16);

    /// <summary>What the checks of conduct and sense need.</summary>
    public RowChecks Checks { get; } = new();

    /// <summary>Rows by entry of the ledger.</summary>
    public long[] Ledger { get; } = new long[Enum.GetValues<LedgerEntry>().Length];

    /// <summary>Counted runs that are not negative, and control runs.</summary>
    public List<NotableRow> Notable { get; } = [];

    /// <summary>First and last local day of a counted run; the first is after the last where there is none.</summary>
    public int FirstDay { get; private set; } = int.MaxValue;

    public int LastDay { get; private set; } = int.MinValue;

    public void Take(ReadOnlySpan<RunRow> rows)
    {
        foreach (ref readonly var row in rows)
        {
            var seconds = Seconds(row.Instant);
            var code = Count(row, 1, out var entry);
            ref var logged = ref Log.Add(PartitionedBuffer<LogEntry>.Of(row.Person));
            logged.Person = row.Person;
            logged.Seconds = seconds;
            logged.Record = row.Record;
            logged.CodeAndMeaning = ((uint)code << 8) | (byte)row.Meaning;
            if (row.HasScreenId) ScreenIds.Add(row.ScreenId, row.Record);
            if (entry == LedgerEntry.ControlRun || (entry == LedgerEntry.Counted && row.Outcome != Outcome.Negative))
            {
                Notable.Add(new(row.Record, seconds, code, row.Operator, row.Kit));
            }
        }

        if (room is null) return;
        if (Log.Bytes > room.Log) WriteLog();
        if (ScreenIds.Bytes > room.Identifiers) WriteIds();
        if (Checks.KitDays.Put.Bytes > room.Kits) Checks.KitDays.WriteTo(room);
    }

    /// <summary>Writes all of the log away, which then holds nothing in memory.</summary>
    public void WriteLog() => (WrittenLog ??= room!.Create<LogEntry>()).Write(Log);

    /// <summary>Writes all identifiers away.</summary>
    public void WriteIds() => ScreenIds.WriteTo(WrittenIds ??= room!.Create<ulong>());

    /// <summary>Takes a row that was counted elsewhere: into the log, and into no table.</summary>
    public void TakeCounted(in RunRow row)
    {
        Take(new ReadOnlySpan<RunRow>(in row));
        Count(row, -1, out _);
    }

    /// <summary>Says between which local days runs lie that were counted elsewhere.</summary>
    public void Meet(int firstDay, int lastDay)
    {
        FirstDay = Math.Min(FirstDay, firstDay);
        LastDay = Math.Max(LastDay, lastDay);
    }

    /// <summary>Counts one row into every table that needs no other row.</summary>
    /// <param name="row">The row.</param>
    /// <param name="sign">1 to count it, -1 to count it off.</param>
    /// <param name="entry">Its entry in the ledger.</param>
    /// <returns>Code of its shape.</returns>
    public int Count(in RunRow row, int sign, out LedgerEntry entry)
    {
        var code = Shapes.Code(RowShape.Of(row));
        entry = LedgerRule.Entry(row.Control, row.Symptomatic, row.Exposed);
        Ledger[(int)entry] += sign;
        if (entry != LedgerEntry.Counted) return code;
        LevelLimits.Check(row.Operator, LevelLimits.MostOperators, "operator", "operators");
        var day = DayNumber(row.Instant, row.OffsetMinutes);
        if (day < FirstDay) FirstDay = day;
        if (day > LastDay) LastDay = day;
        Screens.Add(Keys.Shape(code, day), sign);
        Operators.Add(Keys.Operator(row.Operator, row.Site, day, row.Outcome, row.Outbreak), sign);
        if (row.LotExpiry is { } expiry && ConductRule.IsExpired(Moment.DayOf(day), expiry))
        {
            Conduct.Add(Keys.Conduct(ConductKind.ExpiredLot, row.Site, row.Lot, day), sign);
            Checks.Expired.Add(row.Record, sign);
        }

        if (anyReadingWindow && devices.Of(row.Lot) is { } read && (read.ReadFromMinutes ?? read.ReadToMinutes) is not null)
        {
            if (row.MinutesToReading is not { } minutes)
            {
                Conduct.Add(Keys.Conduct(ConductKind.ReadingNotRecorded, row.Site, row.Lot, day), sign);
            }
            else if (ConductRule.IsReadOutside(minutes, read.ReadFromMinutes, read.ReadToMinutes))
            {
                Conduct.Add(Keys.Conduct(ConductKind.ReadOutsideWindow, row.Site, row.Lot, day), sign);
                if (minutes > read.ReadToMinutes) Checks.ReadTooLate.Add(row.Record, sign);
                else if (!ConductRule.IsReadBeforeCollected(minutes)) Checks.ReadTooEarly.Add(row.Record, sign);
            }
        }

        if (anyKitContents && row.Kit >= LevelLimits.MostKits && devices.Of(row.Lot) is { RunsPerKit: not null }) LevelLimits.Check(row.Kit, LevelLimits.MostKits, "kit", "kits");

        Checks.Take(row, day, sign);
        return code;
    }

    private static uint Seconds(long instant) => instant is >= RunCounter.EarliestInstant and <= RunCounter.LatestInstant
        ? (uint)(instant - RunCounter.EarliestInstant)
        : throw new ArgumentOutOfRangeException(nameof(instant), instant, "A row's instant is between RunCounter.EarliestInstant and LatestInstant.");

    // Rows come mostly by day: the division is needed once a day.
    private int DayNumber(long instant, int offsetMinutes)
    {
        var local = instant - RunCounter.EarliestInstant + (60L * offsetMinutes);
        if (dayStart != 1 && (ulong)(local - dayStart) < Moment.SecondsPerDay) return dayNumber;
        dayNumber = new Moment(instant, offsetMinutes, false).DayNumber;
        var start = (dayNumber * Moment.SecondsPerDay) - RunCounter.EarliestInstant;
        dayStart = start is >= 0 and <= uint.MaxValue ? (uint)start : 1;
        return dayNumber;
    }
}
