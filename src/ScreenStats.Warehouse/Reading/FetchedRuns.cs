using System.Runtime.InteropServices;
using ScreenStats.Records.PersonLog.Rows;

namespace ScreenStats.Warehouse.Reading;

/// <summary>The rows of the screening view that were read one by one.</summary>
internal sealed class FetchedRuns(string view) : IRowSource
{
    /// <summary>Stands for a row that was counted where it lies.</summary>
    public const uint Unseen = uint.MaxValue - 1;

    private readonly List<(RunRow Row, FetchedTexts Texts, long? Number)> rows = [];

    public int Count => rows.Count;

    public void Add(in RunRow row, in FetchedTexts texts, long? number) => rows.Add((row, texts, number));

    /// <summary>Takes out the rows of people, to be read again in full.</summary>
    public void Remove(IReadOnlySet<ulong> people) => rows.RemoveAll(row => row.Row.Person != 0 && people.Contains(row.Row.Person));

    /// <summary>Numbers the rows in order: as the view does, else by what they say, so that no engine's order decides anything.</summary>
    public void Order()
    {
        rows.Sort(static (a, b) =>
            (a.Number ?? 0) != (b.Number ?? 0) ? (a.Number ?? 0).CompareTo(b.Number ?? 0)
            : a.Row.Instant != b.Row.Instant ? a.Row.Instant.CompareTo(b.Row.Instant)
            : a.Row.Person != b.Row.Person ? a.Row.Person.CompareTo(b.Row.Person)
            : a.Row.Meaning.CompareTo(b.Row.Meaning));
        var span = CollectionsMarshal.AsSpan(rows);
        for (var i = 0; i < span.Length; i++) span[i].Row.Record = (uint)i;
    }

    public RunRow this[int at] => rows[at].Row;

    public RowPlace Place(uint record) => new(view, record < rows.Count ? rows[(int)record].Number ?? 0 : 0);

    public RunRow Read(uint record) => rows[(int)record].Row;

    public bool HaveOneScreenId(uint first, uint second) => rows[(int)first].Texts.Identifier == rows[(int)second].Texts.Identifier;

    public bool MeanTheSame(uint first, uint second)
    {
        var (a, b) = (rows[(int)first], rows[(int)second]);
        return a.Row.Meaning == b.Row.Meaning && a.Texts == b.Texts && a.Row.Instant == b.Row.Instant && a.Row.OffsetMinutes == b.Row.OffsetMinutes && a.Row.DateOnly == b.Row.DateOnly
            && a.Row.Site == b.Row.Site && a.Row.Lot == b.Row.Lot && a.Row.Kit == b.Row.Kit && a.Row.Operator == b.Row.Operator && a.Row.LotExpiry == b.Row.LotExpiry;
    }
}
