using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Records;

/// <summary>What reading a program gave.</summary>
public sealed class ReadingResult
{
    internal ReadingResult(
        Tally tally, ImmutableArray<Diagnostic> diagnostics, ImmutableArray<SetAsideRow> setAside, ImmutableArray<InputFile> inputs,
        ImmutableArray<ExportUnderstanding> understanding)
    {
        Tally = tally;
        Diagnostics = diagnostics;
        SetAside = setAside;
        Inputs = inputs;
        Understanding = understanding;
    }

    /// <summary>Everything that was counted.</summary>
    public Tally Tally { get; }

    /// <summary>What was found in the data, in the order of exports, files and rows.</summary>
    public ImmutableArray<Diagnostic> Diagnostics { get; }

    /// <summary>The rows set aside and the duplicates, in the order of exports, files and rows.</summary>
    public ImmutableArray<SetAsideRow> SetAside { get; }

    /// <summary>The files read, in order.</summary>
    public ImmutableArray<InputFile> Inputs { get; }

    /// <summary>What a cache did, where one was asked for (<see cref="ReadOptions.Cache"/>); else null.</summary>
    public CacheUse? Cache { get; internal set; }

    /// <summary>Bytes of exports that were split into rows: none of files that a cache knows.</summary>
    internal long BytesSplit { get; set; }

    /// <summary>How each export was understood.</summary>
    public ImmutableArray<ExportUnderstanding> Understanding { get; }
}
