using System.Text;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>Writes screening rows with the plan's columns, headings and words.</summary>
internal sealed class ScreeningWriter : IDisposable
{
    /// <summary>The columns there are.</summary>
    public static readonly string[] Known =
    [
        "screen_id", "person", "site", "collected_at", "read_at", "result", "lot", "kit", "lot_expiry", "operator", "specimen",
        "collection", "symptomatic", "exposed", "control", "outbreak",
    ];

    private readonly ExportWriter writer;
    private readonly Calendar calendar;
    private readonly int[] columns;
    private readonly byte[][] sites, lots, expiries, specimens;
    private readonly byte[][] outcomes, capitals, controls;
    private readonly byte[] self, supervised, yes, no;

    public ScreeningWriter(SynthesisPlan plan, Calendar calendar, Stream stream)
    {
        this.calendar = calendar;
        writer = new ExportWriter(stream, plan.Dirt.CarriageReturns.Contains("screening"), plan.Dirt.ByteOrderMarks.Contains("screening"));
        columns = [.. plan.ScreeningColumns.Select(name => Array.IndexOf(Known, name))];
        sites = [.. plan.Sites.Select(site => ExportWriter.Field(site.Name))];
        lots = [.. plan.Lots.Select(lot => ExportWriter.Field(lot.Name))];
        expiries = [.. plan.Lots.Select(lot => Encoding.ASCII.GetBytes(lot.Expires is { } day ? Dates.Text(day) : ""))];
        specimens = [.. plan.Sites.Select(site => Word(plan, site.Specimen))];
        outcomes = [Word(plan, "negative"), Word(plan, "positive"), Word(plan, "inconclusive"), Word(plan, "invalid")];
        capitals = [.. outcomes.Select(word => Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(word).ToUpperInvariant()))];
        controls = [Word(plan, "negative"), Word(plan, "positive")];
        self = Word(plan, "self");
        supervised = Word(plan, "supervised");
        yes = Word(plan, "yes");
        no = Word(plan, "no");
        foreach (var column in plan.ScreeningColumns) writer.Add(ExportWriter.Field(plan.ScreeningHeadings.GetValueOrDefault(column, column)));
        writer.EndRow();
    }

    public void Write(in ScreeningRow row)
    {
        foreach (var column in columns)
        {
            switch (column)
            {
                case 0: writer.Add("s"u8); writer.Number(row.Identifier, 5); break;
                case 1: Person(row); break;
                case 2: writer.Add(sites[row.Site]); break;
                case 3: Collected(row); break;
                case 4: Read(row); break;
                case 5: writer.Add(Result(row)); break;
                case 6: writer.Add(Has(row, RowFaults.NoLot) ? [] : lots[row.Lot]); break;
                case 7: writer.Add(Has(row, RowFaults.NoKit) ? [] : "k"u8); if (!Has(row, RowFaults.NoKit)) writer.Number(row.Kit, 4); break;
                case 8: writer.Add(Has(row, RowFaults.NoLot) ? [] : expiries[row.Lot]); break;
                case 9: Operator(row); break;
                case 10: writer.Add(row.Control is null ? specimens[row.Site] : []); break;
                case 11: writer.Add(row.Control is not null ? [] : row.SelfCollected ? self : supervised); break;
                case 12: writer.Add(row.Control is not null || Has(row, RowFaults.BlankSymptoms) ? [] : row.Symptomatic ? yes : no); break;
                case 13: writer.Add(row.Control is not null ? [] : row.Exposed ? yes : no); break;
                case 14: writer.Add(row.Control is { } control ? controls[(int)control] : []); break;
                default: writer.Add(row.Control is not null ? [] : row.Outbreak ? yes : no); break;
            }
        }

        writer.EndRow();
    }

    public void Dispose() => writer.Dispose();

    private static bool Has(in ScreeningRow row, RowFaults fault) => (row.Faults & fault) != 0;

    private static byte[] Word(SynthesisPlan plan, string word) => ExportWriter.Field(plan.ScreeningWords.GetValueOrDefault(word, word));

    private void Person(in ScreeningRow row)
    {
        writer.Next();
        if (row.Control is not null) return;
        writer.Append("p-"u8);
        writer.Hexadecimal(row.Person, 6);
    }

    private void Operator(in ScreeningRow row)
    {
        writer.Next();
        if (Has(row, RowFaults.NoOperator)) return;
        writer.Append("op-"u8);
        writer.Number(row.Operator, 2);
    }

    private void Collected(in ScreeningRow row)
    {
        if (!Has(row, RowFaults.UnreadableDate)) calendar.Moment(writer, row.Minute);
        else writer.Add((row.Identifier & 1) == 0 ? "not noted"u8 : "2000-02-30T25:61"u8);
    }

    private void Read(in ScreeningRow row)
    {
        if (Has(row, RowFaults.UnreadableReadTime)) writer.Add("?"u8);
        else calendar.Moment(writer, row.ReadMinute);
    }

    private ReadOnlySpan<byte> Result(in ScreeningRow row)
    {
        if (Has(row, RowFaults.BlankResult)) return [];
        if (Has(row, RowFaults.UnknownWord)) return (row.Identifier & 1) == 0 ? "see note"u8 : "smudge"u8;
        return (Has(row, RowFaults.Capitals) ? capitals : outcomes)[(int)row.Outcome];
    }
}
