using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ScreenStats.Records.Formats;

/// <summary>
/// Splits UTF-8 bytes that hold whole records into records and fields, by the rules of RFC 4180: a quote opens a field
/// only as its first byte; inside, a doubled quote is one quote and line breaks are text. A quote elsewhere is text.
/// Lines end with LF or CR LF; a lone CR is text. Allocates nothing per record.
/// </summary>
/// <remarks>
/// Two stages: every 32 bytes are compared at once with the delimiter, LF and the quote, and the positions of the hits
/// are written down; a record is then a walk over positions. Two ends of the same tape, so a field costs a few cycles.
/// </remarks>
internal sealed unsafe class RecordSplitter
{
    private const int QuotedFlag = 1;
    private const int EscapedFlag = 2;

    private readonly byte delimiter;
    private int[] hits = new int[16 * 1024];
    private int hitCount;
    private int nextHit;
    private int[] starts = new int[64];
    private int[] ends = new int[64];
    private byte[] flags = new byte[64];
    private byte[] scratch = new byte[256];
    private byte[] bytes = [];
    private int first;
    private int last;
    private int position;
    private bool anyQuote;
    private int linesSoFar;

    public RecordSplitter(byte delimiter) => this.delimiter = delimiter;

    /// <summary>Number of fields of the current record.</summary>
    public int FieldCount { get; private set; }

    /// <summary>Line breaks before the current record, counted from the start of the bytes given.</summary>
    public int LineBreaksBefore { get; private set; }

    /// <summary>Line breaks inside quoted fields of the current record.</summary>
    public int LineBreaksInside { get; private set; }

    /// <summary>Line breaks up to and including the end of the current record.</summary>
    public int LineBreaksSoFar => linesSoFar;

    /// <summary>Offset of the current record in the array given.</summary>
    public int RecordStart { get; private set; }

    /// <summary>Offset just behind the current record's last byte, without its line end.</summary>
    public int RecordEnd { get; private set; }

    /// <summary>True where text stands between a closing quote and the next delimiter, or a quote was never closed.</summary>
    public bool Malformed { get; private set; }

    /// <summary>Line breaks from the start of the bytes to the quote that opened the malformed field.</summary>
    public int MalformedQuoteLine { get; private set; }

    /// <summary>Starts on new bytes: a whole number of records, the last one perhaps without its line end.</summary>
    public void Load(byte[] array, int offset, int length)
    {
        bytes = array;
        first = offset;
        position = offset;
        last = offset + length;
        linesSoFar = 0;
        nextHit = 0;
        FieldCount = 0;
        Index();
    }

    /// <summary>Moves to the next record that is not a blank line.</summary>
    public bool Next()
    {
        while (position < last)
        {
            LineBreaksBefore = linesSoFar;
            RecordStart = position;
            Malformed = false;
            LineBreaksInside = 0;
            if (anyQuote) WalkQuoted();
            else Walk();
            if (FieldCount != 1 || starts[0] != ends[0] || flags[0] != 0) return true;
        }

        FieldCount = 0;
        return false;
    }

