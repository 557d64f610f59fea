using System.Runtime.ExceptionServices;

namespace ScreenStats.Records.PersonLog;

/// <summary>Numbered pieces of work over a few threads.</summary>
internal static class Workers
{
    /// <summary>
    /// Runs every piece once, on whichever worker is free, then hands each worker to <paramref name="collect"/>, one after the
    /// other. What a piece throws is thrown here as it is.
    /// </summary>
    public static void Run<TWorker>(int threads, int pieces, Func<TWorker> create, Action<TWorker, int> run, Action<TWorker> collect, CancellationToken cancellationToken = default)
    {
        var count = Math.Clamp(threads, 1, pieces);
        var workers = new TWorker[count];
        for (var i = 0; i < count; i++) workers[i] = create();
        var next = -1;
        void RunAll(int worker)
        {
            for (var piece = Interlocked.Increment(ref next); piece < pieces; piece = Interlocked.Increment(ref next))
            {
                cancellationToken.ThrowIfCancellationRequested();
                run(workers[worker], piece);
            }
        }

        if (count == 1) RunAll(0);
        else
        {
            try
            {
                Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = count }, RunAll);
            }
            catch (AggregateException several)
            {
                ExceptionDispatchInfo.Throw(several.Flatten().InnerExceptions[0]);
            }
        }

        foreach (var worker in workers) collect(worker);
    }
}
