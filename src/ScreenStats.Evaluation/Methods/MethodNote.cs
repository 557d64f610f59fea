using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Methods;

/// <summary>What a reader must know of a method.</summary>
/// <param name="Name">Its name in tables: lower case, words joined by hyphens.</param>
/// <param name="Title">Its name for people.</param>
/// <param name="Meaning">What it does, in plain language.</param>
/// <param name="Formulas">The formula, line by line, with its letters explained.</param>
/// <param name="Source">Who published it, when and where.</param>
public sealed record MethodNote(string Name, string Title, string Meaning, ImmutableArray<string> Formulas, string Source);
