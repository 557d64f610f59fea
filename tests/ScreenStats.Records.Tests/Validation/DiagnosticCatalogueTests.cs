using System.Reflection;
using System.Text.RegularExpressions;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Validation;
using ScreenStats.Testing;

namespace ScreenStats.Records.Tests.Validation;

public partial class DiagnosticCatalogueTests
{
    [Fact]
    public void Codes_are_unique_and_words_in_lower_case()
    {
        DiagnosticCatalogue.All.Select(one => one.Code).Should().OnlyHaveUniqueItems();
        DiagnosticCatalogue.All.Should().OnlyContain(one => Code().IsMatch(one.Code) && one.Meaning.EndsWith('.') && one.Advice.EndsWith('.'));
    }

    [Fact]
    public void Every_code_of_reading_is_described_and_used_in_the_source()
    {
        var codes = typeof(ReadingDiagnostics).GetFields(BindingFlags.Public | BindingFlags.Static).Where(field => field.IsLiteral).ToList();
        ReadingDiagnostics.All.Select(one => one.Code).Should().BeEquivalentTo(codes.Select(field => (string)field.GetRawConstantValue()!));
        var source = string.Concat(Directory.EnumerateFiles(RepositoryRoot.Combine("src", "ScreenStats.Records"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)).Select(File.ReadAllText));
        codes.Should().OnlyContain(field => source.Contains($"{nameof(ReadingDiagnostics)}.{field.Name}", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_code_of_conduct_is_described_once_and_used_in_the_source()
    {
        var codes = typeof(ConductDiagnostics).GetFields(BindingFlags.Public | BindingFlags.Static).Where(field => field.IsLiteral).ToList();
        ConductDiagnostics.All.Select(one => one.Code).Should().Equal(codes.Select(field => (string)field.GetRawConstantValue()!));
        var source = string.Concat(Directory.EnumerateFiles(RepositoryRoot.Combine("src", "ScreenStats.Records", "PersonLog"), "*.cs", SearchOption.AllDirectories).Select(File.ReadAllText));
        codes.Should().OnlyContain(field => source.Contains($"{nameof(ConductDiagnostics)}.{field.Name}", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_code_of_conduct_has_a_case_in_the_corpus()
    {
        var expected = string.Concat(Directory.EnumerateFiles(RepositoryRoot.Combine("tests", "ScreenStats.Records.Tests", "Corpus"), "expected.json", SearchOption.AllDirectories).Select(File.ReadAllText));
        ConductDiagnostics.All.Should().OnlyContain(one => expected.Contains($" {one.Code} ", StringComparison.Ordinal));
    }

    // The list is made from the catalogue: UPDATE_GOLDEN=1 writes it.
    [Fact]
    public void The_guide_for_contributors_lists_every_code()
    {
        const string Begin = "<!-- codes: made from the catalogue by DiagnosticCatalogueTests with UPDATE_GOLDEN=1 -->\n";
        const string End = "<!-- end of codes -->\n";
        var path = RepositoryRoot.Combine("DEVELOPERS.md");
        var guide = File.ReadAllText(path);
        var (begin, end) = (guide.IndexOf(Begin, StringComparison.Ordinal), guide.IndexOf(End, StringComparison.Ordinal));
        begin.Should().BePositive();
        end.Should().BeGreaterThan(begin);
        var rows = DiagnosticCatalogue.All.Select(one => $"| `{one.Code}` | {one.Severity.ToString().ToLowerInvariant()} | {one.Meaning} | {one.Advice} |\n");
        var list = $"| code | severity | meaning | advice |\n|---|---|---|---|\n{string.Concat(rows)}";
        Golden.Check(path, guide[..(begin + Begin.Length)] + list + guide[end..], Environment.GetEnvironmentVariable("UPDATE_GOLDEN"), Environment.GetEnvironmentVariable("CI"));
    }

    [Fact]
    public void A_finding_has_the_severity_of_its_code()
    {
        foreach (var finding in Enum.GetValues<Finding>().Where(finding => finding is not (Finding.WithOffset or Finding.WithoutOffset)))
        {
            var diagnostic = FindingTexts.Diagnostic(finding, Counting.Ledger.ExportKind.Screening, "lot", "screening.csv", 2, 3);
            DiagnosticCatalogue.All.Single(one => one.Code == diagnostic.Code).Severity.Should().Be(diagnostic.Severity);
            diagnostic.Message.Should().Contain("line 2 of screening.csv").And.Contain("3 rows");
        }
    }

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*$")]
    private static partial Regex Code();
}
