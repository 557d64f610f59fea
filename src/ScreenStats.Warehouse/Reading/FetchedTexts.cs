namespace ScreenStats.Warehouse.Reading;

/// <summary>What a row says beside what counting needs of it, to tell a copy from a second run.</summary>
/// <param name="Person">The pseudonym.</param>
/// <param name="Identifier">The screen_id of a run; the method of a specimen.</param>
/// <param name="Words">Marks, of which counting does not tell blank from no.</param>
/// <param name="ReadAt">When the device was read.</param>
internal readonly record struct FetchedTexts(string? Person, string? Identifier, uint Words, long? ReadAt);
