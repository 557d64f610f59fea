using System.Text.Json;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Tests.Cache;

/// <summary>A folder of exports with a cache beside it, and what readings of it give as one text: everything that a result holds.</summary>
internal sealed class CachedProgram : IDisposable
{
    private readonly string beside = Directory.CreateTempSubdirectory("screenstats-").FullName;

    public TestFolder Folder { get; } = new();

    public string Place => Path.Combine(beside, "cache");

    public ProgramSettings Settings { get; set; } = new();

    public string[] Entries => Directory.Exists(Place) ? [.. Directory.GetFiles(Place, "*.entry").Order(StringComparer.Ordinal)] : [];

    /// <summary>What reading gives without a cache.</summary>
    public string Plain(int threads = 2, bool text = false) => Said(new ReadOptions { Threads = threads, SetAsideText = text }, out _);

    /// <summary>What reading gives with it.</summary>
    public string Cached(out ReadingResult? result, int threads = 2, bool text = false, ReadOptions? options = null) =>
        Said((options ?? new ReadOptions()) with { Threads = threads, Cache = Place, SetAsideText = text }, out result);

    /// <summary>Reads without, with, and with again; all must be the same. The last result; null where the data were refused.</summary>
    public ReadingResult? Same(string because = "", int threads = 2)
    {
        var plain = Plain(threads);
        Cached(out var first, threads).Should().Be(plain, $"the first run with a cache reads everything {because}");
        Cached(out var second, threads).Should().Be(plain, $"the second run with a cache knows everything {because}");
        (first is null).Should().Be(second is null);
        if (second is null) return null;
        second.Cache!.FromCache.Should().Be(second.Cache.Files, $"all was known {because}");
        second.Cache.Notes.Should().BeEmpty(because);
        return second;
    }

    public void Dispose()
    {
        Folder.Dispose();
        Directory.Delete(beside, recursive: true);
    }

    private string Said(ReadOptions options, out ReadingResult? result)
    {
        result = null;
        try
        {
            result = Folder.Read(Settings, options);
            return Shown(result);
        }
        catch (RefusedReadingException refusal)
        {
            return JsonSerializer.Serialize(refusal.Diagnostics) + JsonSerializer.Serialize(refusal.Understanding);
        }
        catch (UnusableDataException refusal)
        {
            return JsonSerializer.Serialize(refusal.Diagnostics);
        }
    }

    public static string Shown(ReadingResult result) => string.Join('\n',
        JsonSerializer.Serialize(result.Tally.Cells), JsonSerializer.Serialize(result.Diagnostics), JsonSerializer.Serialize(result.SetAside),
        JsonSerializer.Serialize(result.Inputs), JsonSerializer.Serialize(result.Understanding));
}
