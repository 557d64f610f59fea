using System.Collections.Immutable;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records;

/// <summary>How one canonical column was understood.</summary>
/// <param name="Column">Canonical name.</param>
/// <param name="Mapped">False where no heading was taken for it.</param>
/// <param name="Rows">Rows read.</param>
/// <param name="Recorded">Rows with a usable value.</param>
/// <param name="Words">For a column of choices, the words met that were understood, the most frequent first.</param>
/// <param name="UnknownWords">Rows whose word was not understood.</param>
/// <param name="DateOrder">For a column of dates, the order in which they were read.</param>
/// <param name="DateOrderWhy">Where that order comes from, in words; empty for other columns.</param>
/// <param name="FirstDay">First local day; null where there is none.</param>
/// <param name="LastDay">Last local day; null where there is none.</param>
public sealed record ColumnUnderstanding(
    string Column, bool Mapped, long Rows, long Recorded, ImmutableArray<WordUnderstanding> Words, long UnknownWords,
    DateOrder? DateOrder, string DateOrderWhy, DateOnly? FirstDay, DateOnly? LastDay)
{
    /// <summary>
    /// Words that were not understood, where they are surely no person's: at most 20 that stand in at least five rows, short, of letters, and like no
    /// name, address or number, of a column of mostly known words or of at most eight different ones. The others could be anything and are only counted.
    /// </summary>
    public ImmutableArray<WordUnderstanding> UnknownWordsShown { get; init; } = [];

    /// <summary>For a column of choices, the words that one of its own may mean, in the contract's order; else none.</summary>
    public ImmutableArray<string> Meanings { get; init; } = [];

    /// <summary>For a column of times, rows whose time carries an offset from UTC; counted only where the program states no time zone.</summary>
    public long WithOffset { get; init; }

    /// <summary>For such a column, rows whose time carries none; counted only where the program states no time zone.</summary>
    public long WithoutOffset { get; init; }

    /// <summary>For a column of sites, lots or kits of the screening export, the 20 most frequent of counted rows; none where the exports were refused.</summary>
    public ImmutableArray<LevelUnderstanding> Levels { get; init; } = [];

    /// <summary>For such a column, how many different ones counted rows have; else 0.</summary>
    public long DifferentLevels { get; init; }
}
