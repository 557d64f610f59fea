namespace ScreenStats.Evaluation.Comparisons.Strata;

/// <summary>Numbers for names, in the order in which they come.</summary>
internal sealed class Vocabulary
{
    private readonly Dictionary<string, int> numbers = new(StringComparer.Ordinal);
    private readonly List<string> names = [];

    // Cells come in order, so that most have the name of the one before.
    private string? latest;
    private int latestNumber;

    public int Count => names.Count;

    public IReadOnlyList<string> Names => names;

    public int Of(string name)
    {
        if (ReferenceEquals(name, latest)) return latestNumber;
        if (!numbers.TryGetValue(name, out var number))
        {
            numbers.Add(name, number = names.Count);
            names.Add(name);
        }

        (latest, latestNumber) = (name, number);
        return number;
    }
}
