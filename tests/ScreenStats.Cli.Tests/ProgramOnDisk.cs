using ScreenStats.Cli.Terminal;

namespace ScreenStats.Cli.Tests;

/// <summary>A small program in a folder of its own, to be damaged by a test.</summary>
internal sealed class ProgramOnDisk : IDisposable
{
    public const string Secret = "Quillfeather";

    public const string Screening = """
        person,site,collected_at,result,lot
        p1,Dock,2026-01-05T08:00,negative,A1
        p2,Dock,2026-01-05T08:05,positive,A1
        p3,Yard,2026-01-06T09:00,negative,A2
        p4,Yard,2026-01-06T09:05,invalid,A2

        """;

    public const string Confirmatory = """
        person,collected_at,result,reported_at
        p2,2026-01-05T12:00,positive,2026-01-06T10:00

        """;

    public ProgramOnDisk()
    {
        Write("screening.csv", Screening);
        Write("confirmatory.csv", Confirmatory);
        Write("program.json", """{ "title": "Small works", "timeZone": "Etc/UTC" }""");
    }

    public string Root { get; } = Directory.CreateTempSubdirectory("program").FullName;

    public string Report => Path.Combine(Root, "report");

    public RunnerEnvironment Here => new() { Folder = Root };

    public void Write(string name, string text) => File.WriteAllText(At(name), text);

    public void Write(string name, byte[] bytes) => File.WriteAllBytes(At(name), bytes);

    public string At(string name)
    {
        Directory.CreateDirectory(Path.Combine(Root, "works"));
        return Path.Combine(Root, "works", name);
    }

    public void Dispose() => Directory.Delete(Root, true);
}
