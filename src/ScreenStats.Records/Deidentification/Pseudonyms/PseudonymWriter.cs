using System.Collections.Immutable;
using System.IO.Hashing;
using System.Text;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Formats;
using ScreenStats.Records.Formats.Converting;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>Copies a file row by row with what is to be changed changed. Holds one block of it, and the pseudonyms of the values met most recently.</summary>
internal sealed class PseudonymWriter(PseudonymPlan plan, Pseudonym pseudonym, Stream target, IProgress<ReadProgress>? progress, CancellationToken cancellationToken)
{
    private const int Remembered = 1 << 15;
    private const int LongestRemembered = 64;

    private readonly (byte[]? Value, byte[]? Pseudonym)[] memory = new (byte[]?, byte[]?)[Remembered];
    private readonly List<(int Start, int End)> fields = [];
    private readonly long[] replaced = new long[plan.Treatments.Length];
    private readonly long[] blank = new long[plan.Treatments.Length];
    private readonly long[] unreadable = new long[plan.Treatments.Length];
    private readonly ValueSample?[] kept = [.. plan.Treatments.Select(treatment => treatment == ColumnTreatment.Kept ? new ValueSample() : null)];
    private long rows;
    private long dropped;
    private readonly LeftOutRows leftOut = new(plan);
    private long withheld;
    private long firstWithheld;
    private long read;
    private bool lineEndDue = true;

    /// <summary>Writes the whole file.</summary>
    public void Run()
    {
        if (plan.Shape.Encoding == TextEncoding.Utf8WithMark) target.Write([0xEF, 0xBB, 0xBF]);
        new PlainRows(plan, cancellationToken)
        {
            Between = bytes =>
            {
                if (lineEndDue) target.Write(bytes);
            },
            Before = Heading,
            LeftOut = (record, line) =>
            {
                lineEndDue = false;
                leftOut.Take(record, line);
            },
            BlockDone = bytes => progress?.Report(new ReadProgress(read += bytes, plan.Shape.Length)),
        }.Run(Row);
        if (rows == 0) throw PseudonymPlan.Refused(plan.Name, null, ReadingDiagnostics.NothingUsable, $"No row of {plan.Name} is to be read: all are lines of totals, or resources that are no final results. Nothing was written.");
    }

    /// <summary>What was done.</summary>
    public PseudonymizeResult Result(bool keyCreated) => new(
        rows, plan.Shape.Encoding.Name(), ExportReading.DelimiterName(plan.Shape.Delimiter), keyCreated, dropped,
        [.. plan.Treatments.Take(plan.Columns).Select((treatment, f) => new PseudonymizedColumn(f + 1, ShownHeading.Of(plan.Shape.Headings[f]), treatment, replaced[f], blank[f], unreadable[f]))],
        Diagnostics())
    {
        Format = ExportReading.FormatName(plan.Source.Form),
        Sheet = plan.Source.Part.Sheet,
        HeadingLine = plan.AsideField >= 0 || plan.Shape.HeadingLine == 0 ? null : plan.Source.Part.Lines.Of(plan.Shape.HeadingLine),
        TotalsDropped = leftOut.Totals,
        ResourcesDropped = leftOut.Resources,
    };

    private void Heading(RecordSplitter record, bool last)
    {
        var bytes = record.Bytes(record.RecordStart, record.RecordEnd);
        // A line that states the delimiter stays; what else stands above the headings belongs to no column and may name people.
        if (!last && !(rows == 0 && dropped == 0 && bytes.Length == 5 && bytes.StartsWith("sep="u8)))
        {
            dropped++;
            lineEndDue = false;
            return;
        }

        lineEndDue = true;
        if (!last || !RecordFields.Find(bytes, plan.Shape.Delimiter, fields))
        {
            target.Write(bytes);
            return;
        }

        var any = false;
        for (var f = 0; f < fields.Count; f++)
        {
            if (f < plan.Treatments.Length && plan.Treatments[f] == ColumnTreatment.Dropped) continue;
            if (any) target.WriteByte(plan.Shape.Delimiter);
            any = true;
            Keep(bytes[fields[f].Start..fields[f].End], record.Field(f));
        }
    }

