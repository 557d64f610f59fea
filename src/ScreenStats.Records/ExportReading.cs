using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Cache;
using ScreenStats.Records.Deidentification;
using ScreenStats.Records.Formats;
using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.Understanding;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records;

/// <summary>One export, read: its readers' findings and memories put together.</summary>
internal sealed class ExportReading : IDisposable
{
    private const int FewestHeadings = 2;

    private readonly IReadOnlyList<FilePlan> plans;
    private readonly RecordIndex[] indexes;
    private readonly long[] firstRecords;
    private readonly long[] rows;
    private readonly RowsLearnt learnt;
    private readonly uint mostRows;

    public ExportReading(ExportKind export, IReadOnlyList<FilePlan> plans, IReadOnlyList<RowReader> readers, Action<long> progress, List<Diagnostic> errors, FileMemory? memory = null, uint mostRows = uint.MaxValue)
    {
        Export = export;
        this.plans = plans;
        indexes = [.. plans.Select(plan => new RecordIndex(plan.Path, plan.Encoding))];
        firstRecords = new long[plans.Count];
        rows = new long[plans.Count];
        this.mostRows = mostRows;
        learnt = new RowsLearnt(export);
        try
        {
            Read(readers, progress, errors, memory);
        }
        catch
        {
            Dispose();
            throw;
        }

        foreach (var reader in readers) learnt.Add(reader);
    }

    public ExportKind Export { get; }

    public long Rows => rows.Sum();

    public long SetAsideRows => learnt.SetAside.Count;

    /// <summary>What was learnt of all rows.</summary>
    public RowsLearnt Learnt => learnt;

    /// <summary>True where a file broke off: what was read of it is not to be used.</summary>
    public bool Broken { get; private set; }

    public IReadOnlyList<CanonicalColumn> Columns => CanonicalColumns.Of(Export);

    /// <summary>Reads rows again with a reader of its own.</summary>
    public ExportSource Source(RowReader reader) => new(plans, indexes, firstRecords, reader);

    /// <summary>First place of a kind of finding, over all columns.</summary>
    public (string File, long Line)? First(Finding finding)
    {
        var place = Enumerable.Range(0, Columns.Count).Where(c => learnt.Findings.Count(finding, c) > 0).Select(c => learnt.Findings.First(finding, c)).DefaultIfEmpty(-1).Min();
        return place < 0 ? null : At(place);
    }

    public (string File, long Line) At(long place)
    {
        var file = Place.File(place);
        return (plans[file].Name, plans[file].Lines.Of(indexes[file].FirstLine(Place.Block(place)) + Place.Line(place)));
    }

    /// <summary>What was found in rows, in row order of the first occurrence.</summary>
    /// <param name="stated">The order of day and month that the program file states.</param>
    public IEnumerable<Diagnostic> Diagnostics(DateOrder? stated)
    {
        var found = new List<(long Place, Diagnostic Diagnostic)>();
        foreach (var finding in Enum.GetValues<Finding>())
        {
            if (finding is Finding.WithOffset or Finding.WithoutOffset) continue;
            for (var c = 0; c < Columns.Count; c++)
            {
                var count = learnt.Findings.Count(finding, c);
                if (count == 0) continue;
                var place = learnt.Findings.First(finding, c);
                var (file, line) = At(place);
                var column = finding is Finding.MalformedRow or Finding.TooManyFields or Finding.BlankRow or Finding.TotalsLine or (>= Finding.MalformedLine and <= Finding.ContradictoryObservation) ? "" : Columns[c].Name;
                var places = learnt.Findings.Places(finding, c);
                found.Add((place, FindingTexts.Diagnostic(finding, Export, column, file, line, count, stated) with
                {
                    Places = places.Length == 1 ? [] : [.. places.ToArray().Select(At).Select(at => new DiagnosticPlace(at.File, at.Line))],
                }));
            }
        }

        return found.OrderBy(item => item.Place).ThenBy(item => item.Diagnostic.Code, StringComparer.Ordinal)
            .ThenBy(item => item.Diagnostic.Column, StringComparer.Ordinal).Select(item => item.Diagnostic);
    }

    /// <summary>What the values of columns, taken together, say of people: columns that name them, and columns that are not read but should not be there.</summary>
    public IEnumerable<Diagnostic> PrivacyDiagnostics()
    {
        for (var c = 0; c < Columns.Count; c++)
        {
            var sample = learnt.Samples[c] ?? new ValueSample();
            if (ColumnJudgement.OfMany(sample) is { Identifier: not SafeHarbor.None } judged) yield return IdentityTexts.Refused(Export, Columns[c].Name, plans[0].Name, judged);
        }

        foreach (var plan in plans)
        {
            for (var field = 0; field < Math.Min(plan.Headings.Count, RowReader.MostUnread); field++)
            {
                if (field == plan.AsideField || plan.Matches.Any(match => match.Field == field)) continue;
                var sample = learnt.UnreadSamples.GetValueOrDefault((plan.Number, field)) ?? new ValueSample();
                if (IdentityTexts.Unread(plan.Name, field, plan.Headings[field], sample) is { } found) yield return found;
            }
        }
    }

