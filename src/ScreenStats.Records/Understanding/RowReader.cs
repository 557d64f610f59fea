using System.Runtime.CompilerServices;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Deidentification;
using ScreenStats.Records.Formats;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Understanding;

/// <summary>Understands the rows of one export. One per thread; its memory of texts lasts over all files.</summary>
internal abstract class RowReader
{
    /// <summary>Columns of a file that are looked at although they are not read, at most.</summary>
    public const int MostUnread = 512;

    private readonly bool keepText;
    private readonly DateOrder?[] orders;
    private readonly int[] firstDays;
    private readonly int[] lastDays;
    private readonly ValueSample?[] samples;
    private readonly Dictionary<(int File, int Field), ValueSample> unreadSamples = [];
    private (int Field, ValueSample Sample)[] unread = [];
    private int file;
    private int block;
    private int fieldCount;
    private int asideField = -1;
    private bool twoDigitYears;

    protected RowReader(ExportKind export, TimeScale scale, bool keepText)
    {
        Export = export;
        Scale = scale;
        this.keepText = keepText;
        Columns = CanonicalColumns.Of(export);
        Fields = new int[Columns.Count];
        Recorded = new long[Columns.Count];
        orders = new DateOrder?[Columns.Count];
        firstDays = new int[Columns.Count];
        lastDays = new int[Columns.Count];
        firstDays.AsSpan().Fill(int.MaxValue);
        lastDays.AsSpan().Fill(int.MinValue);
        Findings = new Findings(Columns.Count);
        samples = new ValueSample?[Columns.Count];
    }

    public ExportKind Export { get; }

    public IReadOnlyList<CanonicalColumn> Columns { get; }

    /// <summary>Rows with a usable value, by column.</summary>
    public long[] Recorded { get; }

    /// <summary>Rows read.</summary>
    public long Rows { get; private set; }

    public Findings Findings { get; }

    public List<SetAsideEntry> SetAside { get; } = [];

    /// <summary>Samples of the values of columns that are not read, by file and field.</summary>
    public IReadOnlyDictionary<(int File, int Field), ValueSample> UnreadSamples => unreadSamples;

    protected TimeScale Scale { get; }

    /// <summary>The field of each canonical column, or -1.</summary>
    protected int[] Fields { get; }

    /// <summary>Place of the current row.</summary>
    protected long Here { get; private set; }

    /// <summary>Turns to a file.</summary>
    public void Begin(FilePlan plan)
    {
        file = plan.Number;
        fieldCount = plan.Headings.Count;
        asideField = plan.AsideField;
        twoDigitYears = plan.TwoDigitYears;
        for (var c = 0; c < Fields.Length; c++)
        {
            Fields[c] = plan.Matches[c].Field;
            orders[c] = plan.DateOrders[c];
        }

        unread = [.. Enumerable.Range(0, Math.Min(fieldCount, MostUnread)).Where(field => field != asideField && !Fields.Contains(field)).Select(field => (field, Unread(field)))];
    }

    /// <summary>The sample of the different values of a column that names people; null where there is none.</summary>
    public ValueSample? SampleOf(int column) => samples[column];

    public void BeginBlock(int number) => block = number;

    /// <summary>Understands the row and keeps it until <see cref="EndBlock"/>.</summary>
    /// <param name="row">The row.</param>
    /// <param name="record">Its position in the block.</param>
    public void Take(RecordSplitter row, uint record)
    {
        Rows++;
        Here = Place.Of(file, block, row.LineBreaksBefore);
        if (unread.Length > 0) LookAtUnread(row);
        var column = 0;
        var finding = Shape(row) ?? Understand(row, record, out column);
        if (finding is not { } why) return;
        if (why is not (Finding.MalformedRow or Finding.BlankRow) && TotalsLine.Is(row))
        {
            why = Finding.TotalsLine;
            column = 0;
        }

        Findings.Add(why, column, Here);
        SetAside.Add(new SetAsideEntry(Here, why, column,
            keepText ? System.Text.Encoding.UTF8.GetString(row.Bytes(row.RecordStart, row.RecordEnd)) : null, record));
    }

    /// <summary>The block's first record is known: rows go on to counting.</summary>
    public abstract void EndBlock(uint firstRecord);

    /// <summary>
    /// Everything the row understood last means, as bytes: equal for two rows exactly where they mean the same in every
    /// column that is read. Text stands in full, not as a hash. The row is then forgotten.
    /// </summary>
    public virtual byte[] TakeMeaning(RecordSplitter row) => throw new InvalidOperationException("Rows of this export are not compared.");

    /// <summary>The memories of words, for showing how they were understood.</summary>
    public abstract IEnumerable<(int Column, TextCodes Codes, Words Words)> WordsMet();

