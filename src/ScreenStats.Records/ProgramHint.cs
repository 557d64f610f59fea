using System.Collections.Immutable;

namespace ScreenStats.Records;

/// <summary>A line of comment in a program file that is shown: a key that may be filled in, or what is to be said of one.</summary>
/// <param name="Path">Names of the objects it stands in, from the outermost; empty for the file itself.</param>
/// <param name="Text">The comment without its slashes.</param>
public sealed record ProgramHint(ImmutableArray<string> Path, string Text);