    /// <summary>The rows set aside, in row order, with the place of each.</summary>
    /// <param name="withText">True: with their text.</param>
    public IEnumerable<(long Place, SetAsideRow Row)> SetAside(bool withText)
    {
        byte[] buffer = [];
        foreach (var entry in learnt.SetAside.OrderBy(entry => entry.Place))
        {
            var (file, line) = At(entry.Place);
            yield return (entry.Place, new SetAsideRow(
                file, line, FindingTexts.Code(entry.Finding), FindingTexts.Reason(entry.Finding, Columns[entry.Column].Name), null, withText ? TextOf(entry, ref buffer) : null));
        }
    }

    public IEnumerable<CompletenessCell> Completeness() => Columns.Select((column, c) =>
        new CompletenessCell(Export, column.Name, Mapped(c), Rows, learnt.Recorded[c]));

    public ExportUnderstanding Understanding(string folder, IReadOnlyDictionary<string, CountedLevels> counted, IReadOnlySet<string> unshown, DateOrder? stated, Func<int, string> orderWhy)
    {
        var words = learnt.Words.Select(word => (word.Key.Column, word.Key.Text, word.Key.Code, Times: word.Value)).ToLookup(word => word.Column);
        var columns = Columns.Select((column, c) =>
        {
            var met = words[c].ToList();
            var canonical = learnt.TableOf(c)?.Canonical ?? [];
            var days = learnt.DaysOf(c);
            var isDate = days is not null;
            return new ColumnUnderstanding(
                column.Name, Mapped(c), Rows, learnt.Recorded[c],
                [.. met.Where(word => word.Code != Words.Unknown).OrderByDescending(word => word.Times).ThenBy(word => word.Text, StringComparer.Ordinal)
                    .Select(word => new WordUnderstanding(word.Text, word.Code < 0 ? "" : canonical[word.Code], word.Times))],
                met.Where(word => word.Code == Words.Unknown).Sum(word => word.Times),
                isDate ? (plans.FirstOrDefault(plan => plan.Form.Format != FileFormat.Observations) ?? plans[0]).DateOrders[c] ?? DateOrder.Iso : null,
                isDate ? stated is not null ? "the program file" : orderWhy(c) : "",
                days?.First,
                days?.Last)
            {
                UnknownWordsShown = ShownWords.Unknown(
                    [.. met.Where(word => word.Code == Words.Unknown).Select(word => (word.Text, word.Times))], met.Sum(word => word.Code >= 0 ? word.Times : 0),
                    plans.Where(plan => plan.Matches[c].Field >= 0).Select(plan => plan.Headings[plan.Matches[c].Field])),
                Meanings = [.. canonical],
                WithOffset = isDate ? learnt.Findings.Count(Finding.WithOffset, c) : 0,
                WithoutOffset = isDate ? learnt.Findings.Count(Finding.WithoutOffset, c) : 0,
                Levels = ShownWords.Levels(LevelsOf(c), unshown),
                DifferentLevels = learnt.LevelsOf(c) is not null && counted.TryGetValue(column.Name, out var known) ? known.Counted.LongCount(one => one) : 0,
            };
        });
        return new ExportUnderstanding(Export, [.. plans.Select(plan => File(Export, plan, rows[plan.Number], folder))], [.. columns]);

        // There can be very many kits: they are added up by code, without a text of their own.
        IEnumerable<(string Text, long Times)> LevelsOf(int column)
        {
            if (learnt.LevelsOf(column) is not { } met || !counted.TryGetValue(Columns[column].Name, out var known)) return [];
            var times = new long[known.Counted.Length];
            met.AsSpan(0, Math.Min(met.Length, times.Length)).CopyTo(times);
            AddNamesOfRowsSetAside(column, known, times);
            return Enumerable.Range(0, times.Length).Where(code => known.Counted[code] && times[code] > 0).Select(code => (known.Names[code], times[code]));
        }
    }

    /// <summary>How far an export was understood of which no row was read.</summary>
    public static ExportUnderstanding NotRead(ExportKind export, IReadOnlyList<FilePlan> plans, string folder) => new(
        export, [.. plans.Select(plan => File(export, plan, 0, folder))],
        [.. CanonicalColumns.Of(export).Select((column, c) => new ColumnUnderstanding(column.Name, plans.Any(plan => plan.Matches[c].Field >= 0), 0, 0, [], 0, null, "", null, null))]);

    public void Dispose()
    {
        foreach (var index in indexes) index.Dispose();
    }