    /// <summary>The memories of names of sites, lots and kits.</summary>
    public virtual IEnumerable<(int Column, TextCodes Codes)> LevelsMet() => [];

    /// <summary>First and last day of a column, counted from 2000-01-01; the first is after the last where there is none.</summary>
    public (int First, int Last) DayNumbersOf(int column) => (firstDays[column], lastDays[column]);

    protected int ColumnOf(string name)
    {
        for (var c = 0; c < Columns.Count; c++)
        {
            if (Columns[c].Name == name) return c;
        }

        throw new ArgumentOutOfRangeException(nameof(name));
    }

    /// <summary>Understands one row; returns why it must be set aside, with the column, or null.</summary>
    protected abstract Finding? Understand(RecordSplitter row, uint record, out int column);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    protected static ReadOnlySpan<byte> Trimmed(ReadOnlySpan<byte> text)
    {
        if (text.IsEmpty || (text[0] > (byte)' ' && text[^1] > (byte)' ')) return text;
        return text.Trim(" \t\r\n"u8);
    }

    /// <summary>A text column's value: blank where nothing, or a word for nothing, is written.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    protected ReadOnlySpan<byte> Text(RecordSplitter row, int column)
    {
        var text = Trimmed(row.Field(Fields[column]));
        return text.Length is 3 or 4 && (text[0] | 0x20) == 'n' && Nothing(text) ? default : text;
    }

    /// <summary>Reads a moment; false where it is blank or cannot be read, which is then found.</summary>
    protected DateReading Moment(ReadOnlySpan<byte> text, int column, out WrittenMoment moment, out long instant, out short offset)
    {
        var reading = OnScale(text, column, out moment, out instant, out offset);
        if (reading != DateReading.Read) return reading;
        if (!Scale.HasZone && !moment.DateOnly) Findings.Add(moment.HasOffset ? Finding.WithOffset : Finding.WithoutOffset, column, Here);
        Recorded[column]++;
        return DateReading.Read;
    }

    /// <summary>The same without counting it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    protected DateReading OnScale(ReadOnlySpan<byte> text, int column, out WrittenMoment moment, out long instant, out short offset)
    {
        var reading = DateParser.Read(text, orders[column], out moment, twoDigitYears);
        instant = 0;
        offset = 0;
        if (reading == DateReading.OrderUnknown) throw new OrderUnknownException();
        if (reading != DateReading.Read) return reading;
        instant = Scale.Instant(moment, out offset);
        if (instant is < PersonLog.RunCounter.EarliestInstant or > PersonLog.RunCounter.LatestInstant) return DateReading.Unreadable;
        if (moment.Day < firstDays[column]) firstDays[column] = moment.Day;
        if (moment.Day > lastDays[column]) lastDays[column] = moment.Day;
        return DateReading.Read;
    }

    /// <summary>The settled order of a column's dates.</summary>
    protected DateOrder? Order(int column) => orders[column];

    /// <summary>True where years may have two figures.</summary>
    protected bool TwoDigitYears => twoDigitYears;

    /// <summary>Why a row is set aside whose required date was not read.</summary>
    protected static Finding NotRead(DateReading reading) => reading == DateReading.TwoDigitYear ? Finding.TwoDigitYear : Finding.UnreadableDate;

    /// <summary>
    /// The longest name of a site, lot, kit, operator or stratum, in bytes: every one is kept, and stands in many tables, so that a few hundred
    /// of a megabyte each would take gigabytes. Words of choices are not longer either.
    /// </summary>
    internal const int LongestName = 200;

