using System.Text.Json;
using System.Text.RegularExpressions;
using ScreenStats.Testing;

namespace ScreenStats.Tests.Notebooks;

/// <summary>The notebooks for Jupyter hold the code of programs that run in CI, so that they cannot rot. That their stored output is what the program prints is held by <c>.ci/run</c>.</summary>
public sealed partial class NotebookTests
{
    public static TheoryData<string> Names => [.. Directory.GetFiles(RepositoryRoot.Combine("notebooks"), "*.ipynb").Select(file => Path.GetFileNameWithoutExtension(file)).Order(StringComparer.Ordinal)];

    [Fact]
    public void There_are_two_or_more() => Names.Should().HaveCountGreaterThanOrEqualTo(2);

    [Fact]
    public void Programs_are_numbered_without_a_gap_and_the_readme_names_each_in_order()
    {
        var names = Directory.GetFiles(RepositoryRoot.Combine("notebooks"), "*.cs").Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal).ToList();
        names.Select(name => name[..2]).Should().Equal(Enumerable.Range(1, names.Count).Select(number => number.ToString("00", System.Globalization.CultureInfo.InvariantCulture)));
        var readme = File.ReadAllText(RepositoryRoot.Combine("README.md"));
        names.Select(name => readme.IndexOf("notebooks/" + name, StringComparison.Ordinal)).Should().BeInAscendingOrder().And.OnlyContain(at => at > 0);
        foreach (var name in names) File.ReadAllText(RepositoryRoot.Combine("notebooks", name)).Should().Contain("dotnet run notebooks/" + name, "it says how it is run");
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_notebook_is_of_format_4_with_a_kernel_and_outputs_stored(string name)
    {
        using var json = Book(name);
        var root = json.RootElement;

        root.EnumerateObject().Select(part => part.Name).Should().BeEquivalentTo(["cells", "metadata", "nbformat", "nbformat_minor"]);
        root.GetProperty("nbformat").GetInt32().Should().Be(4);
        root.GetProperty("nbformat_minor").GetInt32().Should().Be(5, "cells have identifiers");
        root.GetProperty("metadata").GetProperty("kernelspec").GetProperty("name").GetString().Should().Be(".net-csharp");
        root.GetProperty("metadata").GetProperty("kernelspec").GetProperty("display_name").GetString().Should().NotBeEmpty();
        var cells = root.GetProperty("cells").EnumerateArray().ToList();
        cells.Select(cell => cell.GetProperty("id").GetString()).Should().OnlyHaveUniqueItems().And.OnlyContain(id => Identifier().IsMatch(id!));
        var number = 0;
        foreach (var cell in cells)
        {
            Source(cell).Should().NotBeEmpty();
            var code = Kind(cell) == "code";
            cell.EnumerateObject().Select(part => part.Name).Should().BeEquivalentTo(code
                ? ["cell_type", "id", "metadata", "source", "execution_count", "outputs"]
                : (string[])["cell_type", "id", "metadata", "source"]);
            if (!code) continue;
            cell.GetProperty("execution_count").GetInt32().Should().Be(++number);
            if (Source(cell).Contains("Console.WriteLine", StringComparison.Ordinal)) Outputs(cell).Should().Contain(output => output.GetProperty("output_type").GetString() == "stream");
            Outputs(cell).Should().NotContain(output => output.GetProperty("output_type").GetString() == "error");
        }

        var picture = Outputs(cells[^1]).Single(output => output.GetProperty("output_type").GetString() == "display_data").GetProperty("data").GetProperty("image/svg+xml");
        Text(picture).Should().StartWith("<svg").And.Contain("<title>").And.Contain("<desc>");
        root.GetRawText().Should().NotContainAny("127.0.0.1", "/home/", "/root/", "/tmp/");
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Its_cells_are_the_text_and_the_code_of_the_program_of_its_name(string name)
    {
        using var json = Book(name);
        var cells = json.RootElement.GetProperty("cells").EnumerateArray().ToList();
        var program = File.ReadAllLines(RepositoryRoot.Combine("notebooks", name + ".cs"));

        // The first cell of code brings the library, the last shows the picture; what is between is the program without its numbered comments.
        var code = cells.Where(cell => Kind(cell) == "code").Skip(1).SkipLast(1).SelectMany(cell => Source(cell).Split('\n'));
        Lines(code).Should().Equal(Lines(Code(program)));
        var words = cells.Where(cell => Kind(cell) == "markdown").SelectMany(cell => Words(Source(cell))).ToList();
        foreach (var line in program.Where(line => line.StartsWith("// ", StringComparison.Ordinal)).Except(Code(program))) words.Should().Contain(Words(line));
        Source(cells.First(cell => Kind(cell) == "code")).Split('\n').Should().OnlyContain(line => line.StartsWith("#r \"../src/ScreenStats.Cli/bin/", StringComparison.Ordinal) || line.StartsWith("using ", StringComparison.Ordinal) || line.StartsWith("if (!File.Exists(\"ScreenStats.sln\"))", StringComparison.Ordinal));
        Source(cells[^1]).Should().MatchRegex("^HTML\\(File\\.ReadAllText\\(\"artifacts/[a-z-]+\\.svg\"\\)\\)$");
    }

    private static JsonDocument Book(string name) => JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Combine("notebooks", name + ".ipynb")));

    private static string Kind(JsonElement cell) => cell.GetProperty("cell_type").GetString()!;

    private static List<JsonElement> Outputs(JsonElement cell) => [.. cell.GetProperty("outputs").EnumerateArray()];

    private static string Source(JsonElement cell) => Text(cell.GetProperty("source"));

    private static string Text(JsonElement lines) => string.Concat(lines.EnumerateArray().Select(line => line.GetString()));

    private static IEnumerable<string> Lines(IEnumerable<string> lines) => lines.Where(line => line.Trim().Length > 0);

    private static string[] Words(string text) => text.Split([' ', '\n', '*', '-', '/', '#'], StringSplitOptions.RemoveEmptyEntries);

    /// <summary>The program without what tells the compiler where it stands, its first comment, and each numbered comment with the lines of comment that follow.</summary>
    private static List<string> Code(IEnumerable<string> program)
    {
        var code = new List<string>();
        var text = true;
        foreach (var line in program.Where(line => !line.StartsWith('#')).SkipWhile(line => line.Trim().Length == 0))
        {
            var comment = line.StartsWith("//", StringComparison.Ordinal);
            text = comment && (text || Numbered().IsMatch(line));
            if (!text) code.Add(line);
        }

        return code;
    }

    [GeneratedRegex("^[A-Za-z0-9_-]{1,64}$")]
    private static partial Regex Identifier();

    [GeneratedRegex("^// [0-9]+\\. ")]
    private static partial Regex Numbered();
}
