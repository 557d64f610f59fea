using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog.Checks;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;

namespace ScreenStats.Records.PersonLog.Sums;

/// <summary>How the negative runs of a program were drawn for audit: its strata, and the stratum of each shape of row.</summary>
internal sealed class AuditSampling
{
    private readonly AuditStrata strata;
    private readonly int[] stratumOfLabel;
    private readonly int[] stratumOfShape;

    private AuditSampling(AuditStrata strata, int[] stratumOfLabel, int[] stratumOfShape) =>
        (this.strata, this.stratumOfLabel, this.stratumOfShape) = (strata, stratumOfLabel, stratumOfShape);

    /// <summary>The sampling; null where there is no audit specimen, so that nothing is summed.</summary>
    /// <exception cref="UnusableDataException">Two strata of the program file hold the same negative runs.</exception>
    public static AuditSampling? Of(SpecimenIndex specimens, ShapeTable shapes, Vocabularies vocabularies, AuditSettings settings)
    {
        var labels = new HashSet<int>();
        foreach (ref readonly var row in specimens.Rows.AsSpan())
        {
            if (row.Reason == SpecimenReason.Audit) labels.Add(row.Stratum);
        }

        if (labels.Count == 0) return null;
        var (sites, lots, texts) = (vocabularies.Sites.ToArray(), vocabularies.Lots.ToArray(), vocabularies.Strata.ToArray());
        var (usedSites, usedLots) = (new HashSet<int>(), new HashSet<int>());
        foreach (ref readonly var shape in shapes.All)
        {
            if (shape.Entry != Counting.Ledger.LedgerEntry.Counted) continue;
            usedSites.Add(shape.Site);
            usedLots.Add(shape.Lot);
        }

        var strata = AuditStrata.Of(labels.Select(label => texts[label]), usedSites.Select(site => sites[site]), usedLots.Select(lot => lots[lot]), settings);
        var stratumOfShape = new int[shapes.Count];
        for (var code = 0; code < stratumOfShape.Length; code++)
        {
            var shape = shapes[code];
            var (first, second) = strata.OfRun(sites[shape.Site], lots[shape.Lot], shape.Collection);
            if (second >= 0 && shape is { Outcome: Outcome.Negative, Entry: Counting.Ledger.LedgerEntry.Counted }) throw Overlap(strata.Names[first], strata.Names[second]);
            stratumOfShape[code] = first;
        }

        var stratumOfLabel = new int[texts.Length];
        foreach (var label in labels) stratumOfLabel[label] = strata.OfLabel(texts[label]);
        return new(strata, stratumOfLabel, stratumOfShape);
    }

    /// <summary>The stratum of a negative run: its number from 0, or -1.</summary>
    public int StratumOf(string site, string lot, CollectedBy collection) => strata.OfRun(site, lot, collection).First;

    public AuditSums Sums() => new(strata, stratumOfLabel, stratumOfShape);

    private static UnusableDataException Overlap(string first, string second) => new(new Diagnostic(
        CountingDiagnostics.AuditStrataOverlap, Severity.Error, "", null, "sampling_stratum", string.Create(CultureInfo.InvariantCulture,
            $"Negative runs belong to both sampling strata \"{first}\" and \"{second}\" of the program file; change their patterns under audits, strata, so that each run fits one.")));
}