    /// <summary>Reads a word of a choice column; negative where blank or unknown, the latter found.</summary>
    protected int Word(RecordSplitter row, int column, TextCodes codes, out ulong hash)
    {
        hash = 0;
        if (Fields[column] < 0) return Words.Blank;
        var text = Trimmed(row.Field(Fields[column]));
        if (text.IsEmpty) return Words.Blank;
        if (text.Length > LongestName) return Words.Unknown;
        var code = codes.Code(text, out _);
        if (code >= 0) Recorded[column]++;
        return code;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    protected int OptionalWord(RecordSplitter row, int column, TextCodes codes) => Fields[column] < 0 ? Words.Blank : MappedWord(row, column, codes);

    private int MappedWord(RecordSplitter row, int column, TextCodes codes)
    {
        var code = Word(row, column, codes, out _);
        if (code == Words.Unknown) Findings.Add(Finding.UnreadableValue, column, Here);
        return code;
    }

    /// <summary>The code of a text column with an open vocabulary; 0, the level of what is not recorded, where it is blank.</summary>
    protected int Level(RecordSplitter row, int column, TextCodes codes, out ulong hash)
    {
        hash = 0;
        if (Fields[column] < 0) return 0;
        var text = Text(row, column);
        if (text.IsEmpty) return 0;
        if (text.Length > LongestName)
        {
            hash = TextCodes.Hash(text);
            Findings.Add(Finding.NameTooLong, column, Here);
            return 0;
        }

        Recorded[column]++;
        return codes.Code(text, out hash);
    }

    /// <summary>Looks at a value of a column that names people: by itself, and for the sample by which the column is judged.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    protected void CheckIdentity(ReadOnlySpan<byte> text, ulong hash, int column)
    {
        var kind = IdentityRule.Of(text);
        if (kind != IdentityKind.None && !TotalsLine.Begins(text)) Findings.Add(LooksLike(kind), column, Here);
        var sample = samples[column] ??= new ValueSample();
        if (hash < sample.Limit && !TotalsLine.Begins(text)) sample.Take(hash, text);
    }

    /// <summary>The same for a text that is met for the first time.</summary>
    protected void CheckIdentity(string text, int column)
    {
        var bytes = System.Text.Encoding.UTF8.GetBytes(text);
        CheckIdentity(bytes, TextCodes.Hash(bytes), column);
    }

    /// <summary>Takes a text that is met for the first time into the column's sample; what it looks like by itself is for its rows to say.</summary>
    protected IdentityKind TakeIdentity(string text, int column)
    {
        var bytes = System.Text.Encoding.UTF8.GetBytes(text);
        if (TotalsLine.Begins(bytes)) return IdentityKind.None;
        (samples[column] ??= new ValueSample()).Take(TextCodes.Hash(bytes), bytes);
        return IdentityRule.Of(bytes);
    }

    protected static Finding LooksLike(IdentityKind kind) => kind switch
    {
        IdentityKind.Name => Finding.LooksLikeName,
        IdentityKind.EmailAddress => Finding.LooksLikeEmailAddress,
        IdentityKind.TelephoneNumber => Finding.LooksLikeTelephoneNumber,
        _ => Finding.LooksLikeGovernmentNumber,
    };

    private ValueSample Unread(int field)
    {
        if (!unreadSamples.TryGetValue((file, field), out var sample)) unreadSamples.Add((file, field), sample = new ValueSample());
        return sample;
    }

    private void LookAtUnread(RecordSplitter row)
    {
        foreach (var (field, sample) in unread)
        {
            var text = Trimmed(row.Field(field));
            if (text.IsEmpty) continue;
            var hash = TextCodes.Hash(text);
            if (hash < sample.Limit) sample.Take(hash, text);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    protected static ulong Mix(ulong state, ulong value)
    {
        var mixed = (System.Numerics.BitOperations.RotateLeft(state, 29) ^ value) * 0x9E37_79B9_7F4A_7C15UL;
        return mixed ^ (mixed >> 32);
    }

    /// <summary>Writes values one behind the other, texts with their length.</summary>
    protected static byte[] Written(ReadOnlySpan<long> values, ReadOnlySpan<byte> first, ReadOnlySpan<byte> second)
    {
        var bytes = new byte[(values.Length * 8) + 4 + first.Length + second.Length];
        System.Runtime.InteropServices.MemoryMarshal.AsBytes(values).CopyTo(bytes);
        System.Buffers.Binary.BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(values.Length * 8), first.Length);
        first.CopyTo(bytes.AsSpan((values.Length * 8) + 4));
        second.CopyTo(bytes.AsSpan((values.Length * 8) + 4 + first.Length));
        return bytes;
    }

    private static Finding? Aside(ReadOnlySpan<byte> reason) =>
        reason.IsEmpty ? null : Formats.Converting.ObservationLine.Why(System.Text.Encoding.UTF8.GetString(reason));

    private static bool Nothing(ReadOnlySpan<byte> text) =>
        text.Length == 3
            ? text[1] == (byte)'/' && (text[2] | 0x20) == 'a'
            : (text[1] | 0x20) == 'u' && (text[2] | 0x20) == 'l' && (text[3] | 0x20) == 'l';

    private Finding? Shape(RecordSplitter row)
    {
        if (row.Fault.Malformed) return Finding.MalformedRow;
        if (asideField >= 0 && Aside(row.Field(asideField)) is { } aside) return aside;
        if (row.FieldCount == fieldCount)
        {
            if (row.RecordEnd - row.RecordStart >= fieldCount) return null;
        }
        else if (row.FieldCount > fieldCount)
        {
            for (var f = fieldCount; f < row.FieldCount; f++)
            {
                if (!Trimmed(row.Field(f)).IsEmpty) return Finding.TooManyFields;
            }
        }

        for (var f = 0; f < row.FieldCount; f++)
        {
            if (!Trimmed(row.Field(f)).IsEmpty) return null;
        }

        return Finding.BlankRow;
    }
}
