using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Completeness;

internal static class CompletenessSentences
{
    /// <summary>The columns whose gaps change what the figures mean, with what it means.</summary>
    private static readonly ImmutableArray<(string Column, string What, string So)> Telling =
    [
        ("lot", "which lot was used", "these runs are in no comparison of lots"),
        ("symptomatic", "whether the person had symptoms", "people with symptoms may be among the screens"),
        ("exposed", "whether the person was a contact of a case", "contacts of cases may be among the screens"),
    ];

    public static ImmutableArray<Sentence> Of(CompletenessFindings found, long runs)
    {
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        foreach (var (column, what, so) in Telling)
        {
            if (found.Screening.FirstOrDefault(row => row.Column == column) is not { Rows: > 0 } row) continue;
            var path = FigurePath.Row("completeness.screening", row.Key);
            if (row.NotRecorded > 0)
            {
                sentences.Add(new Sentence(
                    $"For {{2}} of the rows ({{0}} of {{1}}) it is not recorded {what}: {so}.",
                    Figure.Count(path + ".notRecorded", row.NotRecorded), Figure.Count(path + ".rows", row.Rows),
                    Figure.Number(path + ".notRecordedShare", row.NotRecordedShare, Unit.Proportion)));
            }
        }

        if (sentences.Count == 0)
        {
            var all = Telling.All(telling => found.Screening.Any(row => row.Column == telling.Column));
            sentences.Add(new Sentence(all
                ? "Lots, symptoms and contacts of cases are recorded for every row."
                : "Nothing is known about how completely lots, symptoms and contacts of cases are recorded."));
        }

        if (found.OutbreakRuns > 0)
        {
            sentences.Add(new Sentence(
                "{0} of the {1} counted runs are marked as taken because of an outbreak at their site. They are counted as all others; where sites and times are compared, the figures lead without them.",
                Figure.Count("completeness.outbreakRuns", found.OutbreakRuns), Figure.Count("yield.runs", runs)));
        }

        return sentences.ToImmutable();
    }
}
