using System.Reflection;
using System.Xml.Linq;
using ScreenStats.Testing;

namespace ScreenStats.Tests;

/// <summary>What each assembly may use. The compiler holds the walls; this test holds the plan they were built from.</summary>
public sealed class ArchitectureTests
{
    private static readonly Dictionary<string, string[]> Allowed = new(StringComparer.Ordinal)
    {
        ["ScreenStats.Statistics"] = ["MathNet.Numerics"],
        ["ScreenStats.Counting"] = [],
        ["ScreenStats.Records"] = ["ScreenStats.Counting", "CsvHelper", "ExcelDataReader", "Parquet.Net", "System.IO.Hashing"],
        ["ScreenStats.Evaluation"] = ["ScreenStats.Statistics", "ScreenStats.Counting"],
        ["ScreenStats.Reporting"] = ["ScreenStats.Statistics", "ScreenStats.Counting", "ScreenStats.Evaluation", "ScottPlot"],
        ["ScreenStats"] =
        [
            "ScreenStats.Statistics", "ScreenStats.Counting", "ScreenStats.Records", "ScreenStats.Evaluation", "ScreenStats.Reporting",
            "Microsoft.Data.Analysis",
        ],
        ["ScreenStats.Cli"] =
        [
            "ScreenStats", "ScreenStats.Statistics", "ScreenStats.Counting", "ScreenStats.Records", "ScreenStats.Evaluation",
            "ScreenStats.Reporting", "System.CommandLine", "Spectre.Console", "ScreenStats.Warehouse",
        ],
        ["ScreenStats.Warehouse"] = ["ScreenStats.Counting", "ScreenStats.Records", "Npgsql", "DuckDB.NET.Data.Full"],
    };

    public static TheoryData<string> Assemblies => [.. Allowed.Keys];

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void A_project_names_only_what_its_room_may_use(string assembly)
    {
        var project = XDocument.Load(RepositoryRoot.Combine("src", assembly, assembly + ".csproj"));
        var named = project.Descendants("ProjectReference").Select(item => Path.GetFileNameWithoutExtension((string)item.Attribute("Include")!))
            .Concat(project.Descendants("PackageReference").Select(item => (string)item.Attribute("Include")!));
        named.Should().BeSubsetOf(Allowed[assembly]);
        var leaking = project.Descendants("PackageReference").Where(item => (string?)item.Attribute("PrivateAssets") != "compile");
        leaking.Should().BeEmpty("a package must not leak through the room that uses it");
    }

    [Fact]
    public void Every_assembly_of_the_house_is_planned()
    {
        var folders = Directory.GetDirectories(RepositoryRoot.Combine("src")).Select(folder => Path.GetFileName(folder));
        folders.Should().BeEquivalentTo(Allowed.Keys);
    }

    [Fact]
    public void The_warehouse_comes_only_where_it_is_asked_for()
    {
        File.ReadAllText(RepositoryRoot.Combine("ScreenStats.sln")).Should().NotContain("ScreenStats.Warehouse.csproj", "a build of the solution would download a database engine");
        var runner = XDocument.Load(RepositoryRoot.Combine("src", "ScreenStats.Cli", "ScreenStats.Cli.csproj"));
        var reference = runner.Descendants("ProjectReference").Single(item => ((string)item.Attribute("Include")!).Contains("Warehouse", StringComparison.Ordinal));
        ((string?)reference.Parent!.Attribute("Condition")).Should().Be("'$(Warehouse)' == 'true'");
    }

    [Theory]
    [InlineData("ScreenStats.Statistics")]
    [InlineData("ScreenStats.Counting")]
    [InlineData("ScreenStats.Evaluation")]
    public void A_pure_assembly_refers_to_no_console_file_or_network_library(string assembly)
    {
        var referenced = Assembly.Load(assembly).GetReferencedAssemblies().Select(name => name.Name);
        referenced.Should().NotContain(["System.Console", "System.Net.Http", "System.Diagnostics.Process"]);
    }

    [Fact]
    public void Nothing_but_the_agreed_stands_at_the_top_level()
    {
        var visible = Directory.GetFileSystemEntries(RepositoryRoot.Path).Select(entry => Path.GetFileName(entry))
            .Where(name => !name.StartsWith('.'));
        visible.Should().BeSubsetOf(
        [
            "README.md", "DEVELOPERS.md", "LICENSE", "ScreenStats.sln", "src", "tests", "notebooks", "sample-data",
            "Directory.Build.props", "Directory.Packages.props", "global.json",
            "report", "TestResults", "artifacts", "BenchmarkDotNet.Artifacts", // made by running, ignored by git
        ]);
    }
}
