using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Retests;

/// <summary>The table of retests.</summary>
internal static class RetestTables
{
    public static Table<RetestRow> Table(ImmutableArray<RetestRow> rows) => new(
        "retests",
        "Retests of positive runs on the same day",
        "A person's first positive run of a day and the next valid run of that day, before any specimen of the person. Devices and sites are those of the positive run. "
        + "Two runs on one person are not independent, so agreement is no predictive value.",
        [
            new("by", "By", Unit.Text, "How the program is divided.", row => Cell.Text(row.By)),
            LevelColumns.Level<RetestRow>(row => row.Level),
            new("retest_device", "Retest with", Unit.Text, "any device; for devices also the same one or another.", row => Cell.Text(row.With)),
            new("positives", "Positives", Unit.Count, "Positive runs of the part.", row => Cell.Count(row.Positives)),
            new("pairs", "Retested", Unit.Count, "Positive runs with a retest.", row => Cell.Count(row.Pairs)),
            new("unusable", "Unusable", Unit.Count, "Retests that were inconclusive or invalid.", row => Cell.Count(row.Unusable)),
            new("concordant", "Positive again", Unit.Count, "Retests that were positive too.", row => Cell.Count(row.Concordant.Events)),
            new("discordant", "Negative", Unit.Count, "Retests that were negative.", row => Cell.Count(row.Discordant)),
            .. ShareColumns.For<RetestRow>(row => row.Concordant),
            new("concordant_confirmed", "Positive again, confirmed", Unit.Count, "Positive runs with a positive retest that were confirmed.", row => Cell.Count(row.ConcordantConfirmed)),
            new("concordant_refuted", "Positive again, refuted", Unit.Count, "Positive runs with a positive retest that were refuted.", row => Cell.Count(row.ConcordantRefuted)),
            new("discordant_confirmed", "Negative, confirmed", Unit.Count, "Positive runs with a negative retest that were confirmed.", row => Cell.Count(row.DiscordantConfirmed)),
            new("discordant_refuted", "Negative, refuted", Unit.Count, "Positive runs with a negative retest that were refuted.", row => Cell.Count(row.DiscordantRefuted)),
        ],
        rows);
}
