using ScreenStats.Counting.Cubes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Warehouse.Contract;
using ScreenStats.Warehouse.Engines;

namespace ScreenStats.Warehouse.Reading;

/// <summary>Understands the lines of <see cref="Sql.ScreeningSql.Rows"/>.</summary>
internal sealed class RowFetch(Names names, LocalTimes times, FetchedRuns rows)
{
    /// <summary>Where the screen_id stands in a line.</summary>
    public const int Identifier = 11;

    private static readonly int Origin = new DateOnly(2000, 1, 1).DayNumber;

    /// <summary>What a line says of who and when.</summary>
    public static (string? Person, int Day) Key(Line line) => (line.Text(0), (int)line.Whole(1));

    /// <summary>Takes a line.</summary>
    public void Take(Line line)
    {
        var (person, day) = Key(line);
        var run = new RunRow { Person = Names.Person(person), Site = names.Site(line.Text(3)!), Outcome = (Outcome)Names.Word(ViewContract.Outcomes, line.Text(4)) };
        if (line.Number(2) is { } instant) (run.Instant, run.OffsetMinutes) = (instant, times.Offset(day, instant));
        else
        {
            run.Instant = times.Midnight(day, out run.OffsetMinutes);
            run.DateOnly = true;
        }

        run.Lot = names.Lot(line.Text(5));
        run.Kit = names.Kit(line.Text(6));
        run.Operator = names.Operator(line.Text(7));
        run.Specimen = (Specimen)(Names.Word(ViewContract.Specimens, line.Text(8)) + 1);
        run.Collection = (CollectedBy)(Names.Word(ViewContract.Collections, line.Text(9)) + 1);
        var control = Names.Word(ViewContract.Controls, line.Text(10));
        if (control >= 0) run.Control = (ControlExpectation)control;
        var identifier = line.Text(Identifier);
        run.HasScreenId = identifier is not null;
        run.ScreenId = identifier is null ? 0 : Names.Hash(identifier);
        var (symptomatic, exposed, outbreak) = ((int)(line.Number(12) ?? 2), (int)(line.Number(13) ?? 2), (int)(line.Number(14) ?? 2));
        run.Symptomatic = symptomatic == 1;
        run.Exposed = exposed == 1;
        run.Outbreak = outbreak switch { 0 => OutbreakMark.No, 1 => OutbreakMark.Yes, _ => OutbreakMark.NotRecorded };
        run.LotExpiry = line.Number(15) is { } expiry ? DateOnly.FromDayNumber(Origin + (int)expiry) : null;
        var readAt = line.Number(16);
        if (readAt is { } read && !run.DateOnly) run.MinutesToReading = (int)Math.Clamp(Math.Floor((read - run.Instant) / 60.0), int.MinValue, int.MaxValue);
        var words = ((uint)run.Outbreak << 28) | ((uint)run.Outcome << 24) | ((uint)run.Specimen << 20) | ((uint)run.Collection << 16) | ((uint)(control + 2) << 12)
            | ((uint)symptomatic << 8) | ((uint)exposed << 4) | (run.DateOnly ? 1u : 0u);
        var meaning = Mix(run.Person, run.ScreenId);
        meaning = Mix(meaning, (ulong)run.Instant);
        meaning = Mix(meaning, ((ulong)(uint)Hash(line.Text(3)) << 32) | (uint)Hash(line.Text(5)));
        meaning = Mix(meaning, ((ulong)(uint)Hash(line.Text(6)) << 32) | (uint)Hash(line.Text(7)));
        meaning = Mix(meaning, words | ((ulong)(run.LotExpiry?.DayNumber ?? 0) << 32));
        run.Meaning = Mix(meaning, (ulong)(readAt ?? long.MinValue));
        rows.Add(run, new(person, identifier, words, readAt), line.Number(17));
    }

    internal static ulong Mix(ulong state, ulong value)
    {
        var mixed = (System.Numerics.BitOperations.RotateLeft(state, 29) ^ value) * 0x9E37_79B9_7F4A_7C15UL;
        return mixed ^ (mixed >> 32);
    }

    // Not of the code, which depends on who came first.
    private static int Hash(string? text) => text is null ? 0 : (int)Names.Hash(text);
}
