using System.Globalization;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Tests.Validation;

/// <summary>Exports that another program writes to while they are read.</summary>
public class ChangingFileTests
{
    // Several blocks of the reader, so that it has not seen the end when the change comes.
    private const int Rows = 60_000;

    [Fact]
    public void A_file_that_grows_while_it_is_read_is_refused_and_read_once_it_rests() => Refused(path => File.AppendAllText(path, Row(Rows)));

    [Fact]
    public void A_file_that_is_cut_off_while_it_is_read_is_refused()
    {
        Refused(path =>
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite);
            file.SetLength(file.Length / 3);
        });
    }

    [Fact]
    public void A_file_that_is_replaced_by_another_of_the_same_length_is_refused() => Refused(path =>
    {
        var text = File.ReadAllText(path).Replace(",neg\n", ",pos\n", StringComparison.Ordinal);
        File.WriteAllText(path + ".new", text);
        File.SetLastWriteTimeUtc(path + ".new", File.GetLastWriteTimeUtc(path).AddSeconds(1));
        File.Move(path + ".new", path, overwrite: true);
    });

    private static void Refused(Action<string> change)
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings + string.Concat(Enumerable.Range(0, Rows).Select(Row)));
        var path = Path.Combine(folder.Path, "screening.csv");
        var once = new Once(() => change(path));

        var read = () => new ProgramReader().Read(new ProgramSettings(), folder.Path, new ReadOptions { Progress = once });

        var found = read.Should().Throw<UnusableDataException>().Which.Diagnostics.Should().ContainSingle().Subject;
        found.Code.Should().Be(ReadingDiagnostics.ChangedWhileRead);
        found.File.Should().Be("screening.csv");
        found.Message.Should().StartWith("screening.csv changed while it was read").And.NotContain(folder.Path);
        once.Done.Should().BeTrue();
        folder.Read().Diagnostics.Should().NotContain(diagnostic => diagnostic.Severity == Severity.Error);
    }

    private static string Row(int row) => string.Create(CultureInfo.InvariantCulture, $"p{row % 997},North,2026-01-{1 + (row / 2_500):00}T{row / 60 % 24:00}:{row % 60:00},neg\n");

    private sealed class Once(Action change) : IProgress<ReadProgress>
    {
        private int told;

        public bool Done { get; private set; }

        public void Report(ReadProgress value)
        {
            if (value.Bytes == 0 || Interlocked.Exchange(ref told, 1) == 1) return;
            change();
            Done = true;
        }
    }
}
