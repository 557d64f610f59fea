using System.Text;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Tests;

/// <summary>A folder of exports that lasts as long as a test.</summary>
internal sealed class TestFolder : IDisposable
{
    public const string Headings = "person,site,collected_at,result\n";

    public string Path { get; } = Directory.CreateTempSubdirectory("screenstats-").FullName;

    public TestFolder With(string name, string text) => With(name, Encoding.UTF8.GetBytes(text));

    public TestFolder With(string name, byte[] bytes)
    {
        File.WriteAllBytes(System.IO.Path.Combine(Path, name), bytes);
        return this;
    }

    public ReadingResult Read(ProgramSettings? settings = null, ReadOptions? options = null) =>
        new ProgramReader().Read(settings ?? new ProgramSettings(), Path, options ?? new ReadOptions { Threads = 2 });

    /// <summary>Reads data that cannot be used; the diagnostics, errors first.</summary>
    public IReadOnlyList<Diagnostic> Refused(ProgramSettings? settings = null)
    {
        var read = () => Read(settings);
        return read.Should().Throw<UnusableDataException>().Which.Diagnostics;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);

    public static long Rows(ReadingResult reading, LedgerEntry entry, ExportKind export = ExportKind.Screening) =>
        reading.Tally.Cells.Ledger.Where(cell => cell.Export == export && cell.Entry == entry).Sum(cell => cell.Rows);

    public static long Rows(ReadingResult reading, ExportKind export = ExportKind.Screening) =>
        reading.Tally.Cells.Ledger.Where(cell => cell.Export == export).Sum(cell => cell.Rows);

    /// <summary>Counted runs by outcome: negative, positive, inconclusive, invalid.</summary>
    public static long[] Outcomes(ReadingResult reading) =>
        [.. Enum.GetValues<Outcome>().Select(outcome => reading.Tally.Cells.Screens.Where(cell => cell.Outcome == outcome).Sum(cell => cell.Runs))];

    public static ProgramSettings Screening(ExportSettings screening) => new() { Exports = new ExportsSettings { Screening = screening } };
}
