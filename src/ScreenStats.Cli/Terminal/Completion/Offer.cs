namespace ScreenStats.Cli.Terminal.Completion;

/// <summary>An option, or an argument, as a shell offers it.</summary>
/// <param name="Name">The option with its dashes, or the name of the argument.</param>
/// <param name="Meaning">One line for people.</param>
/// <param name="Value">What follows.</param>
/// <param name="Words">The words that may follow, where they are few.</param>
internal sealed record Offer(string Name, string Meaning, OfferedValue Value, IReadOnlyList<string> Words);
