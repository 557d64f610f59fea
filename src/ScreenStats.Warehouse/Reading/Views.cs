using ScreenStats.Counting.Programs;
using ScreenStats.Records;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.Understanding;
using ScreenStats.Warehouse.Engines;

namespace ScreenStats.Warehouse.Reading;

/// <summary>The views of a program's database. Where the connection breaks all is read once more after a moment, from the start: nothing was counted into anything yet.</summary>
internal sealed class Views(string folder) : IViews
{
    // A server that restarts lets nobody in for a moment.
    private static readonly TimeSpan BeforeAgain = TimeSpan.FromSeconds(3);

    public ViewsRead Count(ProgramSettings settings, Vocabularies vocabularies, TimeScale scale, ReadOptions options, int threads)
    {
        for (var again = false; ; again = true)
        {
            try
            {
                using var engine = Open(settings.Warehouse!, options, threads);
                return new ViewCounting(engine, settings, vocabularies, scale, options, threads).Run();
            }
            catch (WarehouseException fault) when (again || !fault.Again)
            {
                throw fault.Refusal;
            }
            catch (WarehouseException)
            {
                options.CancellationToken.WaitHandle.WaitOne(BeforeAgain);
                options.CancellationToken.ThrowIfCancellationRequested();
            }
        }
    }

    private Engine Open(WarehouseSettings warehouse, ReadOptions options, int threads) => warehouse.Url.StartsWith("duckdb:", StringComparison.Ordinal)
        ? DuckDbEngine.Open(warehouse, folder, threads, options.CancellationToken)
        : PostgresEngine.Open(warehouse, options.CancellationToken);
}
