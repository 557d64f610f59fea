using System.Collections.Immutable;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records;

/// <summary>How one canonical column was understood.</summary>
/// <param name="Column">Canonical name.</param>
/// <param name="Mapped">False where no heading was taken for it.</param>
/// <param name="Rows">Rows read.</param>
/// <param name="Recorded">Rows with a usable value.</param>
/// <param name="Words">For a column of choices, the words met that were understood, the most frequent first.</param>
/// <param name="UnknownWords">Rows whose word was not understood (never shown: it could be anything).</param>
/// <param name="DateOrder">For a column of dates, the order in which they were read.</param>
/// <param name="DateOrderWhy">Where that order comes from, in words; empty for other columns.</param>
/// <param name="FirstDay">First local day; null where there is none.</param>
/// <param name="LastDay">Last local day; null where there is none.</param>
public sealed record ColumnUnderstanding(
    string Column, bool Mapped, long Rows, long Recorded, ImmutableArray<WordUnderstanding> Words, long UnknownWords,
    DateOrder? DateOrder, string DateOrderWhy, DateOnly? FirstDay, DateOnly? LastDay);
