using System.Collections.Immutable;

namespace ScreenStats.Records;

/// <summary>What a cache did for a reading. It changes nothing of what was read.</summary>
/// <param name="Files">Files of the screening and confirmatory exports, which are the ones that are kept; a sheet counts as a file.</param>
/// <param name="FromCache">How many of them were not read again, since their content was known.</param>
/// <param name="Notes">What is to be said about the folder: damaged entries, no room, no right to write. No path and no cell.</param>
public sealed record CacheUse(int Files, int FromCache, ImmutableArray<string> Notes);
