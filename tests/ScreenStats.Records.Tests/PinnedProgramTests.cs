using System.Text.Json;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Testing;

namespace ScreenStats.Records.Tests;

public class PinnedProgramTests
{
    private static readonly JsonSerializerOptions Whole = new() { IncludeFields = true };

    /// <summary>Every case of the corpus that is read.</summary>
    public static TheoryData<string> Cases =>
    [
        .. Directory.EnumerateFiles(RepositoryRoot.Combine("tests", "ScreenStats.Records.Tests", "Corpus"), "expected.json", SearchOption.AllDirectories)
            .Where(file => !File.ReadAllText(file).Contains("\"refused\"", StringComparison.Ordinal)).Select(file => Path.GetFileName(Path.GetDirectoryName(file)!)).Order(StringComparer.Ordinal),
    ];

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_pinned_program_reads_the_same_and_leaves_nothing_that_was_decided_to_the_data(string name)
    {
        var folder = RepositoryRoot.Combine("tests", "ScreenStats.Records.Tests", "Corpus", name);
        var file = Path.Combine(folder, "program.json");
        var present = File.Exists(file) ? File.ReadAllText(file) : null;
        var before = new ProgramReader().Read(present is null ? new() : ProgramFile.Parse(present), folder);
        var pinned = PinnedProgram.Text(PinnedProgram.Of(before.Understanding, present));
        var after = new ProgramReader().Read(ProgramFile.Parse(pinned), folder);

        // Files that were passed over are no concern of a program that names its files: what is said of the folder may differ, what is counted not.
        JsonSerializer.Serialize(after.Tally.Cells with { Diagnostics = [] }, Whole).Should().Be(JsonSerializer.Serialize(before.Tally.Cells with { Diagnostics = [] }, Whole));
        after.SetAside.Should().Equal(before.SetAside);
        PinnedProgram.Text(PinnedProgram.Of(after.Understanding, pinned)).Should().Be(pinned);
        foreach (var export in after.Understanding)
        {
            var headings = export.Files.Where(one => one.HeadingLine is not null).SelectMany(one => one.Headings).Where(heading => heading.Column is not null).ToList();
            // Files of one export whose headings differ cannot be pinned by one heading.
            foreach (var column in headings.GroupBy(heading => heading.Column).Where(column => column.Select(heading => heading.Heading).Distinct().Count() == 1))
            {
                column.Should().OnlyContain(heading => heading.Why == HeadingEvidence.ProgramFile);
            }

            // ISO 8601 needs no order, and one that needs another in one column than in the next cannot be pinned.
            var ordered = export.Columns.Where(column => column.DateOrder is DateOrder.DayFirst or DateOrder.MonthFirst).ToList();
            if (ordered.Select(column => column.DateOrder).Distinct().Count() == 1) ordered.Select(column => column.DateOrderWhy).Should().AllBe("the program file");
        }
    }

    [Fact]
    public void What_the_present_file_says_of_other_things_is_kept()
    {
        using var folder = new TestFolder();
        folder.With("screening.csv", "Badge;Site;Date;Result\n1;A;13.01.2026;négatif\n2;A;14.01.2026;NEG\n");
        const string Present = "{ // ours\n \"title\": \"T\", \"policy\": { \"isolationDays\": 5 }, \"exports\": { \"screening\": { \"words\": { \"X\": \"invalid\" }, \"twoDigitYears\": true } } }";
        var pinned = PinnedProgram.Of(new ProgramReader().Read(ProgramFile.Parse(Present), folder.Path).Understanding, Present);
        var settings = ProgramFile.Parse(PinnedProgram.Text(pinned));
        settings.Title.Should().Be("T");
        settings.Policy.IsolationDays.Should().Be(5);
        settings.Exports.Screening.TwoDigitYears.Should().BeTrue();
        settings.Exports.Screening.Files.IsDefaultOrEmpty.Should().BeTrue("next month's file has another name");
        settings.Exports.Screening.DateOrder.Should().Be(DateOrder.DayFirst);
        settings.Exports.Screening.Columns.Should().Contain("person", "Badge").And.Contain("collected_at", "Date");
        settings.Exports.Screening.Words.Should().BeEquivalentTo(new Dictionary<string, string> { ["X"] = "invalid", ["NEG"] = "negative", ["négatif"] = "negative" });
    }

    [Theory]
    [InlineData("1,A,2026-01-13,neg\n2,A,2026-01-14,neg\n", "3,A,2026-02-13,neg\n4,A,28.02.2026,neg\n", 2)]
    [InlineData("1,A,13.01.2026,neg\n2,A,14.01.2026,neg\n", "3,A,02.02.2026,neg\n4,A,03.02.2026,neg\n", 2)]
    [InlineData("1,A,13.01.2026,neg\n2,A,14.01.2026,neg\n", "3,A,2026-02-13,neg\n4,A,03.02.2026,neg\n", 2)]
    public void What_is_pinned_this_month_reads_next_month(string now, string then, long counted)
    {
        using var first = new TestFolder().With("screening-2026-01.csv", "person,site,collected_at,result\n" + now);
        var pinned = ProgramFile.Parse(PinnedProgram.Text(PinnedProgram.Of(first.Read().Understanding)));
        using var second = new TestFolder().With("screening-2026-02.csv", "person,site,collected_at,result\n" + then);
        TestFolder.Rows(second.Read(pinned), ScreenStats.Counting.Ledger.LedgerEntry.Counted).Should().Be(counted);
    }

