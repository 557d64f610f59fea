using System.Collections.Immutable;
using ScreenStats.Evaluation.Flagging;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Sites;

internal static class SiteTables
{
    public static Table<SiteFinding> Sites(ImmutableArray<SiteFinding> rows) => new(
        "sites",
        "Sites",
        "Each site with its counts and the exact chance of as many refuted positives, and of as many inconclusive and invalid runs, if all sites " +
        "were alike. Refuted positives are judged without the lots flagged for them.",
        [
            new("site", "Site", Unit.Text, "Name of the site.", row => Cell.Text(row.Site)),
            .. JudgedColumns.For<SiteFinding>(),
        ],
        rows);
}
