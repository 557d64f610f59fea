using ScreenStats.Records.PersonLog.Rows;

namespace ScreenStats.Warehouse.Reading;

/// <summary>The rows of the confirmatory view.</summary>
internal sealed class FetchedSpecimens(string view) : IRowSource
{
    private readonly List<(SpecimenRow Row, FetchedTexts Texts, long? Number)> rows = [];

    public void Add(in SpecimenRow row, in FetchedTexts texts, long? number) => rows.Add((row, texts, number));

    /// <summary>Numbers the rows in order, as <see cref="FetchedRuns.Order"/> does.</summary>
    public List<SpecimenRow> InOrder()
    {
        rows.Sort(static (a, b) =>
            (a.Number ?? 0) != (b.Number ?? 0) ? (a.Number ?? 0).CompareTo(b.Number ?? 0)
            : a.Row.Instant != b.Row.Instant ? a.Row.Instant.CompareTo(b.Row.Instant)
            : a.Row.Person != b.Row.Person ? a.Row.Person.CompareTo(b.Row.Person)
            : a.Row.Meaning.CompareTo(b.Row.Meaning));
        return [.. rows.Select((row, at) => row.Row with { Record = (uint)at })];
    }

    /// <summary>The pseudonyms, with what stands for each in the log.</summary>
    public IEnumerable<(ulong Person, string Text)> People => rows.Select(row => (row.Row.Person, row.Texts.Person!));

    public RowPlace Place(uint record) => new(view, record < rows.Count ? rows[(int)record].Number ?? 0 : 0);

    public RunRow Read(uint record) => throw new InvalidOperationException("Specimens are no runs.");

    public bool HaveOneScreenId(uint first, uint second) => throw new InvalidOperationException("Specimens have no screen_id.");

    public bool MeanTheSame(uint first, uint second)
    {
        var (a, b) = (rows[(int)first], rows[(int)second]);
        return a.Row.Meaning == b.Row.Meaning && a.Texts == b.Texts && a.Row.Instant == b.Row.Instant && a.Row.DateOnly == b.Row.DateOnly && a.Row.Result == b.Row.Result
            && a.Row.Reason == b.Row.Reason && a.Row.Reported == b.Row.Reported && a.Row.ReportedDateOnly == b.Row.ReportedDateOnly && a.Row.Stratum == b.Row.Stratum;
    }
}