    [Fact]
    public void Names_of_files_and_sheets_that_are_stated_stay_and_so_does_a_stated_order()
    {
        using var folder = new TestFolder().With("log-1.csv", "person,site,collected_at,result\n1,A,2026-01-13,neg\n");
        const string Present = "{ \"exports\": { \"screening\": { \"files\": [\"log-*.csv\"], \"sheets\": [\"Log\"], \"dateOrder\": \"iso\" } } }";
        var pinned = ProgramFile.Parse(PinnedProgram.Text(PinnedProgram.Of(new ProgramReader().Read(ProgramFile.Parse(Present), folder.Path).Understanding, Present))).Exports.Screening;
        pinned.Files.Should().Equal("log-*.csv");
        pinned.Sheets.Should().Equal("Log");
        pinned.DateOrder.Should().Be(DateOrder.Iso);
    }

    [Theory]
    [InlineData(DateOrder.Iso, "\"iso\"")]
    [InlineData(DateOrder.MonthFirst, "\"month-first\"")]
    public void An_order_that_no_longer_holds_is_named_with_what_to_do(DateOrder stated, string named)
    {
        using var folder = new TestFolder().With("screening.csv", "person,site,collected_at,result,read_at\n1,A,2026-01-13,neg,14.01.2026\n2,A,28.02.2026,neg,\n");
        var found = folder.Read(TestFolder.Screening(new ExportSettings { DateOrder = stated })).Diagnostics;
        found.Select(one => one.Code).Should().BeEquivalentTo([ReadingDiagnostics.UnreadableDate, ReadingDiagnostics.UnreadableValue]);
        found.Should().OnlyContain(one => one.Message.Contains($"states dateOrder {named} (exports.screening)", StringComparison.Ordinal) && one.Message.Contains("remove it there", StringComparison.Ordinal));
    }

    [Fact]
    public void Refused_exports_show_how_far_they_were_understood()
    {
        using var folder = new TestFolder();
        folder.With("screening.csv", "Badge;Site;Date;Result\n1;A;03.01.2026;négatif\n2;A;04.01.2026;NEG\n");
        folder.With("confirmatory.csv", "person,collected_at,result\np1,2026-01-05,positive\n");
        var refusal = FluentActions.Invoking(() => new ProgramReader().Read(new(), folder.Path)).Should().Throw<RefusedReadingException>().Which;
        refusal.Diagnostics.Should().Contain(one => one.Code == ReadingDiagnostics.AmbiguousDates);
        var screening = refusal.Understanding[0].Files.Single();
        screening.Delimiter.Should().Be("semicolon");
        screening.Headings.Select(heading => heading.Column).Should().Equal("person", "site", "collected_at", "result");
        refusal.Understanding[1].Columns.Single(column => column.Column == "result").Words.Should().Equal(new WordUnderstanding("positive", "positive", 1));

        folder.With("confirmatory.csv", "collected_at,result\n2026-01-05,positive\n");
        refusal = FluentActions.Invoking(() => new ProgramReader().Read(new(), folder.Path)).Should().Throw<RefusedReadingException>().Which;
        refusal.Diagnostics.Should().Contain(one => one.Code == ReadingDiagnostics.MissingColumn);
        refusal.Understanding[1].Files.Single().Headings.Select(heading => heading.Column).Should().Equal("collected_at", "result");
    }

    [Fact]
    public void Only_words_that_are_nobodys_are_shown_where_they_are_not_known()
    {
        string Rows(string word, int times, int from) => string.Concat(Enumerable.Range(from, times).Select(i => $"p{i},A,2026-01-05T{i / 60:00}:{i % 60:00},{word}\n"));
        using var folder = new TestFolder();
        const string Head = "person,site,collected_at,result\n";
        folder.With("screening.csv", Head + Rows("negative", 40, 0) + Rows("broken", 5, 100) + Rows("spilt", 4, 200) + Rows("Anna Schmidt", 6, 300) + Rows("a.b@example.org", 6, 400) + Rows("p123", 6, 500));
        var result = new ProgramReader().Read(new(), folder.Path).Understanding[0].Columns.Single(column => column.Column == "result");
        result.UnknownWords.Should().Be(27);
        result.UnknownWordsShown.Should().Equal(new WordUnderstanding("broken", "", 5));

        // A column of mostly unknown words is another column.
        folder.With("screening.csv", Head + Rows("negative", 4, 0) + Rows("Miller", 5, 100));
        new ProgramReader().Read(new(), folder.Path).Understanding[0].Columns.Single(column => column.Column == "result").UnknownWordsShown.Should().BeEmpty();
    }

    [Fact]
    public void Sites_lots_and_kits_are_shown_of_counted_rows_only()
    {
        using var folder = new TestFolder();
        // The second row lacks its person, so that everything stands one column to the left.
        folder.With("screening.csv", "person,site,collected_at,result,lot,kit\np1,North,2026-01-05T08:00,negative,A1,k1\npseudonym7,2026-01-05T08:00,negative,A1,k1\np2,North,2026-01-05T08:01,negative,,\n");
        var columns = new ProgramReader().Read(new(), folder.Path).Understanding[0].Columns.ToDictionary(column => column.Column);
        columns["site"].Levels.Should().Equal(new LevelUnderstanding("North", 2));
        columns["lot"].Levels.Should().Equal(new LevelUnderstanding("A1", 1));
        columns["kit"].Levels.Should().Equal(new LevelUnderstanding("k1", 1));
        columns["site"].DifferentLevels.Should().Be(1);
    }
}
