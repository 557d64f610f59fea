using Microsoft.Playwright;

namespace ScreenStats.Browser.Tests;

/// <summary>A report in a browser, with all that it asked for and all that was complained of since it was opened.</summary>
public sealed class OpenedReport : IAsyncDisposable
{
    private readonly IBrowserContext context;
    private readonly List<string> complaints = [];
    private readonly List<string> requests = [];

    internal OpenedReport(IBrowserContext context, IPage page)
    {
        this.context = context;
        Page = page;
        page.Console += (_, message) => complaints.Add($"{message.Type}: {message.Text}");
        page.PageError += (_, message) => complaints.Add(message);
        page.Request += (_, request) => requests.Add(request.Url);
    }

    /// <summary>The page.</summary>
    public IPage Page { get; }

    /// <summary>What the console says, and errors that nothing caught.</summary>
    public IReadOnlyList<string> Complaints => complaints;

    /// <summary>Addresses that were asked for.</summary>
    public IReadOnlyList<string> Requests => requests;

    /// <summary>Runs a script in the page, also where the page itself may run none.</summary>
    public Task<T> Ask<T>(string script) => Page.EvaluateAsync<T>(script);

    /// <summary>Opens every folded part.</summary>
    public Task Unfold() => Page.EvaluateAsync("() => { for (const part of document.querySelectorAll('details')) part.open = true; }");

    /// <inheritdoc/>
    public async ValueTask DisposeAsync() => await context.DisposeAsync();
}