    /// <summary>The field's text without its quotes; empty beyond the last field. Valid until new bytes are loaded.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ReadOnlySpan<byte> Field(int field)
    {
        if ((uint)field >= (uint)FieldCount) return default;
        var start = starts[field];
        var length = ends[field] - start;
        if (flags[field] != 0) return Quoted(field);
        return MemoryMarshal.CreateReadOnlySpan(ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(bytes), start), length);
    }

    /// <summary>The bytes between two offsets, as they stand in the file.</summary>
    public ReadOnlySpan<byte> Bytes(int start, int end) => bytes.AsSpan(start, end - start);

    private ReadOnlySpan<byte> Quoted(int field)
    {
        var raw = bytes.AsSpan(starts[field], ends[field] - starts[field]);
        if ((flags[field] & EscapedFlag) == 0) return raw.Length >= 2 ? raw[1..^1] : default;
        if (scratch.Length < raw.Length) scratch = new byte[Math.Max(raw.Length, scratch.Length * 2)];
        var length = 0;
        var inside = true;
        for (var i = 1; i < raw.Length; i++)
        {
            var b = raw[i];
            if (inside && b == (byte)'"')
            {
                if (i + 1 < raw.Length && raw[i + 1] == (byte)'"') i++;
                else
                {
                    inside = false;
                    continue;
                }
            }

            scratch[length++] = b;
        }

        // A copy of its own where the caller holds two unescaped fields at once: rare, so an allocation is fine.
        return scratch.AsSpan(0, length).ToArray();
    }

    private void Walk()
    {
        ref var at = ref MemoryMarshal.GetArrayDataReference(bytes);
        var fields = 0;
        var start = position;
        while (true)
        {
            if (fields == starts.Length) Grow();
            flags[fields] = 0;
            starts[fields] = start;
            if (nextHit == hitCount)
            {
                ends[fields++] = TrimCarriageReturn(start, last);
                position = last;
                break;
            }

            var hit = hits[nextHit++];
            if (Unsafe.Add(ref at, hit) == delimiter)
            {
                ends[fields++] = hit;
                start = hit + 1;
                continue;
            }

            ends[fields++] = TrimCarriageReturn(start, hit);
            position = hit + 1;
            linesSoFar++;
            break;
        }

        FieldCount = fields;
        RecordEnd = ends[fields - 1];
    }

    private void WalkQuoted()
    {
        var fields = 0;
        var start = position;
        while (true)
        {
            if (fields == starts.Length) Grow();
            flags[fields] = 0;
            starts[fields] = start;
            if (start < last && bytes[start] == (byte)'"')
            {
                WalkQuotedField(fields, start);
            }

            var hit = last;
            while (nextHit < hitCount)
            {
                hit = hits[nextHit++];
                if (bytes[hit] != (byte)'"') break;
                hit = last;
            }

            if (hit == last)
            {
                ends[fields] = TrimCarriageReturn(start, last);
                CheckTail(fields++);
                position = last;
                break;
            }

            if (bytes[hit] == delimiter)
            {
                ends[fields] = hit;
                CheckTail(fields++);
                start = hit + 1;
                continue;
            }

            ends[fields] = TrimCarriageReturn(start, hit);
            CheckTail(fields++);
            position = hit + 1;
            linesSoFar++;
            break;
        }

        FieldCount = fields;
        RecordEnd = ends[fields - 1];
    }

    private int closing;
    private int openingLine;

    private void WalkQuotedField(int field, int start)
    {
        flags[field] = QuotedFlag;
        openingLine = linesSoFar;
        closing = -1;
        nextHit++;
        while (nextHit < hitCount)
        {
            var hit = hits[nextHit++];
            var b = bytes[hit];
            if (b == (byte)'\n')
            {
                linesSoFar++;
                LineBreaksInside++;
            }
            else if (b == (byte)'"')
            {
                if (hit + 1 < last && bytes[hit + 1] == (byte)'"')
                {
                    flags[field] |= EscapedFlag;
                    nextHit++;
                    continue;
                }

                closing = hit;
                return;
            }
        }
    }

    private void CheckTail(int field)
    {
        if (flags[field] == 0 || closing == ends[field] - 1) return;
        flags[field] |= EscapedFlag;
        if (Malformed) return;
        Malformed = true;
        MalformedQuoteLine = openingLine;
    }

    private int TrimCarriageReturn(int start, int end) => end > start && bytes[end - 1] == (byte)'\r' ? end - 1 : end;

    private void Grow()
    {
        Array.Resize(ref starts, starts.Length * 2);
        Array.Resize(ref ends, ends.Length * 2);
        Array.Resize(ref flags, flags.Length * 2);
    }

    private void Index()
    {
        anyQuote = bytes.AsSpan(first, last - first).Contains((byte)'"');
        hitCount = 0;
        var i = first;
        fixed (byte* p = bytes)
        {
            if (Vector256.IsHardwareAccelerated)
            {
                var delimiters = Vector256.Create(delimiter);
                var newLines = Vector256.Create((byte)'\n');
                var quotes = anyQuote ? Vector256.Create((byte)'"') : newLines;
                for (; i + 64 <= last; i += 64)
                {
                    if (hitCount + 64 > hits.Length) Array.Resize(ref hits, hits.Length * 2);
                    var a = Vector256.Load(p + i);
                    var b = Vector256.Load(p + i + 32);
                    var low = (Vector256.Equals(a, delimiters) | Vector256.Equals(a, newLines) | Vector256.Equals(a, quotes)).ExtractMostSignificantBits();
                    var high = (Vector256.Equals(b, delimiters) | Vector256.Equals(b, newLines) | Vector256.Equals(b, quotes)).ExtractMostSignificantBits();
                    Write(low | ((ulong)high << 32), i);
                }
            }
            else
            {
                var delimiters = Vector128.Create(delimiter);
                var newLines = Vector128.Create((byte)'\n');
                var quotes = anyQuote ? Vector128.Create((byte)'"') : newLines;
                for (; i + 16 <= last; i += 16)
                {
                    if (hitCount + 64 > hits.Length) Array.Resize(ref hits, hits.Length * 2);
                    var a = Vector128.Load(p + i);
                    Write((Vector128.Equals(a, delimiters) | Vector128.Equals(a, newLines) | Vector128.Equals(a, quotes)).ExtractMostSignificantBits(), i);
                }
            }

            for (; i < last; i++)
            {
                var b = p[i];
                if (b != delimiter && b != (byte)'\n' && (!anyQuote || b != (byte)'"')) continue;
                if (hitCount == hits.Length) Array.Resize(ref hits, hits.Length * 2);
                hits[hitCount++] = i;
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Write(ulong bits, int offset)
    {
        if (bits == 0) return;
        var count = BitOperations.PopCount(bits);
        ref var to = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(hits), hitCount);
        // Eight at a time without a branch on each: the few too many are overwritten by the next round.
        for (var done = 0; done < count; done += 8)
        {
            for (var k = 0; k < 8; k++)
            {
                Unsafe.Add(ref to, done + k) = offset + BitOperations.TrailingZeroCount(bits);
                bits &= bits - 1;
            }
        }

        hitCount += count;
    }
}
