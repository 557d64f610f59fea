using System.Diagnostics;
using ScreenStats.Testing;
using UglyToad.PdfPig;

namespace ScreenStats.Browser.Tests;

/// <summary>evaluate --format pdf by the real runner and the real Chromium.</summary>
public sealed class PdfCommandTests
{
    [Fact]
    public async Task The_print_is_there_with_numbered_pages_and_the_text_of_the_report_and_no_clock_in_it()
    {
        Assert.SkipWhen(Chromium.Path is null, Chromium.Missing);
        var room = Directory.CreateTempSubdirectory("screenstats-pdf");
        try
        {
            var report = System.IO.Path.Combine(room.FullName, "report");
            var start = new ProcessStartInfo("dotnet") { RedirectStandardError = true, RedirectStandardOutput = true };
            foreach (var argument in new[] { System.IO.Path.Combine(AppContext.BaseDirectory, "ScreenStats.Cli.dll"), "evaluate", RepositoryRoot.Combine("sample-data", "marrowlight"), "--out", report, "--format", "pdf" }) start.ArgumentList.Add(argument);
            start.Environment[Chromium.Variable] = Chromium.Path;
            using var process = Process.Start(start)!;
            var (said, faults) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
            await process.WaitForExitAsync();
            process.ExitCode.Should().Be(0, await faults);
            (await said).Should().Contain("report.pdf");

            var bytes = await System.IO.File.ReadAllBytesAsync(System.IO.Path.Combine(report, "report.pdf"));
            System.Text.Encoding.Latin1.GetString(bytes).Should().Contain("/CreationDate (D:20000101000000");
            using var print = PdfDocument.Open(bytes);
            print.NumberOfPages.Should().BeInRange(40, 160);
            string Text(int page) => string.Concat(print.GetPage(page).Letters.Select(letter => letter.Value.Trim()));
            Text(1).Should().Contain("Marrowlight").And.Contain("Page1of" + print.NumberOfPages.ToString(System.Globalization.CultureInfo.InvariantCulture));
            Text(print.NumberOfPages).Should().NotBeEmpty();
        }
        finally
        {
            room.Delete(recursive: true);
        }
    }
}
