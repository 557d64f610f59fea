using ScreenStats.Counting.Cubes;

namespace ScreenStats.Records.PersonLog.Codes;

/// <summary>
/// The distinct texts of the columns that are counted by, each a code. Codes depend on who came first and are never
/// shown or sorted by; cells carry the texts. Safe for several readers at once.
/// </summary>
internal sealed class Vocabularies
{
    public Vocabulary Sites { get; } = new();

    public Vocabulary Lots { get; } = new(Levels.None);

    public Vocabulary Kits { get; } = new(Levels.None);

    public Vocabulary Operators { get; } = new(Levels.None);

    public Vocabulary Strata { get; } = new(Levels.None);
}
