using ScreenStats.Records.Formats;
using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records;

/// <summary>Reads rows of an export again, one at a time.</summary>
internal sealed class ExportSource(IReadOnlyList<FilePlan> plans, IReadOnlyList<RecordIndex> indexes, IReadOnlyList<long> firstRecords, RowReader reader) : IRowSource
{
    private readonly Lock gate = new();
    private readonly RecordSplitter[] splitters = [.. plans.Select(plan => new RecordSplitter(plan.Delimiter))];
    private byte[] buffer = [];
    private int current = -1;

    public RowPlace Place(uint record)
    {
        lock (gate)
        {
            var file = Seek(record, out var line);
            return new RowPlace(plans[file].Name, plans[file].Lines.Of(line));
        }
    }

    /// <summary>The row's place, for sorting among other rows of the export and for showing, and its text.</summary>
    public (long Order, RowPlace Place, string Text) Locate(uint record)
    {
        lock (gate)
        {
            var file = Seek(record, out var line);
            var splitter = splitters[file];
            var text = System.Text.Encoding.UTF8.GetString(splitter.Bytes(splitter.RecordStart, splitter.RecordEnd));
            return (indexes[file].Order(file, line), new RowPlace(plans[file].Name, plans[file].Lines.Of(line)), text);
        }
    }

    public RunRow Read(uint record)
    {
        lock (gate)
        {
            if (reader is not ScreeningReader screening) throw new InvalidOperationException("Only the screening export has runs.");
            Understand(record);
            var run = screening.Last;
            screening.Forget();
            run.Record = record;
            return run;
        }
    }

    public bool MeanTheSame(uint first, uint second)
    {
        lock (gate)
        {
            var a = Meaning(first);
            var b = Meaning(second);
            return a.SequenceEqual(b);
        }
    }

    public bool HaveOneScreenId(uint first, uint second)
    {
        lock (gate)
        {
            if (reader is not ScreeningReader screening) throw new InvalidOperationException("Only the screening export has a screen_id.");
            Understand(first);
            var one = screening.TakeScreenId(splitters[current]).ToArray();
            Understand(second);
            return screening.TakeScreenId(splitters[current]).SequenceEqual(one);
        }
    }

    private byte[] Meaning(uint record)
    {
        var splitter = Understand(record);
        return reader.TakeMeaning(splitter);
    }

    private RecordSplitter Understand(uint record)
    {
        var file = Seek(record, out _);
        reader.Take(splitters[file], 0);
        return splitters[file];
    }

    private int Seek(uint record, out long line)
    {
        var file = plans.Count - 1;
        while (firstRecords[file] > record) file--;
        if (file != current)
        {
            reader.Begin(plans[file]);
            current = file;
        }

        line = indexes[file].Find(record - firstRecords[file], splitters[file], ref buffer);
        return file;
    }
}