    private void Row(RecordSplitter record, long line)
    {
        rows++;
        lineEndDue = true;
        var bytes = record.Bytes(record.RecordStart, record.RecordEnd);
        if (!RecordFields.Find(bytes, plan.Shape.Delimiter, fields) || fields.Count != record.FieldCount)
        {
            throw PseudonymPlan.Refused(plan.Name, line, PrivacyDiagnostics.ColumnsInDoubt,
                $"The row on line {FindingTexts.Figure(line)} of {plan.Name} cannot be split into its columns. Nothing was written. Correct its quotes.");
        }

        var any = false;
        for (var f = 0; f < fields.Count; f++)
        {
            var treatment = f < plan.Treatments.Length ? plan.Treatments[f] : ColumnTreatment.Kept;
            if (treatment == ColumnTreatment.Dropped) continue;
            if (any) target.WriteByte(plan.Shape.Delimiter);
            any = true;
            var raw = bytes[fields[f].Start..fields[f].End];
            var value = record.Field(f);
            if (plan.AsideField >= 0 && treatment == ColumnTreatment.Kept && ResourceText.MayNameSomebody(ObservationFile.Columns[f], value))
            {
                if (withheld++ == 0) firstWithheld = line;
                continue;
            }

            switch (treatment)
            {
                case ColumnTreatment.Kept:
                    if (Keep(raw, value)) replaced[Math.Min(f, replaced.Length - 1)]++;
                    Sample(value, f);
                    break;
                case ColumnTreatment.Generalised:
                    Coarsen(raw, value, f);
                    break;
                default:
                    Replace(raw, value, f, line, treatment == ColumnTreatment.OperatorPseudonymized);
                    break;
            }
        }

        for (var f = fields.Count; f < plan.Treatments.Length; f++)
        {
            if (plan.Treatments[f] is ColumnTreatment.Pseudonymized or ColumnTreatment.OperatorPseudonymized or ColumnTreatment.Generalised) blank[f]++;
            // Text that was made here leaves out blank fields at the end of a row; a file that goes to others has all of them.
            if (!plan.Made || plan.Treatments[f] == ColumnTreatment.Dropped) continue;
            if (any) target.WriteByte(plan.Shape.Delimiter);
            any = true;
        }
    }

    /// <summary>Looks at a value that stays, as a name may stand beside the column that was replaced.</summary>
    private void Sample(ReadOnlySpan<byte> value, int field)
    {
        if (field >= kept.Length || kept[field] is not { } sample) return;
        var text = value.Trim(" \t\r\n"u8);
        if (text.IsEmpty) return;
        var hash = XxHash3.HashToUInt64(text);
        if (hash < sample.Limit) sample.Take(hash, text);
    }

    /// <summary>Writes a field as it stands, with an apostrophe before what a spreadsheet would run.</summary>
    private bool Keep(ReadOnlySpan<byte> raw, ReadOnlySpan<byte> value)
    {
        if (!FormulaGuard.Needed(value))
        {
            target.Write(raw);
            return false;
        }

        var quoted = raw[0] == (byte)'"';
        if (quoted) target.WriteByte((byte)'"');
        target.WriteByte(FormulaGuard.Mark);
        target.Write(quoted ? raw[1..] : raw);
        return true;
    }

    private void Coarsen(ReadOnlySpan<byte> raw, ReadOnlySpan<byte> value, int field)
    {
        var text = value.Trim(" \t\r\n"u8);
        if (text.IsEmpty)
        {
            blank[field]++;
            target.Write(raw);
            return;
        }

        // What is no date must not stay finer than what is one.
        if (DateCoarsening.Of(text, plan.Orders[field], plan.Precisions[field]) is not { } coarse)
        {
            unreadable[field]++;
            return;
        }

        replaced[field]++;
        Put(raw, Encoding.ASCII.GetBytes(coarse));
    }

