using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Bursts;

/// <summary>Bursts in words.</summary>
internal static class BurstSentences
{
    public static ImmutableArray<Sentence> Of(IReadOnlyList<BurstRow> rows)
    {
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        foreach (var row in rows)
        {
            var what = row.Measure switch { "refuted" => "refuted positives", "unusable" => "inconclusive and invalid runs", _ => "confirmed positives" };
            if (row.Undefined is { } none) sentences.Add(new Sentence($"No burst of {what}: {none}."));
            else sentences.Add(Burst(row, what));
        }

        return sentences.ToImmutable();
    }

    private static Sentence Burst(BurstRow row, string what)
    {
        var path = FigurePath.Row("bursts.rows", row.Measure);
        var figures = new List<FigureReference>();
        string Add(FigureReference figure)
        {
            figures.Add(figure);
            return $"{{{(figures.Count - 1).ToString(CultureInfo.InvariantCulture)}}}";
        }

        var remarkable = row.ChanceUnderNoBurst <= BurstAnalysis.Remarkable;
        var many = Add(Figure.Count(path + ".observed", row.Observed));
        var lot = row.Lot switch { null => "", Levels.None => " without a recorded lot", { } name => " with lot " + Add(Figure.Name(path + ".lot", name)) };
        var site = row.Site is { } at ? " at site " + Add(Figure.Name(path + ".site", at)) : "";
        var first = Add(Figure.Day(path + ".firstDay", row.FirstDay));
        var when = row.FirstDay == row.LastDay ? "on " + first : $"from {first} to {Add(Figure.Day(path + ".lastDay", row.LastDay))}";
        var place = lot.Length + site.Length == 0 ? " in the whole program" : lot + site;
        var expected = Add(Say.Ratio(path + ".expected", row.Expected));
        var chance = Add(Figure.Number(path + ".chanceUnderNoBurst", row.ChanceUnderNoBurst, Unit.PValue));
        var of = $"{Add(Figure.Count(path + ".replicates", row.Replicates))} simulated programs, seed {Add(Figure.Count(path + ".seed", (long)row.Seed))}";
        var text = $"Strongest burst of {what}: {many}{place}, {when}, where {expected} would be expected";
        // The real program is one of those counted, so that no chance is less than one in all of them.
        var least = row.ChanceUnderNoBurst * (row.Replicates + 1) < 1.5;
        text += remarkable && least ? $"; none of {of}, had one as strong without a burst (chance under no burst put at {chance}, the least that so many can show)."
            : remarkable ? $"; chance under no burst {chance} ({of})." : $"; chance alone makes one as strong somewhere with probability {chance} ({of}), so it says little.";
        if (row.Measure == "confirmed" && remarkable) text += " People may have been infected together, an outbreak inside, or more of them outside: confirmed cases are hardly a fault of kits or site.";
        return new Sentence(text, [.. figures]);
    }
}
