using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.PersonLog.Sums;

namespace ScreenStats.Records.PersonLog.Checks;

/// <summary>What is to be said of the audits' sampling strata.</summary>
internal static class AuditDiagnostics
{
    public static void Add(ImmutableArray<Diagnostic>.Builder found, TallyCells cells, AuditSums? audits, string file)
    {
        if (audits is null || cells.AuditStrata.IsEmpty) return;
        var strata = cells.AuditStrata;
        if (audits.Strata.Unexplained is > 0 and var labels)
        {
            Say(CountingDiagnostics.AuditStrataUnexplained, Severity.Warning, labels,
                $"Nothing says how many negative runs the {labels:N0} sampling strata of the audits hold: sensitivity and specificity are shown without weights, and are biased if strata were sampled at different rates. Describe every stratum under audits, strata in the program file.");
        }

        if (strata[0].Origin is StratumOrigin.Site or StratumOrigin.Lot)
        {
            Say(CountingDiagnostics.AuditStrataByName, Severity.Note, strata.Length,
                $"The {strata.Length:N0} sampling strata of the audits have names of {(strata[0].Origin == StratumOrigin.Site ? "sites" : "lots")} and are taken as those. If they are something else, describe them under audits, strata in the program file.");
        }

        var negatives = cells.Screens.Where(cell => cell.Outcome == Outcome.Negative).Sum(cell => cell.Runs);
        var outside = negatives - strata.Sum(stratum => stratum.Negatives);
        if (outside > 0)
        {
            Say(CountingDiagnostics.NegativesOutsideStrata, Severity.Note, outside,
                $"{outside:N0} of {negatives:N0} negative runs belong to no sampling stratum; sensitivity and specificity do not speak of them. If they could have been drawn, correct audits, strata in the program file.");
        }

        if (audits.Misplaced > 0)
        {
            Say(CountingDiagnostics.AuditOutsideStratum, Severity.Warning, audits.Misplaced,
                $"{audits.Misplaced:N0} audited {(audits.Misplaced == 1 ? "run does" : "runs do")} not belong to the sampling stratum that the specimen names; each counts where its specimen says. Correct sampling_stratum, or the strata in the program file.");
        }

        var audited = cells.AuditProducts.Where(cell => cell is { Total: AuditTotal.Persons, OtherTotal: AuditTotal.Missed or AuditTotal.Agreed })
            .GroupBy(cell => cell.OtherStratum, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.Sum(cell => cell.Products), StringComparer.Ordinal);
        var small = strata.Count(stratum => audited.GetValueOrDefault(stratum.Stratum) > stratum.Negatives);
        if (small > 0)
        {
            Say(CountingDiagnostics.AuditStratumTooSmall, Severity.Warning, small,
                $"Of {small:N0} sampling {(small == 1 ? "stratum" : "strata")} more runs were audited than it is said to hold: sensitivity and specificity are shown without weights. Correct audits, strata in the program file.");
        }

        void Say(string code, Severity severity, long count, FormattableString message) =>
            found.Add(new(code, severity, file, null, "sampling_stratum", message.ToString(CultureInfo.InvariantCulture), count));
    }
}
