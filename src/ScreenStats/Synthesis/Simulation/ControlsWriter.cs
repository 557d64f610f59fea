using ScreenStats.Counting.Cubes;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>Writes the controls export.</summary>
internal sealed class ControlsWriter : IDisposable
{
    private readonly ExportWriter writer;
    private readonly Calendar calendar;
    private readonly byte[][] sites, lots;

    public ControlsWriter(SynthesisPlan plan, Calendar calendar, Stream stream)
    {
        this.calendar = calendar;
        writer = new ExportWriter(stream, plan.Dirt.CarriageReturns.Contains("controls"), plan.Dirt.ByteOrderMarks.Contains("controls"));
        sites = [.. plan.Sites.Select(site => ExportWriter.Field(site.Name))];
        lots = [.. plan.Lots.Select(lot => ExportWriter.Field(lot.Name))];
        writer.Append("site,lot,kit,run_at,control,result,operator"u8);
        writer.EndRow();
    }

    public void Write(in ScreeningRow row)
    {
        writer.Add(sites[row.Site]);
        writer.Add(lots[row.Lot]);
        writer.Add("k"u8);
        writer.Number(row.Kit, 4);
        calendar.Moment(writer, row.Minute);
        writer.Add(row.Control == ControlExpectation.Positive ? "positive"u8 : "negative"u8);
        writer.Add(row.Outcome switch
        {
            Outcome.Positive => "positive"u8,
            Outcome.Negative => "negative"u8,
            Outcome.Inconclusive => "inconclusive"u8,
            _ => "invalid"u8,
        });
        writer.Add("op-"u8);
        writer.Number(row.Operator, 2);
        writer.EndRow();
    }

    public void Dispose() => writer.Dispose();
}
