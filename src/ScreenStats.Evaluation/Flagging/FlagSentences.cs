using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Flagging;

/// <summary>What is said of flagged lots and sites, and what is not.</summary>
internal static class FlagSentences
{
    private const int NamedPlaces = 3;

    /// <summary>How many of its conclusive positives were refuted, and how surprising that is.</summary>
    public static Sentence Refuted(string path, string nameProperty, string kind, IJudgedLevel level) => new(
        $"{kind} {{0}} needs looking into: {{1}} of its {{2}} positives with a conclusive confirmatory result were refuted. If all {kind.ToLowerInvariant()}s were " +
        "alike, the probability of as many refuted positives among its {3} valid tests would be {4} (adjusted for the number compared: {5}).",
        Figure.Name($"{path}.{nameProperty}", level.Name), Figure.Count(path + ".refuted", level.Refuted),
        Figure.Count(path + ".conclusive", level.Conclusive), Figure.Count(path + ".refutedTest.trials", level.RefutedTest.Trials),
        Figure.Number(path + ".refutedP", level.RefutedP, Unit.PValue), Figure.Number(path + ".refutedPHolm", level.RefutedPHolm, Unit.PValue));

    /// <summary>Where and when its refuted positives were; of a site, without those of lots that are flagged themselves.</summary>
    public static Sentence? Where(string path, string placeKind, IJudgedLevel level)
    {
        if (level.RefutedConcentration is not { } most) return null;
        var figures = new List<FigureReference>();
        string Figures(FigureReference figure)
        {
            figures.Add(figure);
            return $"{{{figures.Count - 1}}}";
        }

        var concentration = path + ".refutedConcentration";
        var events = Figures(Figure.Count(concentration + ".events", most.Events));
        var total = level.RefutedTest.Events;
        var subject = most.Events == total
            ? $"All {events} of its refuted positives"
            : $"{events} of its {Figures(Figure.Count(path + ".refutedTest.events", total))} refuted positives";
        if (level.Refuted != total) subject += " (without those of flagged lots)";
        var names = most.Names.Length <= NamedPlaces
            ? most.Names.Select(name => Figures(Figure.Name(FigurePath.Row(concentration + ".names", name), name))).ToList()
            : [];
        var where = names.Count switch
        {
            0 => $"{Figures(Figure.Count(concentration + ".places", most.Places))} {placeKind}s",
            1 => $"{placeKind} {names[0]}",
            2 => $"{placeKind}s {names[0]} and {names[1]}",
            _ => $"{placeKind}s {names[0]}, {names[1]} and {names[2]}",
        };
        var first = Figures(Figure.Day(concentration + ".firstDay", most.FirstDay));
        var when = most.FirstDay == most.LastDay ? $"on {first}" : $"from {first} to {Figures(Figure.Day(concentration + ".lastDay", most.LastDay))}";
        return new Sentence($"{subject} were {(placeKind == "site" ? "at" : "with")} {where}, {when}.", [.. figures]);
    }

    /// <summary>How many of its runs gave no valid result.</summary>
    public static Sentence Invalid(string path, string nameProperty, string kind, IJudgedLevel level) => new(
        $"{kind} {{0}} needs looking into: {{1}} of its {{2}} runs gave no valid result ({{3}} inconclusive, {{4}} invalid). If all {kind.ToLowerInvariant()}s were " +
        "alike, the probability of as many would be {5} (adjusted for the number compared: {6}).",
        Figure.Name($"{path}.{nameProperty}", level.Name), Figure.Count(path + ".unusable", level.Inconclusive + level.Invalid),
        Figure.Count(path + ".runs", level.Runs), Figure.Count(path + ".inconclusive", level.Inconclusive), Figure.Count(path + ".invalid", level.Invalid),
        Figure.Number(path + ".invalidP", level.InvalidP, Unit.PValue), Figure.Number(path + ".invalidPHolm", level.InvalidPHolm, Unit.PValue));

    /// <summary>Why lots or sites with a small chance are not flagged: sites and people that differ explain it.</summary>
    public static IEnumerable<Sentence> Explained(Func<IJudgedLevel, string> pathOf, string nameProperty, string kind, IEnumerable<IJudgedLevel> levels)
    {
        foreach (var level in levels)
        {
            if (IsExplained(level.RefutedTest)) yield return Explained(pathOf(level), nameProperty, kind, level, "refuted positives", "refuted", level.RefutedTest);
            if (IsExplained(level.InvalidTest)) yield return Explained(pathOf(level), nameProperty, kind, level, "runs without a valid result", "invalid", level.InvalidTest);
        }
    }

    private static bool IsExplained(FlagTest test) => !test.Flagged && test.PHolm < StepDown.Threshold;

    private static Sentence Explained(string path, string nameProperty, string kind, IJudgedLevel level, string events, string which, FlagTest test) => new(
        $"{kind} {{0}} has more {events} than if every run were like every other (adjusted chance {{1}}), but not once " +
        (kind == "Lot" ? "it is compared within its sites and repeated runs of the same people are allowed for" : "repeated runs of the same people are allowed for") +
        " (chance {2}, before it is adjusted): it is not flagged.",
        Figure.Name($"{path}.{nameProperty}", level.Name), Figure.Number($"{path}.{which}PHolm", test.PHolm, Unit.PValue),
        Figure.Number($"{path}.{which}Test.pWidened", test.PWidened, Unit.PValue));
}
