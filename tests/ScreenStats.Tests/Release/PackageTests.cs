using System.Xml.Linq;
using ScreenStats.Testing;

namespace ScreenStats.Tests.Release;

/// <summary>What the packages say of themselves. That they work, each from a clean folder, is shown by .ci/release.</summary>
public sealed class PackageTests
{
    private static readonly XDocument Common = XDocument.Load(RepositoryRoot.Combine("Directory.Build.props"));

    public static TheoryData<string> Projects => [.. Directory.GetFiles(RepositoryRoot.Combine("src"), "*.csproj", SearchOption.AllDirectories).Select(path => Path.GetFileNameWithoutExtension(path)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Projects))]
    public void Each_package_describes_itself(string name)
    {
        var project = XDocument.Load(RepositoryRoot.Combine("src", name, name + ".csproj"));
        var description = project.Descendants("Description").Should().ContainSingle().Subject.Value;
        description.Should().EndWith(".").And.Match(text => text.Length > 20 && text.Length < 200);
        project.Descendants().Where(item => item.Name.LocalName is "Version" or "VersionPrefix" or "PackageVersion" or "PackageLicenseExpression" or "Authors" or "IsPackable" or "PackageReadmeFile" or "IncludeSymbols")
            .Should().BeEmpty("version, licence, authors and the like stand in one place");
        File.ReadAllText(RepositoryRoot.Combine("src", "README.md")).Should().Contain($"| {name} | ", "the README inside every package lists them all");
    }

    [Fact]
    public void Version_licence_readme_docs_and_symbols_are_stated_once_for_all()
    {
        Once("Version").Should().MatchRegex(@"^\d+\.\d+\.\d+$");
        Once("Authors").Should().NotBeEmpty();
        Once("Deterministic").Should().Be("true");
        Once("PackageLicenseExpression").Should().Be("MIT");
        File.ReadLines(RepositoryRoot.Combine("LICENSE")).First().Should().Be("MIT License");
        File.ReadAllText(RepositoryRoot.Combine("LICENSE")).Should().Contain(Once("Copyright"));
        Once("PackageReadmeFile").Should().Be("README.md");
        Common.Descendants("None").Single(item => ((string)item.Attribute("Include")!).EndsWith("src/README.md", StringComparison.Ordinal)).Attribute("Pack")!.Value.Should().Be("true");
        Once("GenerateDocumentationFile").Should().Be("true");
        Once("IncludeSymbols").Should().Be("true");
        Once("SymbolPackageFormat").Should().Be("snupkg");
    }

    [Fact]
    public void Lines_of_the_packages_readme_are_those_of_the_readme()
    {
        var lines = Code("README.md", "## The library");
        lines.Should().NotBeEmpty();
        Code("src/README.md", "# ScreenStats").Where(line => line.Length > 0 && !line.StartsWith("using ", StringComparison.Ordinal)).Should().Equal(lines);
    }

    [Fact]
    public void A_build_asks_for_no_compiler_of_machine_code()
    {
        var project = XDocument.Load(RepositoryRoot.Combine("src", "ScreenStats.Cli", "ScreenStats.Cli.csproj"));
        foreach (var name in (string[])["PublishReadyToRun", "PublishAot", "RuntimeIdentifier", "RuntimeIdentifiers"])
        {
            foreach (var item in project.Descendants(name)) ((string?)item.Parent!.Attribute("Condition")).Should().StartWith("'$(ShipAs)' == ", name);
            Common.Descendants(name).Should().BeEmpty();
        }
    }

    [Fact]
    public void The_guide_names_the_script_that_builds_and_tries_them()
    {
        File.Exists(RepositoryRoot.Combine(".ci", "release")).Should().BeTrue();
        File.ReadAllText(RepositoryRoot.Combine("DEVELOPERS.md")).Should().Contain(".ci/release");
    }

    private static string Once(string name) => Common.Descendants(name).Should().ContainSingle(name).Subject.Value;

    private static List<string> Code(string file, string heading) =>
        [.. File.ReadLines(RepositoryRoot.Combine(file.Split('/'))).SkipWhile(line => line != heading).SkipWhile(line => line != "```csharp").Skip(1).TakeWhile(line => line != "```")];
}