    private void Replace(ReadOnlySpan<byte> raw, ReadOnlySpan<byte> value, int field, long line, bool isOperator)
    {
        if (value.IsEmpty)
        {
            blank[field]++;
            target.Write(raw);
            return;
        }

        var slot = -1;
        if (value.Length <= LongestRemembered)
        {
            slot = (int)(XxHash3.HashToUInt64(value, isOperator ? 1 : 2) & (Remembered - 1));
            if (memory[slot].Pseudonym is { } known && value.SequenceEqual(memory[slot].Value.AsSpan(1)) && memory[slot].Value![0] == (isOperator ? 1 : 2))
            {
                replaced[field]++;
                Put(raw, known);
                return;
            }
        }

        if (Form(value, line) is not { } form)
        {
            blank[field]++;
            target.Write(raw);
            return;
        }

        var made = Encoding.ASCII.GetBytes(pseudonym.Of(isOperator ? Pseudonym.OperatorRealm : Pseudonym.PersonRealm, form));
        if (slot >= 0) memory[slot] = ([(byte)(isOperator ? 1 : 2), .. value], made);
        replaced[field]++;
        Put(raw, made);
    }

    private string? Form(ReadOnlySpan<byte> value, long line)
    {
        var text = Encoding.UTF8.GetString(value);
        try
        {
            if (!text.Contains('\uFFFD', StringComparison.Ordinal)) return PersonText.Of(text);
        }
        catch (ArgumentException)
        {
            // Some code points are no characters; what follows says so.
        }

        throw PseudonymPlan.Refused(plan.Name, line, PrivacyDiagnostics.ColumnsInDoubt,
            $"The row on line {FindingTexts.Figure(line)} of {plan.Name} has a character that cannot be read where a person is named, so two people could get one pseudonym. "
            + "Nothing was written. Export the file as UTF-8.");
    }

    private void Put(ReadOnlySpan<byte> raw, ReadOnlySpan<byte> text)
    {
        var quoted = raw[0] == (byte)'"';
        if (quoted) target.WriteByte((byte)'"');
        target.Write(text);
        if (quoted) target.WriteByte((byte)'"');
    }

    private ImmutableArray<Diagnostic> Diagnostics()
    {
        var found = ImmutableArray.CreateBuilder<Diagnostic>();
        found.AddRange(plan.Source.Notes);
        if (dropped > 0)
        {
            var line = plan.Source.Part.Lines.Of(plan.Shape.HeadingLine);
            found.Add(new Diagnostic(ReadingDiagnostics.LinesBeforeHeadings, Severity.Note, plan.Name, line, "",
                $"The headings of {plan.Name} stand on line {FindingTexts.Figure(line)}; {(dropped == 1 ? "1 line" : FindingTexts.Figure(dropped) + " lines")} before {(dropped == 1 ? "it that is not blank was left out, as it belongs" : "it that are not blank were left out, as they belong")} to no column.", dropped));
        }

        found.AddRange(leftOut.Diagnostics());
        if (withheld > 0)
        {
            found.Add(new Diagnostic(PrivacyDiagnostics.TextLeftOut, Severity.Warning, plan.Name, firstWithheld, "",
                $"{FindingTexts.Figure(withheld)} {(withheld == 1 ? "text" : "texts")} of {plan.Name} (the first on line {FindingTexts.Figure(firstWithheld)}) that {(withheld == 1 ? "says" : "say")} a result or a method in words {(withheld == 1 ? "is" : "are")} long or may name somebody, and {(withheld == 1 ? "was" : "were")} left out. Ask the laboratory for coded results.", withheld));
        }

        var guarded = Enumerable.Range(0, replaced.Length).Where(f => plan.Treatments[f] == ColumnTreatment.Kept).Sum(f => replaced[f]);
        if (guarded > 0)
        {
            found.Add(new Diagnostic(PrivacyDiagnostics.FormulaGuarded, Severity.Note, plan.Name, null, "",
                $"{FindingTexts.Figure(guarded)} cells of {plan.Name} begin as a spreadsheet's formula does; an apostrophe was put before them. Numbers, dates and signs alone stay as they are.", guarded));
        }

        for (var f = 0; f < unreadable.Length; f++)
        {
            if (unreadable[f] == 0) continue;
            found.Add(new Diagnostic(PrivacyDiagnostics.DateNotGeneralised, Severity.Warning, plan.Name, null, "",
                $"{FindingTexts.Figure(unreadable[f])} rows of {plan.Name} have in column {f + 1} what is no date that can be read; it was left out. State --date-order, or correct the source.", unreadable[f]));
        }

        for (var f = 0; f < kept.Length; f++)
        {
            if (kept[f] is { } sample && IdentityTexts.Kept(plan.Name, f, plan.Shape.Headings[f], sample) is { } warning) found.Add(warning);
        }

        return found.ToImmutable();
    }
}
