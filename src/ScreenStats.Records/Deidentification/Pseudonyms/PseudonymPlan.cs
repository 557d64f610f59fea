using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Formats;
using ScreenStats.Records.Formats.Converting;
using ScreenStats.Records.Understanding;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>How a file is split, and what is done to each of its columns.</summary>
internal sealed class PseudonymPlan
{
    private PseudonymPlan(PseudonymSource source, FileShape shape, ColumnTreatment[] treatments, DatePrecision[] precisions, DateOrder? order, IncompleteRows incomplete)
    {
        Source = source;
        Shape = shape;
        Treatments = treatments;
        Precisions = precisions;
        DateOrder = order;
        Orders = [.. Enumerable.Repeat(order, treatments.Length)];
        Incomplete = incomplete;
    }

    public PseudonymSource Source { get; }

    public string Name => Source.Name;

    /// <summary>Columns that are shown: all but the one that says why a resource is not to be read.</summary>
    public int Columns => Source.Form.Format == FileFormat.Observations ? ObservationFile.AsideField : Treatments.Length;

    /// <summary>The field that says why a row is not to be read, or -1.</summary>
    public int AsideField => Source.Form.Format == FileFormat.Observations ? ObservationFile.AsideField : -1;

    /// <summary>True for text that was made from a file of another format: its rows may lack blank fields at their end.</summary>
    public bool Made => Source.Form.Format != FileFormat.DelimitedText;

    /// <summary>Tells lines of totals.</summary>
    public IncompleteRows Incomplete { get; }

    public FileShape Shape { get; }

    public ColumnTreatment[] Treatments { get; }

    public DatePrecision[] Precisions { get; }

    /// <summary>The stated order of day and month.</summary>
    public DateOrder? DateOrder { get; }

    /// <summary>The order in each column, once settled.</summary>
    public DateOrder?[] Orders { get; }

    public bool HasDates => Treatments.Contains(ColumnTreatment.Generalised);

    public static PseudonymPlan Of(PseudonymizeRequest request, PseudonymSource source, TextEncoding? encoding)
    {
        var name = source.Name;
        var errors = new List<Diagnostic>();
        var made = source.Form.Format != FileFormat.DelimitedText;
        var shape = FileSniffer.Of(source.Part, name, made ? TextEncoding.Utf8 : encoding, made, source.Search, errors);
        if (shape is null || errors.Count > 0) throw new UnusableDataException([.. errors]);

        if (shape.Headings.Count > HeadingMatcher.MostHeadings)
        {
            throw Refused(name, shape.HeadingLine, ReadingDiagnostics.TooManyColumns, $"{name} has {FindingTexts.Figure(shape.Headings.Count)} columns; at most {FindingTexts.Figure(HeadingMatcher.MostHeadings)} are read. Export only the columns that are needed.");
        }

        var treatments = new ColumnTreatment[shape.Headings.Count];
        var precisions = new DatePrecision[shape.Headings.Count];
        var folded = shape.Headings.Select(TextFold.Fold).ToArray();
        void Treat(string column, ColumnTreatment treatment, DatePrecision precision = default)
        {
            var at = Find(column, folded, shape.Headings, name);
            if (treatments[at] != ColumnTreatment.Kept) throw new PseudonymizeException($"The column \"{column}\" is named twice; one thing can be done to a column.");
            treatments[at] = treatment;
            precisions[at] = precision;
        }

        foreach (var column in request.Columns) Treat(column, ColumnTreatment.Pseudonymized);
        foreach (var column in request.OperatorColumns) Treat(column, ColumnTreatment.OperatorPseudonymized);
        foreach (var column in request.Drop) Treat(column, ColumnTreatment.Dropped);
        foreach (var (column, precision) in request.Generalise) Treat(column, ColumnTreatment.Generalised, precision);
        if (!treatments.Any(treatment => treatment is ColumnTreatment.Pseudonymized or ColumnTreatment.OperatorPseudonymized))
        {
            throw new PseudonymizeException("No column was named that is to hold pseudonyms.");
        }

        HeadingMatcher.Repeated(name, folded, (int)source.Part.Lines.Of(shape.HeadingLine), errors);
        if (errors.Count > 0) throw new UnusableDataException([.. errors]);
        if (source.Form.Format == FileFormat.Observations) treatments[ObservationFile.AsideField] = ColumnTreatment.Dropped;
        return new PseudonymPlan(source, shape, treatments, precisions, request.DateOrder, new IncompleteRows(shape.Headings, request.Columns, treatments));
    }

    /// <summary>Reads the dates of the columns that are generalised, to settle the order of day and month.</summary>
    public void SettleDates(CancellationToken cancellationToken)
    {
        var evidence = Treatments.Select(treatment => new DateEvidence(treatment == ColumnTreatment.Generalised)).ToArray();
        var reading = new PlainRows(this, cancellationToken);
        reading.Run((splitter, line) =>
        {
            for (var f = 0; f < evidence.Length; f++)
            {
                if (evidence[f].IsDate) evidence[f].Look(splitter.Field(f).Trim(" \t\r\n"u8), line);
            }
        });
        for (var f = 0; f < evidence.Length; f++)
        {
            if (!evidence[f].IsDate) continue;
            var seen = evidence[f];
            Orders[f] = seen.Order();
            if (Orders[f] is not null || seen.DayFirst + seen.MonthFirst + seen.Either == 0) continue;
            var lines = new[] { seen.FirstEither.First, seen.FirstEither.Second, seen.FirstDayFirst, seen.FirstMonthFirst }.Where(line => line < long.MaxValue).Order().Take(2)
                .Select(FindingTexts.Figure).ToArray();
            throw new PseudonymizeException($"The dates of column {f + 1} of {Name} could be day-first or month-first: see line {string.Join(" and line ", lines)}. State --date-order day-first or month-first.");
        }
    }

    public static UnusableDataException Refused(string file, long? line, string code, string message) =>
        new(new Diagnostic(code, Severity.Error, file, line, "", message));

    private static int Find(string column, string[] folded, IReadOnlyList<string> headings, string name)
    {
        var wanted = TextFold.Fold(column);
        var at = wanted.Length == 0 ? -1 : Array.IndexOf(folded, wanted);
        if (at < 0)
        {
            // What is not near may be a cell of a file whose headings were not found.
            var nearest = headings.Where(heading => ShownHeading.Of(heading).Length > 0 && HeadingText.Near(column, heading)).ToArray();
            throw new PseudonymizeException($"{name} has no heading \"{column}\"" + (nearest.Length == 0
                ? $", and none near it, in its first {HeadingSearch.Farthest} lines. Open the file, and write the heading as it stands there."
                : $"; the nearest is \"{NearestName.Of(column, nearest)}\"."));
        }

        return Array.IndexOf(folded, wanted, at + 1) < 0
            ? at
            : throw new PseudonymizeException($"{name} has the heading \"{column}\" more than once; rename one of them.");
    }
}
