using System.Text;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Deidentification;

/// <summary>
/// Looks at the names of sites and lots, which stand in every report. What no site or lot is called is refused: an e-mail address, and for sites
/// also telephone and national numbers. What may be one, as <c>Martin Hall</c>, is warned of where most are like that.
/// </summary>
internal static class LevelIdentities
{
    /// <summary>What is found in the cells of a reading.</summary>
    /// <param name="cells">The cells.</param>
    /// <param name="file">Name of the file of the screening export.</param>
    public static IEnumerable<Diagnostic> Look(TallyCells cells, string file)
    {
        var sites = cells.Screens.Select(cell => cell.Site).Concat(cells.Controls.Select(cell => cell.Site)).Concat(cells.Headcount.Select(cell => cell.Site));
        var lots = cells.Screens.Select(cell => cell.Lot).Concat(cells.Controls.Select(cell => cell.Lot));
        return new[] { Of("site", sites, true, file), Of("lot", lots, false, file) }.OfType<Diagnostic>();
    }

    private static Diagnostic? Of(string column, IEnumerable<string> levels, bool numbers, string file)
    {
        var sample = new ValueSample();
        foreach (var level in levels.Distinct(StringComparer.Ordinal).Where(level => level != Levels.None))
        {
            var text = Encoding.UTF8.GetBytes(level);
            sample.Take(TextCodes.Hash(text), text);
        }

        var judged = ColumnJudgement.OfUnread(sample);
        return judged.Identifier switch
        {
            SafeHarbor.EmailAddresses => IdentityTexts.Refused(ExportKind.Screening, column, file, judged),
            SafeHarbor.TelephoneNumbers or SafeHarbor.SocialSecurityNumbers when numbers => IdentityTexts.Refused(ExportKind.Screening, column, file, judged),
            SafeHarbor.Names => IdentityTexts.NamedLevels(column, file, judged),
            _ => null,
        };
    }
}
