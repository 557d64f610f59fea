using System.Text.Unicode;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Formats;

/// <summary>Reads one file with several threads; row numbers and lines are as if one had read it.</summary>
internal sealed class FileReading(FilePlan plan, RecordIndex index, long firstRecord, Action<long> progress, SeenBytes? seen = null)
{
    private readonly Lock readGate = new();
    private readonly object turnGate = new();
    private readonly Dictionary<int, (long Record, long Line)> starts = new() { [0] = (0, 1) };
    private int nextBlock;
    private int brokenBlock = int.MaxValue;
    private int brokenLine;
    private BrokenFile brokenKind;
    private BrokenFileException? broken;
    private Exception? failure;
    private bool notUtf8;

    /// <summary>As many rows as the export may have: their numbers are 32 bits, unless a test says otherwise.</summary>
    public uint MostRows { get; init; } = uint.MaxValue;

    /// <summary>Rows of the file.</summary>
    public long Records { get; private set; }

    /// <summary>Where the file breaks off, or null.</summary>
    public (BrokenFile Kind, long Line)? Broken { get; private set; }

    /// <summary>Reads the file to its end, one reader for each thread.</summary>
    public void Run(IReadOnlyList<RowReader> readers)
    {
        foreach (var reader in readers) reader.Begin(plan);
        using (var blocks = new BlockReader(plan.Path, plan.Encoding, plan.Delimiter, seen: seen))
        {
            var tasks = readers.Skip(1)
                .Select(reader => Task.Factory.StartNew(() => Work(reader, blocks), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default))
                .ToArray();
            Work(readers[0], blocks);
            Task.WaitAll(tasks);
        }

        if (failure is not null) System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(failure);
        if (notUtf8) throw new ReadAgainException(plan.Path, TextEncoding.Windows1252);
        if (brokenBlock < int.MaxValue) Broken = (brokenKind, starts[brokenBlock].Line + brokenLine);
        else if (broken is not null) Broken = (broken.Kind, LineAt(broken.Utf8Offset));
    }

    private void Work(RowReader reader, BlockReader blocks)
    {
        try
        {
            var block = new Block();
            using var splitter = new RecordSplitter(plan.Delimiter);
            while (Take(blocks, block) && Split(reader, block, splitter))
            {
            }
        }
        catch (BrokenFileException exception)
        {
            broken = exception;
        }
        catch (Exception exception)
        {
            Stop(() => failure ??= exception);
        }
    }

    private bool Take(BlockReader blocks, Block block)
    {
        lock (readGate)
        {
            return !Stopped && broken is null && brokenBlock == int.MaxValue && blocks.Next(block);
        }
    }

    private bool Stopped => failure is not null || notUtf8;

    private bool Split(RowReader reader, Block block, RecordSplitter splitter)
    {
        if (plan.Encoding.IsUtf8() && !Utf8.IsValid(block.Buffer.AsSpan(0, block.Length)))
        {
            Stop(() => notUtf8 = true);
            return false;
        }

        splitter.Load(block.Buffer, 0, block.Length);
        if (block.Number == 0)
        {
            for (var skip = 0; skip < plan.RecordsBeforeRows; skip++) splitter.Next();
        }

        var offsets = new int[(block.Length / 64 / RecordIndex.Spacing) + 1];
        var lines = new int[offsets.Length];
        var marks = 0;
        uint record = 0;
        reader.BeginBlock(block.Number);
        while (splitter.Next())
        {
            if (record % RecordIndex.Spacing == 0)
            {
                if (marks == offsets.Length)
                {
                    Array.Resize(ref offsets, offsets.Length * 2);
                    Array.Resize(ref lines, lines.Length * 2);
                }

                offsets[marks] = splitter.RecordStart;
                lines[marks++] = splitter.LineBreaksBefore;
            }

            if (splitter.Fault.Spans) return Break(block.Number, BrokenFile.UnclosedQuote, splitter.LineBreaksBefore + splitter.Fault.LineBreaksBefore);
            if (splitter.RecordEnd - splitter.RecordStart > BlockReader.LongestRecord) return Break(block.Number, BrokenFile.RecordTooLong, splitter.LineBreaksBefore);
            reader.Take(splitter, record++);
        }

        Array.Resize(ref offsets, marks);
        Array.Resize(ref lines, marks);
        if (Turn(block, record, splitter.LineBreaks, offsets, lines) is not { } first) return false;
        if (firstRecord + first + record > MostRows) throw FileSniffer.TooManyRows(plan.Name, MostRows);
        reader.EndBlock((uint)(firstRecord + first));
        progress(block.SourceLength);
        return true;
    }

    /// <summary>Waits until the blocks before have been counted; the first record of this one.</summary>
    private long? Turn(Block block, uint records, int lines, int[] offsets, int[] lineMarks)
    {
        lock (turnGate)
        {
            while (nextBlock != block.Number)
            {
                if (Stopped || brokenBlock < block.Number) return null;
                Monitor.Wait(turnGate);
            }

            var (record, line) = starts[block.Number];
            starts.Remove(block.Number);
            starts[block.Number + 1] = (record + records, line + lines);
            index.Add(record, line, block, offsets, lineMarks);
            Records = record + records;
            nextBlock++;
            Monitor.PulseAll(turnGate);
            return record;
        }
    }

    private bool Break(int block, BrokenFile kind, int line)
    {
        lock (turnGate)
        {
            if (block < brokenBlock)
            {
                brokenBlock = block;
                brokenKind = kind;
                brokenLine = line;
            }

            Monitor.PulseAll(turnGate);
        }

        return false;
    }

    private void Stop(Action note)
    {
        lock (turnGate)
        {
            note();
            Monitor.PulseAll(turnGate);
        }
    }

    private long LineAt(long offset)
    {
        using var blocks = new BlockReader(plan.Path, plan.Encoding, plan.Delimiter);
        var block = new Block();
        var line = 1L;
        try
        {
            while (blocks.Next(block)) line += LineEnds.Count(block.Buffer.AsSpan(0, block.Length));
        }
        catch (BrokenFileException)
        {
            // The block that cannot be delivered is still in the buffer: its first bytes lead to the place.
            line += LineEnds.Count(block.Buffer.AsSpan(0, (int)(offset - blocks.Position)));
        }

        return line;
    }
}
