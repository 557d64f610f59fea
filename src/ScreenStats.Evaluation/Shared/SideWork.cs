namespace ScreenStats.Evaluation.Shared;

/// <summary>
/// Analyses that nothing waits for until the answers, on other threads beside the main line. Each is a pure function of what was there when it
/// began, so the result is the same for any number of threads. When the main line is left early nothing more begins, and what runs is waited for.
/// </summary>
/// <param name="progress">Told what is waited for; null for nobody.</param>
/// <param name="oneByOne">Do each where it begins, on the one thread there is: to see how long each takes by itself.</param>
internal sealed class SideWork(IProgress<string>? progress, bool oneByOne) : IDisposable
{
    private readonly CancellationTokenSource left = new();
    private readonly List<Task> begun = [];

    /// <summary>Begins one of them.</summary>
    /// <param name="name">What it is about, in a few words.</param>
    /// <param name="work">The analysis.</param>
    /// <returns>Waits for it and gives what it found.</returns>
    public Func<T> Begin<T>(string name, Func<T> work)
    {
        if (oneByOne)
        {
            progress?.Report(name);
            var found = work();
            return () => found;
        }

        var task = Task.Run(work, left.Token);
        begun.Add(task);
        return () =>
        {
            progress?.Report(name);
            return task.GetAwaiter().GetResult();
        };
    }

    /// <summary>Leaves the main line, at its end or before it.</summary>
    public void Dispose()
    {
        left.Cancel();
        // What it failed with was told to whoever waited for it, or the main line failed before.
        Task.WhenAll(begun).ContinueWith(static all => _ = all.Exception, CancellationToken.None, TaskContinuationOptions.ExecuteSynchronously, TaskScheduler.Default).Wait();
        left.Dispose();
    }
}
