using System.Collections.Immutable;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Cache;
using ScreenStats.Records.Formats;
using ScreenStats.Records.Formats.Converting;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records;

/// <summary>Reads the exports of a screening program and counts them.</summary>
public sealed class ProgramReader
{
    private readonly Dictionary<string, TextEncoding> encodings = new(StringComparer.Ordinal);
    private readonly Dictionary<ExportKind, (DateOrder? Order, string Why)[]> orders = [];

    /// <summary>Reads a program: every export it has, in one pass.</summary>
    /// <param name="settings">What the program file says; the defaults where there is none.</param>
    /// <param name="folder">The folder of the exports.</param>
    /// <param name="options">How it is read; null: the defaults.</param>
    /// <returns>The tally, what was found in the data, and how it was understood.</returns>
    /// <exception cref="CacheFolderException">The folder of the cache holds something else. Nothing was written there.</exception>
    /// <exception cref="UnusableDataException">The data cannot be used: everything that is wrong, errors first.</exception>
    /// <remarks>
    /// The result depends neither on the number of threads nor on how an export is split into files. A file that turns
    /// out not to be UTF-8, or a column of dates that needs all its values to settle the order of day and month, is read
    /// a second time.
    /// </remarks>
    public ReadingResult Read(ProgramSettings settings, string folder, ReadOptions? options = null) => Read(settings, folder, options, null);

    /// <summary>The same with views of a database in place of the screening and the confirmatory export.</summary>
    internal ReadingResult Read(ProgramSettings settings, string folder, ReadOptions? options, IViews? views)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(folder);
        encodings.Clear();
        orders.Clear();
        options ??= new ReadOptions();
        var threads = options.Threads > 0 ? options.Threads : Environment.ProcessorCount;
        // What files of other formats are turned into serves every attempt, and goes whatever happens.
        using var sources = new SourceFiles(options.LargestUnpacked, ReadingSession.ZoneOf(settings), () =>
        {
            options.CancellationToken.ThrowIfCancellationRequested();
            options.Progress?.Report(default);
        });
        // The rows of a database are counted where they are: nothing of them is kept here.
        using var cache = options.Cache is { } place && views is null ? new ReadingCache(place, options.CacheStream, options.CancellationToken) : null;
        while (true)
        {
            try
            {
                using var session = new ReadingSession(settings, folder, options, threads, encodings, sources, orders, views, cache);
                return session.Run();
            }
            catch (ReadAgainException again)
            {
                encodings[again.Path] = again.Encoding;
            }
            catch (DamagedEntryException)
            {
                cache!.Distrust();
            }
            catch (IOException exception) when (exception is not FileNotFoundException)
            {
                throw new UnusableDataException(new Diagnostic(ReadingDiagnostics.UnreadableFile, Severity.Error, "", null, "",
                    "A file could not be read to its end. Check that the disk is sound and that no other program changes the exports while they are read."));
            }
        }
    }
}
