using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>The truth while it is being counted.</summary>
internal sealed class TruthCounts(int sites, int lots)
{
    private readonly long[] falsePositivesByLot = new long[lots];
    private readonly long[] unusableBySite = new long[sites];
    private readonly long[,] counted = new long[2, 4];
    private long rows, setAside, duplicates, controls, symptomatic, exposed, outbreak;

    public long ConfirmatoryRows { get; set; }

    public long ConfirmatorySetAside { get; set; }

    public long ConfirmatoryDuplicates { get; set; }

    public long Audits { get; set; }

    public long People { get; set; }

    public long Infected { get; set; }

    /// <summary>Counts a row by the ledger's order.</summary>
    public void Row(in ScreeningRow row)
    {
        rows++;
        if ((row.Faults & RowFaults.SetAside) != 0) setAside++;
        else if (row.Control is not null) controls++;
        else if (row.Symptomatic && (row.Faults & RowFaults.BlankSymptoms) == 0) symptomatic++;
        else if (row.Exposed) exposed++;
        else Run(row);
    }

    /// <summary>Counts a row that repeats an earlier one.</summary>
    public void Duplicate()
    {
        rows++;
        duplicates++;
    }

    /// <summary>Counts a row that contradicts an earlier one of the same identifier.</summary>
    public void Conflict()
    {
        rows++;
        setAside++;
    }

    public SynthesisTruth Freeze(SynthesisPlan plan, ulong seed) => new()
    {
        Seed = seed,
        Rows = rows,
        SetAside = setAside,
        Duplicates = duplicates,
        ControlRuns = controls,
        Symptomatic = symptomatic,
        Exposed = exposed,
        Counted = counted.Cast<long>().Sum(),
        OutbreakRuns = outbreak,
        DetectedPositive = counted[1, (int)Outcome.Positive],
        DetectableNegative = counted[1, (int)Outcome.Negative],
        FalsePositive = counted[0, (int)Outcome.Positive],
        TrueNegative = counted[0, (int)Outcome.Negative],
        Inconclusive = counted[0, (int)Outcome.Inconclusive] + counted[1, (int)Outcome.Inconclusive],
        Invalid = counted[0, (int)Outcome.Invalid] + counted[1, (int)Outcome.Invalid],
        People = People,
        Infected = Infected,
        ConfirmatoryRows = ConfirmatoryRows,
        ConfirmatorySetAside = ConfirmatorySetAside,
        ConfirmatoryDuplicates = ConfirmatoryDuplicates,
        Audits = Audits,
        FalsePositivesByLot = plan.Lots.Select((lot, index) => (lot.Name, Count: falsePositivesByLot[index]))
            .ToImmutableSortedDictionary(pair => pair.Name, pair => pair.Count, StringComparer.Ordinal),
        UnusableBySite = plan.Sites.Select((site, index) => (site.Name, Count: unusableBySite[index]))
            .ToImmutableSortedDictionary(pair => pair.Name, pair => pair.Count, StringComparer.Ordinal),
    };

    private void Run(in ScreeningRow row)
    {
        counted[row.Detectable ? 1 : 0, (int)row.Outcome]++;
        if (row.Outbreak) outbreak++;
        if (row.Outcome is Outcome.Inconclusive or Outcome.Invalid) unusableBySite[row.Site]++;
        if (row.Outcome == Outcome.Positive && !row.Detectable) falsePositivesByLot[row.Lot]++;
    }
}
