namespace ScreenStats.Records.Formats.Converting.Columnar;

/// <summary>
/// Goes through a structure in Thrift's compact protocol, in which Parquet writes its footer and the heads of its pages, before a
/// library builds objects from it: everything it claims to hold must lie within the bytes that are there, and nothing may be nested
/// deeper or come more often than in any real file.
/// </summary>
internal ref struct ThriftScan
{
    private const int Deepest = 24;
    private const int KindStop = 0, KindTrue = 1, KindFalse = 2, KindByte = 3, KindDouble = 7, KindBinary = 8, KindList = 9, KindSet = 10, KindMap = 11, KindStruct = 12;
    private const int LongName = 15;

    private readonly ReadOnlySpan<byte> bytes;
    private readonly Span<long> found;
    private long room;

    private ThriftScan(ReadOnlySpan<byte> bytes, Span<long> found, long mostStructures)
    {
        this.bytes = bytes;
        this.found = found;
        room = mostStructures;
    }

    private int At { get; set; }

    /// <summary>How long the structure at the beginning of the bytes is.</summary>
    /// <param name="bytes">The bytes.</param>
    /// <param name="found">Takes the whole numbers of the structure at 16 times 0 plus their field, and those of the structures in it at 16 times the field of that plus their own.</param>
    /// <param name="mostStructures">Structures that may be in it.</param>
    /// <returns>Its length in bytes; -1 where the bytes hold no such structure; -2 where they end before it does.</returns>
    public static int Length(ReadOnlySpan<byte> bytes, Span<long> found, long mostStructures)
    {
        var scan = new ThriftScan(bytes, found, mostStructures);
        return scan.Structure(0, 0) switch
        {
            Outcome.Whole => scan.At,
            Outcome.Short => -2,
            _ => -1,
        };
    }

    private enum Outcome
    {
        Whole = 0,
        Short = 1,
        Wrong = 2,
    }

    private Outcome Structure(int depth, int outer)
    {
        if (depth > Deepest || --room < 0) return Outcome.Wrong;
        var field = 0;
        while (true)
        {
            if (At >= bytes.Length) return Outcome.Short;
            var head = bytes[At++];
            var kind = head & 0xF;
            if (kind == KindStop) return head == 0 ? Outcome.Whole : Outcome.Wrong;
            if (head >> 4 != 0) field += head >> 4;
            else
            {
                var named = Number(out var written);
                if (named != Outcome.Whole) return named;
                field = (int)Math.Clamp(Signed(written), -1, short.MaxValue);
            }

            var outcome = Value(kind, depth, outer, field, inCollection: false);
            if (outcome != Outcome.Whole) return outcome;
        }
    }

    private Outcome Value(int kind, int depth, int outer, int field, bool inCollection)
    {
        switch (kind)
        {
            case KindTrue or KindFalse:
                return inCollection ? Skip(1) : Outcome.Whole;
            case KindByte:
                return Skip(1);
            case > KindByte and < KindDouble:
                var read = Number(out var value);
                if (read == Outcome.Whole && !inCollection && depth <= 1 && field is >= 0 and < 16 && (depth == 0 ? 0 : outer) is >= 0 and < 16)
                {
                    var place = (16 * (depth == 0 ? 0 : outer)) + field;
                    if (place < found.Length) found[place] = Signed(value);
                }

                return read;
            case KindDouble:
                return Skip(8);
            case KindBinary:
                var told = Number(out var length);
                return told != Outcome.Whole ? told : length > int.MaxValue ? Outcome.Wrong : Skip((int)length);
            case KindList or KindSet:
                return Items(depth);
            case KindMap:
                return Pairs(depth);
            case KindStruct:
                return Structure(depth + 1, field);
            default:
                return Outcome.Wrong;
        }
    }

    private Outcome Items(int depth)
    {
        if (depth > Deepest) return Outcome.Wrong;
        if (At >= bytes.Length) return Outcome.Short;
        var head = bytes[At++];
        var count = (ulong)(head >> 4);
        if (count == LongName)
        {
            var told = Number(out count);
            if (told != Outcome.Whole) return told;
        }

        // Whatever an item is, it takes a byte at least.
        if (count > (ulong)(bytes.Length - At)) return count > int.MaxValue ? Outcome.Wrong : Outcome.Short;
        for (var item = 0ul; item < count; item++)
        {
            var outcome = Value(head & 0xF, depth + 1, -1, -1, inCollection: true);
            if (outcome != Outcome.Whole) return outcome;
        }

        return Outcome.Whole;
    }

    private Outcome Pairs(int depth)
    {
        if (depth > Deepest) return Outcome.Wrong;
        var told = Number(out var count);
        if (told != Outcome.Whole) return told;
        if (count == 0) return Outcome.Whole;
        if (At >= bytes.Length) return Outcome.Short;
        var kinds = bytes[At++];
        if (count > (ulong)(bytes.Length - At)) return count > int.MaxValue ? Outcome.Wrong : Outcome.Short;
        for (var pair = 0ul; pair < count; pair++)
        {
            var key = Value(kinds >> 4, depth + 1, -1, -1, inCollection: true);
            if (key != Outcome.Whole) return key;
            var value = Value(kinds & 0xF, depth + 1, -1, -1, inCollection: true);
            if (value != Outcome.Whole) return value;
        }

        return Outcome.Whole;
    }

    private Outcome Skip(int length)
    {
        if (length > bytes.Length - At) return Outcome.Short;
        At += length;
        return Outcome.Whole;
    }

    private Outcome Number(out ulong value)
    {
        value = 0;
        for (var shift = 0; shift < 64; shift += 7)
        {
            if (At >= bytes.Length) return Outcome.Short;
            var b = bytes[At++];
            value |= (ulong)(b & 0x7F) << shift;
            if ((b & 0x80) == 0) return Outcome.Whole;
        }

        return Outcome.Wrong;
    }

    private static long Signed(ulong zigzag) => (long)(zigzag >> 1) ^ -(long)(zigzag & 1);
}