    private void Read(IReadOnlyList<RowReader> readers, Action<long> progress, List<Diagnostic> errors, FileMemory? memory)
    {
        long record = 0;
        memory?.Look();
        for (var f = 0; f < plans.Count; f++)
        {
            firstRecords[f] = record;
            if (memory?.Recall(f, indexes[f], record, learnt) is { } known)
            {
                record += rows[f] = known;
                if (record > mostRows) throw FileSniffer.TooManyRows(plans[f].Name, mostRows);
                continue;
            }

            var own = memory?.Begin(f, record) ?? readers;
            var reading = new FileReading(plans[f], indexes[f], record, progress, memory?.Seen) { MostRows = mostRows };
            reading.Run(own);
            memory?.Keep(f, indexes[f], record, reading.Records, reading.Broken is not null, learnt);
            record += rows[f] = reading.Records;
            if (reading.Broken is not { } broken) continue;
            Broken = true;
            var line = plans[f].Lines.Of(broken.Line);
            errors.Add(broken.Kind == BrokenFile.UnclosedQuote
                ? new Diagnostic(ReadingDiagnostics.UnclosedQuote, Severity.Error, plans[f].Name, line, "", FileSniffer.UnclosedQuote(plans[f].Name, line))
                : new Diagnostic(ReadingDiagnostics.RecordTooLong, Severity.Error, plans[f].Name, line, "", FileSniffer.TooLong(plans[f].Name, line)));
        }

        memory?.Complete();
    }

    /// <summary>The text of a row that was set aside: of one that was not read this time, it is looked up.</summary>
    private string TextOf(SetAsideEntry entry, ref byte[] buffer)
    {
        if (entry.Text is { } text) return text;
        var file = Place.File(entry.Place);
        using var splitter = new RecordSplitter(plans[file].Delimiter);
        indexes[file].Find(indexes[file].FirstRecord(Place.Block(entry.Place)) + entry.Record, splitter, ref buffer);
        return System.Text.Encoding.UTF8.GetString(splitter.Bytes(splitter.RecordStart, splitter.RecordEnd));
    }

    private void AddNamesOfRowsSetAside(int column, CountedLevels known, long[] times)
    {
        if (!learnt.NamesOfRowsSetAside.Keys.Any(name => name.Column == column)) return;
        for (var code = 0; code < times.Length; code++)
        {
            if (!known.Counted[code]) continue;
            times[code] += learnt.NamesOfRowsSetAside.GetValueOrDefault((column, TextCodes.Hash(System.Text.Encoding.UTF8.GetBytes(known.Names[code]))));
        }
    }

    private bool Mapped(int column) => plans.Any(plan => plan.Matches[column].Field >= 0);

    private static FileUnderstanding File(ExportKind export, FilePlan plan, long rows, string folder)
    {
        var canonical = CanonicalColumns.Of(export);
        // A row of data may stand where headings are looked for: what is no heading for sure is not shown.
        var headed = plan.Matches.Count(match => match.Field >= 0) >= FewestHeadings;
        var headings = plan.Headings.Select((heading, field) => (heading, field)).Where(one => one.field != plan.AsideField).Select(one =>
        {
            var (heading, field) = one;
            var column = Array.FindIndex(plan.Matches, match => match.Field == field);
            return column < 0
                ? new HeadingUnderstanding(headed ? Shown(heading, field) : Position(field), null, HeadingEvidence.NotRead)
                : new HeadingUnderstanding(Shown(heading, field), canonical[column].Name, plan.Matches[column].Reason switch
                {
                    HeadingReason.Mapped => HeadingEvidence.ProgramFile,
                    HeadingReason.Exact => HeadingEvidence.Name,
                    HeadingReason.WithUnit => HeadingEvidence.WithoutBrackets,
                    HeadingReason.Element => HeadingEvidence.Element,
                    _ => HeadingEvidence.Synonym,
                });
        });
        var text = plan.Form.Format == FileFormat.DelimitedText;
        return new FileUnderstanding(
            plan.Name, FormatName(plan.Form), plan.Form.Format is FileFormat.Workbook or FileFormat.Parquet ? null : plan.Encoding.Name(),
            text ? DelimiterName(plan.Delimiter) : null, plan.Sheet, plan.HeadingLine == 0 ? null : plan.HeadingLine, plan.Preamble, rows, [.. headings])
        {
            Path = Path.GetRelativePath(folder, plan.SourcePath).Replace('\\', '/'),
        };
    }

    // A heading that is itself an address or a number of a person is not shown.
    private static string Shown(string heading, int field) => heading.Length == 0 || ShownHeading.Of(heading).Length > 0
        ? heading
        : Position(field);

    private static string Position(int field) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"(column {field + 1})");

    public static string FormatName(FileForm form) => form.Format switch
    {
        FileFormat.DelimitedText => "delimited text",
        FileFormat.Workbook => "workbook",
        FileFormat.Parquet => "Parquet",
        _ => "FHIR R4 Observation resources",
    } + (form.Compressed ? " in gzip" : "");

    public static string DelimiterName(byte delimiter) => delimiter switch
    {
        (byte)',' => "comma",
        (byte)';' => "semicolon",
        (byte)'\t' => "tab",
        _ => "vertical bar",
    };
}
