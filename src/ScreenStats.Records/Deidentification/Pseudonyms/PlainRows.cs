using System.Text.Unicode;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Formats;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>Goes through a file row by row, block by block, and refuses a row whose columns are in doubt: a name might stand in the wrong one.</summary>
internal sealed class PlainRows(PseudonymPlan plan, CancellationToken cancellationToken)
{
    private const string Nothing = "Nothing was written: what stands in which column must be certain.";

    /// <summary>Told of each block's bytes in the file.</summary>
    public Action<int>? BlockDone { get; init; }

    /// <summary>Told of each record before the first row: the headings come last.</summary>
    public Action<RecordSplitter, bool>? Before { get; init; }

    /// <summary>Told of each row that is left out, and its line: a line of totals, or a resource that is not to be read.</summary>
    public Action<RecordSplitter, long>? LeftOut { get; init; }

    /// <summary>Told of the bytes that belong to no record: line ends and blank lines.</summary>
    public Action<ReadOnlySpan<byte>>? Between { get; init; }

    /// <summary>Goes through the rows.</summary>
    /// <param name="take">Takes a row, as the splitter holds it, and its line.</param>
    /// <exception cref="ReadAgainException">The file is not UTF-8.</exception>
    public void Run(Action<RecordSplitter, long> take)
    {
        using var blocks = new BlockReader(plan.Source.Part.Path, plan.Shape.Encoding, plan.Shape.Delimiter);
        using var splitter = new RecordSplitter(plan.Shape.Delimiter);
        var block = new Block();
        var line = 1L;
        var before = plan.Shape.RecordsBeforeRows;
        while (Next(blocks, block, line))
        {
            cancellationToken.ThrowIfCancellationRequested();
            if (plan.Shape.Encoding.IsUtf8() && !Utf8.IsValid(block.Buffer.AsSpan(0, block.Length))) throw new ReadAgainException(plan.Source.Part.Path, TextEncoding.Windows1252);
            splitter.Load(block.Buffer, 0, block.Length);
            var at = 0;
            while (splitter.Next())
            {
                Between?.Invoke(block.Buffer.AsSpan(at, splitter.RecordStart - at));
                at = splitter.RecordEnd;
                if (before > 0)
                {
                    before--;
                    Before?.Invoke(splitter, before == 0);
                }
                else
                {
                    var place = plan.Source.Part.Lines.Of(line + splitter.LineBreaksBefore);
                    CheckQuotes(splitter, place);
                    if ((plan.AsideField >= 0 && !splitter.Field(plan.AsideField).IsEmpty) || plan.Incomplete.IsTotals(splitter))
                    {
                        LeftOut?.Invoke(splitter, place);
                        continue;
                    }

                    CheckFields(splitter, place);
                    take(splitter, place);
                }
            }

            Between?.Invoke(block.Buffer.AsSpan(at, block.Length - at));
            line += splitter.LineBreaks;
            BlockDone?.Invoke(block.SourceLength);
        }
    }

    private bool Next(BlockReader blocks, Block block, long line)
    {
        try
        {
            return blocks.Next(block);
        }
        catch (BrokenFileException broken)
        {
            line = plan.Source.Part.Lines.Of(line + LineEnds.Count(block.Buffer.AsSpan(0, (int)(broken.Utf8Offset - blocks.Position))));
            throw broken.Kind == BrokenFile.UnclosedQuote
                ? PseudonymPlan.Refused(plan.Name, line, ReadingDiagnostics.UnclosedQuote, FileSniffer.UnclosedQuote(plan.Name, line))
                : PseudonymPlan.Refused(plan.Name, line, ReadingDiagnostics.RecordTooLong, FileSniffer.TooLong(plan.Name, line));
        }
    }

    private string At(long line) => $"The row on line {FindingTexts.Figure(line)} of {plan.Name}";

    private void CheckQuotes(RecordSplitter row, long line)
    {
        if (row.RecordEnd - row.RecordStart > BlockReader.LongestRecord) throw PseudonymPlan.Refused(plan.Name, line, ReadingDiagnostics.RecordTooLong, FileSniffer.TooLong(plan.Name, line));
        if (row.Fault.Malformed) throw Doubt(line, $"{At(line)} has text behind a closing quote. {Nothing} Correct the quotes.");
    }

    private void CheckFields(RecordSplitter row, long line)
    {
        for (var f = plan.Treatments.Length; f < row.FieldCount; f++)
        {
            if (!row.Field(f).IsEmpty) throw Doubt(line, $"{At(line)} has more fields than there are headings. {Nothing} Put quotes around text that holds the delimiter.");
        }
    }

    private UnusableDataException Doubt(long line, string message) => PseudonymPlan.Refused(plan.Name, line, PrivacyDiagnostics.ColumnsInDoubt, message);
}
