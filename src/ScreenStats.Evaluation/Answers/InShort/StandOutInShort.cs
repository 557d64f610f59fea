using System.Collections.Immutable;
using ScreenStats.Evaluation.Flagging;
using ScreenStats.Evaluation.Lots;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Sites;

namespace ScreenStats.Evaluation.Answers.InShort;

/// <summary>Which lots and sites stand out, in one sentence: the clearest two by name, a lot and a site where both are flagged.</summary>
internal static class StandOutInShort
{
    private const string Then = "a flag asks for a look and releases nobody from isolation";

    /// <summary>What is said of flags.</summary>
    public static Sentence Of(LotFindings lots, SiteFindings sites)
    {
        ImmutableArray<(string List, string Kind, IJudgedLevel Level)> flagged =
        [
            .. lots.Where(lot => lot.Flag != Flag.None).Select(lot => ("lots", "lot", (IJudgedLevel)lot)),
            .. sites.Where(site => site.Flag != Flag.None).Select(site => ("sites", "site", (IJudgedLevel)site)),
        ];
        if (flagged.IsEmpty) return Nothing(lots, sites);
        var ordered = flagged.OrderBy(one => StandsOut.Smallest(one.Level)).ThenBy(one => one.Level.Name, StringComparer.Ordinal).ToList();
        var first = ordered.DistinctBy(one => one.Kind).ToList();
        var named = (first.Count == 2 ? first : [.. ordered.Take(2)]).OrderBy(one => one.Kind, StringComparer.Ordinal).ToList();
        var figures = ImmutableArray.CreateBuilder<FigureReference>();
        var text = string.Join(" and ", named.Select(one => Part(figures, FigurePath.Row(one.List, one.Level.Name), one.Kind, one.Level)));
        var others = ordered.Count > named.Count ? ", with others in the tables" : "";
        return new Sentence(char.ToUpperInvariant(text[0]) + text[1..] + (named.Count == 1 ? " stands out" : " stand out") + $" beyond chance{others}; {Then}.", figures.ToImmutable());
    }

    /// <summary>The names alone, where counts are hidden.</summary>
    /// <param name="sentence">The sentence of all.</param>
    /// <returns>The same without a number; null where it names nobody.</returns>
    public static Sentence? Names(Sentence sentence)
    {
        var names = sentence.Figures.Where(figure => figure.Value.Kind == CellKind.Text).ToList();
        if (names.Count is 0 or > 2) return null;
        string Kind(FigureReference name) => name.Id.EndsWith(".lot", StringComparison.Ordinal) ? "lot" : "site";
        var first = Kind(names[0]) == "lot" ? "Lot {0}" : "Site {0}";
        return new Sentence(
            (names.Count == 1 ? first + " stands out" : first + $" and {Kind(names[1])} {{1}} stand out") + $" beyond chance, by counts of which some are hidden; {Then}.", [.. names]);
    }

    private static string Part(ImmutableArray<FigureReference>.Builder figures, string path, string kind, IJudgedLevel level)
    {
        string Add(FigureReference figure)
        {
            figures.Add(figure);
            return FormattableString.Invariant($"{{{figures.Count - 1}}}");
        }

        var name = $"{kind} {Add(StandsOut.Name(path, kind, level))}";
        return level.Flag.HasFlag(Flag.Refuted) && (!level.Flag.HasFlag(Flag.Invalid) || level.RefutedPHolm <= level.InvalidPHolm)
            ? name + $" ({Add(Figure.Count(path + ".refuted", level.Refuted))} of {Add(Figure.Count(path + ".conclusive", level.Conclusive))} conclusive positives refuted, adjusted p "
                + Add(Figure.Number(path + ".refutedPHolm", level.RefutedPHolm, Unit.PValue)) + ")"
            : name + $" ({Add(Figure.Count(path + ".inconclusive", level.Inconclusive))} inconclusive and {Add(Figure.Count(path + ".invalid", level.Invalid))} invalid of {Add(Figure.Count(path + ".runs", level.Runs))} runs, adjusted p "
                + Add(Figure.Number(path + ".invalidPHolm", level.InvalidPHolm, Unit.PValue)) + ")";
    }

    private static Sentence Nothing(LotFindings lots, SiteFindings sites)
    {
        const string May = "one with few runs may be at fault all the same";
        var refuted = lots.Any(lot => lot.RefutedP is not null) || sites.Any(site => site.RefutedP is not null);
        var invalid = lots.Any(lot => lot.InvalidP is not null) || sites.Any(site => site.InvalidP is not null);
        return new Sentence((refuted, invalid) switch
        {
            (true, true) => $"No lot and no site had more refuted positives, or more runs without a valid result, than chance readily makes; {May}.",
            (true, false) => $"No lot and no site had more refuted positives than chance readily makes, though {May}; runs without a valid result could not be compared.",
            (false, true) => $"No lot and no site had more runs without a valid result than chance readily makes, though {May}; refuted positives could not be compared, for too few lots, sites or confirmatory results.",
            _ => "These data cannot say: there are too few lots, sites or confirmatory results to compare.",
        });
    }
}
