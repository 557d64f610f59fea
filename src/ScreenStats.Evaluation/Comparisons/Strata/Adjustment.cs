namespace ScreenStats.Evaluation.Comparisons.Strata;

/// <summary>One thing beside the period that is adjusted for, or the reason why it is not.</summary>
internal sealed class Adjustment
{
    private readonly int[] categories;

    private Adjustment(string name, IReadOnlyList<string> names, int[] categories, string notUsed) => (Name, Names, this.categories, NotUsed) = (name, names, categories, notUsed);

    /// <summary><c>kit</c>, <c>specimen</c> or <c>site</c>; empty for none.</summary>
    public string Name { get; }

    /// <summary>Names of its categories; one without an event, or with nothing else, is put to the largest.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>Why it is not adjusted for, in words; empty where it is, or there is nothing to adjust for.</summary>
    public string NotUsed { get; }

    public bool IsUsed => Names.Count > 1;

    public int Category(int number) => IsUsed ? categories[number] : 0;

    public static Adjustment Of(string by, string name, IReadOnlyList<string> names, IEnumerable<(int Level, int Category, long Trials, long Events)> cells)
    {
        Adjustment Not(string reason) => new(name, [""], [], reason.Length == 0 ? "" : $"{name}: {reason}");
        if (name.Length == 0) return Not("");
        var (trials, events) = (new long[names.Count], new long[names.Count]);
        var only = new Dictionary<int, int>();
        var nested = true;
        foreach (var (level, category, n, x) in cells)
        {
            trials[category] += n;
            events[category] += x;
            if (!only.TryGetValue(level, out var before)) only.Add(level, category);
            else if (before != category) nested = false;
        }

        var seen = Enumerable.Range(0, names.Count).Where(category => trials[category] > 0).OrderBy(category => names[category], ScreenStats.Counting.Cubes.Levels.Order).ToList();
        if (seen.Count < 2) return Not("");
        if (nested) return Not($"each {by} has one only, so that the two cannot be told apart");
        if (seen.Count > ComparedStrata.MostCategories) return Not("too many to give each a rate of its own");
        var largest = seen.MaxBy(category => trials[category]);
        var own = seen.Where(category => category == largest || (events[category] > 0 && events[category] < trials[category])).ToList();
        if (own.Count < 2) return Not("all but one have no event, or nothing else");
        var numbers = new int[names.Count];
        for (var category = 0; category < names.Count; category++) numbers[category] = own.Contains(category) ? own.IndexOf(category) : own.IndexOf(largest);
        var joined = seen.Count > own.Count;
        return new Adjustment(name, [.. own.Select(category => names[category] + (joined && category == largest ? " and those without an event" : ""))], numbers, "");
    }
}
