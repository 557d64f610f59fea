using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Flagging;

/// <summary>What is said of flagged lots and sites, and what is not.</summary>
internal static class FlagSentences
{
    private const int NamedPlaces = 3;

    /// <summary>How many of its conclusive positives were refuted, and how surprising that is.</summary>
    public static Sentence Refuted(string path, string nameProperty, string kind, IJudgedLevel level) => new(
        $"{kind} {{0}} needs looking into: {{1}} of its {{2}} positives with a conclusive confirmatory result were refuted. If all {kind.ToLowerInvariant()}s were " +
        "alike, as many refuted positives among its {3} valid tests would come about with a chance of {4} (adjusted for the number compared: {5}).",
        Figure.Name($"{path}.{nameProperty}", level.Name), Figure.Count(path + ".refuted", level.Refuted),
        Figure.Count(path + ".conclusive", level.Conclusive), Figure.Count(path + ".refutedTest.trials", level.RefutedTest.Trials),
        Figure.Number(path + ".refutedP", level.RefutedP, Unit.PValue), Figure.Number(path + ".refutedPHolm", level.RefutedPHolm, Unit.PValue));

    /// <summary>Where and when its refuted positives were.</summary>
    public static Sentence? Where(string path, string placeKind, IJudgedLevel level)
    {
        if (level.RefutedConcentration is not { } most) return null;
        var total = level.RefutedPlaces.Sum(place => place.Events);
        var few = most.Names.Length <= NamedPlaces;
        List<FigureReference> figures =
        [
            Figure.Count(path + ".refutedConcentration.events", most.Events), Figure.Count(path + ".refutedTest.events", total),
            Figure.Day(path + ".refutedConcentration.firstDay", most.FirstDay), Figure.Day(path + ".refutedConcentration.lastDay", most.LastDay),
        ];
        string where;
        if (few)
        {
            for (var index = 0; index < most.Names.Length; index++)
                figures.Add(Figure.Name($"{path}.refutedConcentration.names[{index.ToString(System.Globalization.CultureInfo.InvariantCulture)}]", most.Names[index]));
            where = placeKind + Figure.Plural(most.Names.Length, " ", "s ") + (most.Names.Length switch
            {
                1 => "{4}",
                2 => "{4} and {5}",
                _ => "{4}, {5} and {6}",
            });
        }
        else
        {
            figures.Add(Figure.Count(path + ".refutedConcentration.places", most.Places));
            where = $"{{4}} {placeKind}s";
        }

        var preposition = placeKind == "site" ? "at" : "with";
        return new Sentence($"{{0}} of its {{1}} refuted positives in this comparison were {preposition} {where}, from {{2}} to {{3}}.", [.. figures]);
    }

    /// <summary>How many of its runs gave no valid result.</summary>
    public static Sentence Invalid(string path, string nameProperty, string kind, IJudgedLevel level) => new(
        $"{kind} {{0}} needs looking into: {{1}} of its {{2}} runs gave no valid result ({{3}} inconclusive, {{4}} invalid). If all {kind.ToLowerInvariant()}s were " +
        "alike, as many would come about with a chance of {5} (adjusted for the number compared: {6}).",
        Figure.Name($"{path}.{nameProperty}", level.Name), Figure.Count(path + ".unusable", level.Inconclusive + level.Invalid),
        Figure.Count(path + ".runs", level.Runs), Figure.Count(path + ".inconclusive", level.Inconclusive), Figure.Count(path + ".invalid", level.Invalid),
        Figure.Number(path + ".invalidP", level.InvalidP, Unit.PValue), Figure.Number(path + ".invalidPHolm", level.InvalidPHolm, Unit.PValue));
}
