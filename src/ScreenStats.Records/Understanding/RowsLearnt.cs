using ScreenStats.Counting.Ledger;
using ScreenStats.Records.Deidentification;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Understanding;

/// <summary>What readers learnt of rows beside the rows that go on to counting: of one file, or of all files of an export.</summary>
internal sealed class RowsLearnt
{
    private readonly int columns;
    private readonly int[] firstDays;
    private readonly int[] lastDays;
    private readonly Dictionary<(int Column, string Text, int Code), long> words = [];
    private readonly Dictionary<int, Words> tables = [];
    private readonly Dictionary<int, long[]> levels = [];
    private readonly Dictionary<(int File, int Field), ValueSample> unread = [];

    public RowsLearnt(ExportKind export)
    {
        columns = CanonicalColumns.Of(export).Count;
        Recorded = new long[columns];
        Findings = new Findings(columns);
        Samples = new ValueSample?[columns];
        firstDays = new int[columns];
        lastDays = new int[columns];
        firstDays.AsSpan().Fill(int.MaxValue);
        lastDays.AsSpan().Fill(int.MinValue);
    }

    /// <summary>Rows with a usable value, by column.</summary>
    public long[] Recorded { get; }

    public Findings Findings { get; }

    public List<SetAsideEntry> SetAside { get; } = [];

    /// <summary>Samples of the values of columns that name people.</summary>
    public ValueSample?[] Samples { get; }

    /// <summary>Samples of the values of columns that are not read.</summary>
    public IReadOnlyDictionary<(int File, int Field), ValueSample> UnreadSamples => unread;

    /// <summary>The rows of a confirmatory export.</summary>
    public List<SpecimenRow> Specimens { get; private set; } = [];

    /// <summary>Words met in columns of choices, what each was taken for and how often.</summary>
    public IReadOnlyDictionary<(int Column, string Text, int Code), long> Words => words;

    /// <summary>
    /// How often names that only rows set aside hold were met, by column and hash: such a row can hold anything anywhere, so a name is kept
    /// only where another row has it too.
    /// </summary>
    public Dictionary<(int Column, ulong Hash), long> NamesOfRowsSetAside { get; } = [];

    /// <summary>The table of words of a column of choices; null for others.</summary>
    public Words? TableOf(int column) => tables.GetValueOrDefault(column);

    /// <summary>How often each code of a site, lot or kit was met; null for columns of another kind.</summary>
    public long[]? LevelsOf(int column) => levels.GetValueOrDefault(column);

    public (DateOnly First, DateOnly Last)? DaysOf(int column) => firstDays[column] > lastDays[column]
        ? null
        : (new DateOnly(2000, 1, 1).AddDays(firstDays[column]), new DateOnly(2000, 1, 1).AddDays(lastDays[column]));

    /// <summary>First and last day of a column, counted from 2000-01-01; the first is after the last where there is none.</summary>
    public (int First, int Last) DayNumbersOf(int column) => (firstDays[column], lastDays[column]);

    public void AddDays(int column, int first, int last)
    {
        firstDays[column] = Math.Min(firstDays[column], first);
        lastDays[column] = Math.Max(lastDays[column], last);
    }

    public void AddWord(int column, string text, int code, long times) =>
        words[(column, text, code)] = words.GetValueOrDefault((column, text, code)) + times;

    public void AddLevel(int column, int code, long times)
    {
        var known = levels.GetValueOrDefault(column, []);
        if (code >= known.Length)
        {
            Array.Resize(ref known, Math.Max(code + 1, known.Length + (known.Length / 4)));
            levels[column] = known;
        }

        known[code] += times;
    }

    public void AddUnread(int file, int field, ValueSample sample)
    {
        if (!unread.TryGetValue((file, field), out var known)) unread.Add((file, field), known = new ValueSample());
        known.Add(sample);
    }

    /// <summary>Adds what a reader learnt.</summary>
    public void Add(RowReader reader)
    {
        for (var c = 0; c < columns; c++)
        {
            Recorded[c] += reader.Recorded[c];
            if (reader.SampleOf(c) is { } sample) (Samples[c] ??= new ValueSample()).Add(sample);
            var (first, last) = reader.DayNumbersOf(c);
            AddDays(c, first, last);
        }

        Findings.Add(reader.Findings);
        SetAside.AddRange(reader.SetAside);
        foreach (var ((file, field), sample) in reader.UnreadSamples) AddUnread(file, field, sample);
        foreach (var (column, codes, table) in reader.WordsMet())
        {
            tables[column] = table;
            foreach (var (text, code, times) in codes.Met()) AddWord(column, text, code, times);
        }

        foreach (var (column, codes) in reader.LevelsMet())
        {
            levels.TryAdd(column, []);
            foreach (var (code, times) in codes.Codes()) AddLevel(column, code, times);
        }

        if (reader is ConfirmatoryReader confirmatory) Take(confirmatory.TakeSpecimens());
    }

    // Of a large program each copy is a hundred megabytes.
    private void Take(List<SpecimenRow> specimens)
    {
        if (Specimens.Count == 0) Specimens = specimens;
        else Specimens.AddRange(specimens);
    }

    /// <summary>Adds what was learnt of another file.</summary>
    public void Add(RowsLearnt other)
    {
        for (var c = 0; c < columns; c++)
        {
            Recorded[c] += other.Recorded[c];
            if (other.Samples[c] is { } sample) (Samples[c] ??= new ValueSample()).Add(sample);
            AddDays(c, other.firstDays[c], other.lastDays[c]);
        }

        Findings.Add(other.Findings);
        SetAside.AddRange(other.SetAside);
        foreach (var ((file, field), sample) in other.unread) AddUnread(file, field, sample);
        foreach (var ((column, text, code), times) in other.words) AddWord(column, text, code, times);
        foreach (var (column, times) in other.levels)
        {
            for (var code = 0; code < times.Length; code++)
            {
                if (times[code] > 0) AddLevel(column, code, times[code]);
            }
        }

        foreach (var (name, times) in other.NamesOfRowsSetAside) NamesOfRowsSetAside[name] = NamesOfRowsSetAside.GetValueOrDefault(name) + times;
        Specimens.AddRange(other.Specimens);
    }
}
