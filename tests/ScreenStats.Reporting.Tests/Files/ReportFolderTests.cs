using System.Text;
using ScreenStats.Reporting.Files;

namespace ScreenStats.Reporting.Tests.Files;

public sealed class ReportFolderTests : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("screenstats-report-").FullName;

    private string Target => Path.Combine(root, "report");

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public void A_folder_is_made_with_the_folders_above_it()
    {
        var deep = Path.Combine(root, "a", "b", "report");
        ReportFolder.Write(deep, Report("one"), default);
        File.ReadAllText(Path.Combine(deep, "tables", "x.csv")).Should().Be("one");
    }

    [Fact]
    public void A_report_of_ours_is_replaced_as_a_whole_and_nothing_is_left_over()
    {
        ReportFolder.Write(Target, [.. Report("one", "old.csv"), .. Extra("plots/a.svg")], default);
        ReportFolder.Write(Target, Report("two"), default);
        File.ReadAllText(Path.Combine(Target, "tables", "x.csv")).Should().Be("two");
        File.Exists(Path.Combine(Target, "tables", "old.csv")).Should().BeFalse();
        Directory.GetFileSystemEntries(root).Should().Equal(Target);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("not json")]
    [InlineData("[]")]
    [InlineData("{\"madeBy\":\"someone else\",\"files\":[]}")]
    [InlineData("{\"madeBy\":7,\"files\":[]}")]
    public void A_folder_without_a_manifest_of_ours_is_not_touched(string? manifest)
    {
        Directory.CreateDirectory(Target);
        File.WriteAllText(Path.Combine(Target, "precious.txt"), "mine");
        if (manifest is not null) File.WriteAllText(Path.Combine(Target, "manifest.json"), manifest);
        var act = () => ReportFolder.Write(Target, Report("one"), default);
        act.Should().Throw<NotOurFolderException>().WithMessage("*nothing was written*");
        Directory.GetFiles(Target, "*", SearchOption.AllDirectories).Should().HaveCount(manifest is null ? 1 : 2);
        Directory.GetFileSystemEntries(root).Should().Equal(Target);
    }

    [Theory]
    [InlineData("../outside.txt")]
    [InlineData("tables/../../outside.txt")]
    [InlineData("/outside.txt")]
    [InlineData("tables\\..\\x.csv")]
    [InlineData("C:x.csv")]
    [InlineData("a//b")]
    [InlineData("a\nb")]
    public void No_name_leads_out_of_the_folder(string name)
    {
        var act = () => ReportFolder.Write(Target, [.. Report("one"), .. Extra(name)], default);
        act.Should().Throw<ArgumentException>();
        Directory.GetFileSystemEntries(root).Should().BeEmpty();
    }

    [Fact]
    public void A_file_that_may_name_people_is_for_its_owner_alone()
    {
        if (OperatingSystem.IsWindows()) return;
        ReportFolder.Write(Target, [.. Report("one"), .. Extra("set-aside.csv")], default, ownerOnly: "set-aside.csv");
        File.GetUnixFileMode(Path.Combine(Target, "set-aside.csv")).Should().Be(UnixFileMode.UserRead | UnixFileMode.UserWrite);
    }

    [Fact]
    public void While_it_is_built_only_its_owner_can_look_in_and_then_it_is_a_usual_folder()
    {
        if (OperatingSystem.IsWindows()) return;
        var usual = Directory.CreateDirectory(Path.Combine(root, "usual"));
        var files = new Watched([.. Report("one")], () => Directory.GetDirectories(root, ".report.*.new"));
        ReportFolder.Write(Target, files, default);
        files.Seen.Should().NotBeEmpty().And.OnlyContain(mode => mode == (UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute));
        new DirectoryInfo(Target).UnixFileMode.Should().Be(usual.UnixFileMode);
    }

    [Fact]
    public void An_empty_folder_is_not_ours_either()
    {
        Directory.CreateDirectory(Target);
        FluentActions.Invoking(() => ReportFolder.Check(Target)).Should().Throw<NotOurFolderException>();
    }

    [Fact]
    public void A_file_in_the_place_is_not_touched()
    {
        File.WriteAllText(Target, "mine");
        FluentActions.Invoking(() => ReportFolder.Write(Target, Report("one"), default)).Should().Throw<NotOurFolderException>();
        File.ReadAllText(Target).Should().Be("mine");
    }

    [Fact]
    public void A_file_of_somebody_else_inside_a_report_is_not_lost()
    {
        ReportFolder.Write(Target, Report("one"), default);
        File.WriteAllText(Path.Combine(Target, "my notes.txt"), "mine");
        FluentActions.Invoking(() => ReportFolder.Write(Target, Report("two"), default)).Should().Throw<NotOurFolderException>().WithMessage("*my notes.txt*");
        File.ReadAllText(Path.Combine(Target, "my notes.txt")).Should().Be("mine");
        File.ReadAllText(Path.Combine(Target, "tables", "x.csv")).Should().Be("one");
    }

    [Fact]
    public void Cancelling_leaves_the_former_report_and_nothing_else()
    {
        ReportFolder.Write(Target, Report("one"), default);
        FluentActions.Invoking(() => ReportFolder.Write(Target, Report("two"), new CancellationToken(canceled: true))).Should().Throw<OperationCanceledException>();
        File.ReadAllText(Path.Combine(Target, "tables", "x.csv")).Should().Be("one");
        Directory.GetFileSystemEntries(root).Should().Equal(Target);
    }

    [Fact]
    public void A_failure_while_writing_leaves_the_former_report_and_nothing_else()
    {
        ReportFolder.Write(Target, Report("one"), default);
        // A file cannot also be a folder: the second name fails half-way.
        var broken = Extra("a").Concat(Extra("a/b")).ToArray();
        FluentActions.Invoking(() => ReportFolder.Write(Target, broken, default)).Should().Throw<IOException>();
        File.ReadAllText(Path.Combine(Target, "tables", "x.csv")).Should().Be("one");
        Directory.GetFileSystemEntries(root).Should().Equal(Target);
    }

    private static KeyValuePair<string, byte[]>[] Extra(string name) => [new(name, "x"u8.ToArray())];

    private static KeyValuePair<string, byte[]>[] Report(string content, string name = "x.csv")
    {
        var files = new List<KeyValuePair<string, byte[]>> { new("tables/x.csv", Encoding.UTF8.GetBytes(content)) };
        if (name != "x.csv") files.Add(new("tables/" + name, []));
        var listed = files.Append(new("plots/a.svg", []));
        files.Add(new(Manifest.FileName, Encoding.UTF8.GetBytes(JsonText.Of(Manifest.Of(new ReportInputs(), "1", listed)))));
        return [.. files];
    }

    /// <summary>Looks at the folder in the making each time that a file is asked for.</summary>
    private sealed class Watched(KeyValuePair<string, byte[]>[] files, Func<string[]> building) : IReadOnlyCollection<KeyValuePair<string, byte[]>>
    {
        public List<UnixFileMode> Seen { get; } = [];

        public int Count => files.Length;

        public IEnumerator<KeyValuePair<string, byte[]>> GetEnumerator()
        {
            foreach (var file in files)
            {
                Seen.AddRange(building().Select(folder => new DirectoryInfo(folder).UnixFileMode));
                yield return file;
            }
        }

        System.Collections.IEnumerator System.Collections.IEnumerable.GetEnumerator() => GetEnumerator();
    }
}
