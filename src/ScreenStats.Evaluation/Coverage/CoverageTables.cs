using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Coverage;

internal static class CoverageTables
{
    public static Table<CoverageRow> Coverage(CoverageFindings findings) => new(
        "coverage",
        "Coverage",
        "People with a counted run at a site in an ISO week among the people eligible there, from the headcount. Longer spans are sums over site-weeks " +
        "with a headcount. A complete count, so it has no interval.",
        [
            new("by", "By", Unit.Text, "By what the program is broken down.", row => Cell.Text(LevelNames.Of(row.Grouping))),
            new("level", "Level", Unit.Text, "The site; empty for the whole program.", row => row.Level.Length == 0 ? Cell.Empty : Cell.Text(row.Level)),
            new("period_start", "Week from", Unit.Date, "Monday of the week; empty for the whole span.", row => Cell.Date(row.Week)),
            new("persons", "People tested", Unit.Count, "People with a counted run, summed over site-weeks.", row => Cell.Count(row.Persons)),
            new("eligible", "People eligible", Unit.Count, "People eligible, summed over site-weeks.", row => Cell.Count(row.Eligible)),
            new("share", "Coverage", Unit.Proportion, "People tested divided by people eligible.", row => Cell.NumberOr(row.Share, row.ShareUndefined ?? "")) { Method = Methods.MethodNames.Share },
        ],
        findings.Program is { } program ? [program, .. findings.Sites, .. findings.SiteWeeks] : []);
}
