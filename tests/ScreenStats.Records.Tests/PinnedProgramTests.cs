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
    public void A_pinned_program_reads_the_same_and_leaves_nothing_to_recognise(string name)
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

            if (headings.Count > 0) export.Columns.Where(column => column.DateOrder is not null).Select(column => column.DateOrderWhy).Should().AllBe("the program file");
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
        settings.Exports.Screening.Files.Should().Equal("screening.csv");
        settings.Exports.Screening.DateOrder.Should().Be(DateOrder.DayFirst);
        settings.Exports.Screening.Columns.Should().Contain("person", "Badge").And.Contain("collected_at", "Date");
        settings.Exports.Screening.Words.Should().BeEquivalentTo(new Dictionary<string, string> { ["X"] = "invalid", ["NEG"] = "negative", ["négatif"] = "negative" });
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
