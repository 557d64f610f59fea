using Microsoft.Playwright;
using ScreenStats.Browser.Tests;
using ScreenStats.Evaluation;
using ScreenStats.Reporting;
using ScreenStats.Testing;

[assembly: AssemblyFixture(typeof(SampleReport))]

namespace ScreenStats.Browser.Tests;

/// <summary>The report of the sample program, made once by the library, and one browser for all tests.</summary>
public sealed class SampleReport : IAsyncLifetime
{
    // Long enough for a machine that does ten other things; no test waits for it unless something is broken.
    private const float Patience = 240_000;

    private readonly string folder = Directory.CreateTempSubdirectory("screenstats-browser").FullName;
    private IPlaywright? playwright;
    private IBrowser? browser;
    private Findings? findings;

    /// <summary>The page on the disk.</summary>
    public string File => Path.Combine(folder, "report", "report.html");

    /// <summary>Its address.</summary>
    public string Address => new Uri(File).AbsoluteUri;

    /// <summary>The folder of the report.</summary>
    public string Folder => Path.Combine(folder, "report");

    /// <summary>What it was made of.</summary>
    public Findings Findings => findings!;

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        var program = ScreeningProgram.Open(RepositoryRoot.Combine("sample-data", "marrowlight"));
        var reading = program.Read();
        findings = reading.Tally.Evaluate(program.Settings);
        Report.Write(findings, Folder, reading.ToReportInputs());
        if (Chromium.Path is not { } path) return;
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = path, Args = Chromium.Arguments, Timeout = Patience });
    }

    /// <summary>Opens the report in a context of its own; without a Chromium the test is skipped.</summary>
    /// <param name="view">How it is looked at.</param>
    /// <param name="first">A script that runs before the page's own, to stand in for a part of the browser; null for none.</param>
    public async Task<OpenedReport> Open(View view, string? first = null)
    {
        ArgumentNullException.ThrowIfNull(view);
        Assert.SkipWhen(browser is null, Chromium.Missing);
        var context = await browser!.NewContextAsync(new()
        {
            ViewportSize = new() { Width = view.Width, Height = view.Height },
            ColorScheme = view.Dark ? ColorScheme.Dark : ColorScheme.Light,
            ReducedMotion = view.ReducedMotion ? ReducedMotion.Reduce : ReducedMotion.NoPreference,
            JavaScriptEnabled = view.Scripts,
            IsMobile = view.Phone,
            Offline = true,
        });
        context.SetDefaultTimeout(Patience);
        if (first is not null) await context.AddInitScriptAsync(first);
        var page = await context.NewPageAsync();
        var opened = new OpenedReport(context, page);
        await page.GotoAsync(Address, new() { WaitUntil = WaitUntilState.Load });
        return opened;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (browser is not null) await browser.DisposeAsync();
        playwright?.Dispose();
        Directory.Delete(folder, true);
    }
}
