using System.Text;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Deidentification;

/// <summary>
/// Looks at every name of a site, region, lot, kit and sampling stratum, which stand in reports and messages. What none is called is refused: one e-mail address or
/// telephone number with its +, or two and one in ten of other telephone and of national numbers, as one alone may be a code. What may be a person,
/// as <c>Martin Hall</c> or <c>Maria</c>, is warned of where most are like that, or two and one in three hold a frequent name; messages then do
/// not repeat it.
/// </summary>
internal sealed class LevelIdentities
{
    private const int FewestNumbers = 2;
    private const int ShareOfNumbers = 10;
    private const int FewestNames = 2;
    private const int ShareOfNames = 3;

    // Application identifiers that stand before numbers of lots, serials and dates on packages (GS1 General Specifications, section 3; from memory).
    private static readonly string[] Identifiers = ["01", "02", "10", "11", "13", "15", "17", "20", "21", "240", "241", "250", "30", "37"];

    private readonly List<Diagnostic> found = [];
    private readonly HashSet<string> unshown = new(StringComparer.Ordinal);

    /// <summary>Looks at the levels of a reading.</summary>
    /// <param name="cells">Its cells.</param>
    /// <param name="kits">The kits of counted runs, each once.</param>
    /// <param name="file">Name of the file of the screening export.</param>
    /// <param name="confirmatory">Name of the file of the confirmatory export; blank where there is none.</param>
    /// <param name="siteTable">Name of the file of the export of sites; blank where there is none.</param>
    public LevelIdentities(TallyCells cells, IEnumerable<string> kits, string file, string confirmatory = "", string siteTable = "")
    {
        Look(CanonicalColumns.Site, cells.Screens.Select(cell => cell.Site).Concat(cells.Controls.Select(cell => cell.Site)).Concat(cells.Headcount.Select(cell => cell.Site)).Concat(cells.Sites.Select(cell => cell.Site)), file);
        Look(CanonicalColumns.Region, cells.Sites.Select(cell => cell.Region), siteTable);
        Look(CanonicalColumns.Lot, cells.Screens.Select(cell => cell.Lot).Concat(cells.Controls.Select(cell => cell.Lot)), file);
        LookAt(CanonicalColumns.Kit, KitsOf(kits, cells), file);
        Look(CanonicalColumns.SamplingStratum, cells.Audits.Select(cell => cell.Stratum), confirmatory);
    }

    /// <summary>What is wrong, and what is to be thought of.</summary>
    public IReadOnlyList<Diagnostic> Found => found;

    /// <summary>Levels that may be people, so that only reports show them.</summary>
    public IReadOnlySet<string> Unshown => unshown;

    /// <summary>The same without the names that may be people.</summary>
    public Diagnostic Veiled(Diagnostic one)
    {
        if (unshown.Count == 0 || !one.Message.Contains('"', StringComparison.Ordinal)) return one;
        var message = one.Message;
        // Messages quote every level. Longest first: one name may hold another with quotes of its own.
        foreach (var level in unshown.OrderByDescending(level => level.Length).ThenBy(level => level, StringComparer.Ordinal))
        {
            message = message.Replace($"\"{level}\"", "(a name that is not shown)", StringComparison.Ordinal);
        }

        return one with { Message = message };
    }

    /// <summary>The kits of counted runs.</summary>
    public static IEnumerable<string> Kits(IReadOnlyDictionary<string, CountedLevels> levels) =>
        levels.TryGetValue(CanonicalColumns.Kit, out var kits) ? Enumerable.Range(0, kits.Counted.Length).Where(code => kits.Counted[code]).Select(code => kits.Names[code]) : [];

    private void Look(string column, IEnumerable<string> levels, string file) => LookAt(column, levels.Where(level => level != Levels.None).ToHashSet(StringComparer.Ordinal), file);

    // There can be millions of kits, each named once: those are looked at one by one, and only the few of control swabs are kept.
    private static IEnumerable<string> KitsOf(IEnumerable<string> counted, TallyCells cells)
    {
        var controls = cells.Controls.Select(cell => cell.Kit).Where(kit => kit != Levels.None).ToHashSet(StringComparer.Ordinal);
        foreach (var kit in counted)
        {
            controls.Remove(kit);
            yield return kit;
        }

        foreach (var kit in controls) yield return kit;
    }

    private void LookAt(string column, IEnumerable<string> different, string file)
    {
        var sample = new ValueSample();
        var all = 0;
        var addresses = 0;
        var telephones = 0;
        var national = 0;
        var certain = false;
        foreach (var level in different)
        {
            var text = Encoding.UTF8.GetBytes(level);
            all++;
            sample.Take(TextCodes.Hash(text), text);
            switch (OnPackage(level) ? IdentityKind.None : IdentityRule.Of(text))
            {
                case IdentityKind.EmailAddress:
                    addresses++;
                    break;
                case IdentityKind.TelephoneNumber:
                    telephones++;
                    certain |= text[0] == (byte)'+';
                    break;
                case IdentityKind.GovernmentNumber:
                    national++;
                    break;
                default:
                    break;
            }
        }

        var judged = addresses > 0 ? new ColumnJudgement(SafeHarbor.EmailAddresses, "e-mail addresses", addresses, all)
            : certain || Many(telephones) ? new ColumnJudgement(SafeHarbor.TelephoneNumbers, "telephone numbers", telephones, all)
            : Many(national) ? new ColumnJudgement(SafeHarbor.SocialSecurityNumbers, "national numbers", national, all)
            : default;
        if (judged.Identifier != SafeHarbor.None) found.Add(IdentityTexts.RefusedLevels(column, file, judged));
        else if (Names(sample) is { Identifier: SafeHarbor.Names } named)
        {
            found.Add(IdentityTexts.NamedLevels(column, file, named));
            unshown.UnionWith(different.Where(MayBePerson));
        }

        bool Many(int count) => count >= FewestNumbers && count * ShareOfNumbers >= all;
    }

    private static ColumnJudgement Names(ValueSample sample)
    {
        var judged = ColumnJudgement.OfUnread(sample);
        if (judged.Identifier == SafeHarbor.Names) return judged;
        var names = 0;
        foreach (var value in sample.Traits)
        {
            if (value.Other.HasFlag(ValueLooks.HoldsFrequentName) && (value.Kind == IdentityKind.Name || value.Other.HasFlag(ValueLooks.OneWord))) names++;
        }

        return names >= FewestNames && names * ShareOfNames >= sample.Count ? new ColumnJudgement(SafeHarbor.Names, "names", names, sample.Count) : default;
    }

    /// <summary>Among names of people anything of one word may be one too, but a word of place or office.</summary>
    private static bool MayBePerson(string level)
    {
        var traits = ValueTraits.Of(Encoding.UTF8.GetBytes(level));
        return traits.Kind == IdentityKind.Name || traits.Other.HasFlag(ValueLooks.HoldsFrequentName)
            || (traits.Other.HasFlag(ValueLooks.OneWord) && !IdentityRule.IsPlaceOrOffice(level));
    }

    /// <summary>A number as printed on a package, such as (10)1234567, which is no telephone number.</summary>
    private static bool OnPackage(string level)
    {
        var end = level.IndexOf(')', StringComparison.Ordinal);
        return level[0] == '(' && end > 0 && Identifiers.Contains(level[1..end]) && !level[(end + 1)..].Contains(' ', StringComparison.Ordinal);
    }
}
