using Microsoft.Win32.SafeHandles;

namespace ScreenStats.Records.Formats;

/// <summary>
/// Where the records of a file are: its blocks, and within a block every sixteenth record. A record is found again with
/// one small read, at a quarter of a byte of memory per record; at twice that where records span lines.
/// </summary>
internal sealed class RecordIndex : IDisposable
{
    /// <summary>Records between two marks.</summary>
    public const int Spacing = 16;

    private readonly List<Entry> entries = [];
    private readonly Lock gate = new();
    private readonly SafeFileHandle handle;
    private readonly TextEncoding encoding;

    public RecordIndex(string path, TextEncoding encoding)
    {
        this.encoding = encoding;
        handle = File.OpenHandle(path, FileMode.Open, FileAccess.Read, FileShare.Read, FileOptions.RandomAccess);
    }

    /// <summary>Adds a block; blocks come in order.</summary>
    public void Add(long firstRecord, long firstLine, Block block, int[] offsets, int[] lines)
    {
        Add(new Entry(firstRecord, firstLine, block.SourceOffset, block.SourceLength, block.Length, offsets, lines));
    }

    /// <summary>Adds a block that was known already.</summary>
    public void Add(Entry entry)
    {
        if (entry.HasLineForEachRecord) entry = entry with { Lines = [] };
        lock (gate) entries.Add(entry);
    }

    /// <summary>The blocks, in order.</summary>
    public Entry[] Entries
    {
        get
        {
            lock (gate) return [.. entries];
        }
    }

    /// <summary>First record of a block.</summary>
    public long FirstRecord(int block)
    {
        lock (gate) return entries[block].FirstRecord;
    }

    /// <summary>Line on which a block starts.</summary>
    public long FirstLine(int block)
    {
        lock (gate) return entries[block].FirstLine;
    }

    /// <summary>A line of the file as a place among the rows of the export.</summary>
    public long Order(int file, long line)
    {
        lock (gate)
        {
            var low = 0;
            var high = entries.Count - 1;
            while (low < high)
            {
                var middle = (low + high + 1) >> 1;
                if (entries[middle].FirstLine <= line) low = middle;
                else high = middle - 1;
            }

            return Validation.Place.Of(file, low, (int)(line - entries[low].FirstLine));
        }
    }

    /// <summary>Places the splitter on a record of the file. Returns its line.</summary>
    public long Find(long record, RecordSplitter splitter, ref byte[] buffer)
    {
        var low = 0;
        var high = entries.Count - 1;
        while (low < high)
        {
            var middle = (low + high + 1) >> 1;
            if (entries[middle].FirstRecord <= record) low = middle;
            else high = middle - 1;
        }

        var entry = entries[low];
        var within = (int)(record - entry.FirstRecord);
        var mark = within / Spacing;
        var from = entry.Offsets[mark];
        var to = mark + 1 < entry.Offsets.Length ? entry.Offsets[mark + 1] : entry.Length;
        var offset = 0;
        if (encoding.IsUtf8())
        {
            if (buffer.Length < to - from) buffer = new byte[Math.Max(to - from, 8192)];
            ReadAll(buffer.AsSpan(0, to - from), entry.SourceOffset + from);
        }
        else
        {
            var source = new byte[entry.SourceLength];
            ReadAll(source, entry.SourceOffset);
            buffer = System.Text.Encoding.Convert(encoding.Decoder(), System.Text.Encoding.UTF8, source);
            offset = from;
        }

        splitter.Load(buffer, offset, to - from);
        for (var skip = within % Spacing; skip >= 0; skip--) splitter.Next();
        return entry.FirstLine + entry.LineOf(mark) + splitter.LineBreaksBefore;
    }

    public void Dispose() => handle.Dispose();

    private void ReadAll(Span<byte> to, long offset)
    {
        while (to.Length > 0)
        {
            var read = RandomAccess.Read(handle, to, offset);
            if (read == 0) throw new EndOfStreamException();
            to = to[read..];
            offset += read;
        }
    }

    /// <summary>Where a block is, and every sixteenth record in it.</summary>
    /// <param name="FirstRecord">Its first record.</param>
    /// <param name="FirstLine">The line on which it starts.</param>
    /// <param name="SourceOffset">Where it starts in the file, in bytes.</param>
    /// <param name="SourceLength">Its bytes in the file.</param>
    /// <param name="Length">Its bytes in UTF-8.</param>
    /// <param name="Offsets">Where each of those records starts, in bytes of UTF-8.</param>
    /// <param name="Lines">Line breaks before each; empty where each record is a line, as nearly always.</param>
    internal sealed record Entry(
        long FirstRecord, long FirstLine, long SourceOffset, int SourceLength, int Length, int[] Offsets, int[] Lines)
    {
        /// <summary>True where the line breaks before each record follow from its number.</summary>
        public bool HasLineForEachRecord
        {
            get
            {
                for (var mark = 0; mark < Lines.Length; mark++)
                {
                    if (Lines[mark] != mark * Spacing) return false;
                }

                return true;
            }
        }

        /// <summary>Line breaks before a record of which the place is kept.</summary>
        public int LineOf(int mark) => Lines.Length == 0 ? mark * Spacing : Lines[mark];
    }
}
