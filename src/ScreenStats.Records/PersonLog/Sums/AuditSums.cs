using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Scanning;

namespace ScreenStats.Records.PersonLog.Sums;

/// <summary>Sums over people of the products of their totals by sampling stratum. One for each thread, and only where there are audits.</summary>
internal sealed class AuditSums(AuditStrata strata, int[] stratumOfLabel, int[] stratumOfShape)
{
    private const int Totals = 8;

    // By stratum (0 for runs of none) and total; a person's own are cleared after each.
    private readonly long[] totals = new long[(strata.Names.Length + 1) * Totals];
    private readonly List<int> present = [];
    private readonly List<(int From, int To)> moved = [];
    private readonly CountTable products = new(64);

    public AuditStrata Strata => strata;

    /// <summary>Audited runs that do not belong to the stratum that their specimen names.</summary>
    public long Misplaced { get; private set; }

    /// <summary>An audited run of the person at hand, before <see cref="EndPerson"/>.</summary>
    public void AddAudited(int code, int label, bool missed)
    {
        var stratum = stratumOfLabel[label];
        Add(stratum, missed ? AuditTotal.Missed : AuditTotal.Agreed);
        if (strata.Stated(stratum) is not null || stratumOfShape[code] == stratum) return;
        Misplaced++;
        moved.Add((stratumOfShape[code], stratum));
    }

    /// <summary>Adds the person whose audited runs were added before.</summary>
    /// <param name="runs">Counted runs.</param>
    /// <param name="shapes">The shapes behind their codes.</param>
    /// <param name="negatives">All negative runs by stratum, where the runs are not all of the person's; else null.</param>
    public void EndPerson(ReadOnlySpan<CountedRun> runs, ShapeInfo[] shapes, IReadOnlyList<(int Stratum, int Negatives)>? negatives = null)
    {
        if (negatives is not null)
        {
            foreach (var (stratum, count) in negatives) Add(stratum - 1, AuditTotal.Negatives, count);
        }

        foreach (ref readonly var run in runs)
        {
            var outcome = shapes[run.Code].Outcome;
            var stratum = stratumOfShape[run.Code];
            if (outcome == Outcome.Negative)
            {
                if (negatives is null) Add(stratum, AuditTotal.Negatives);
            }
            else if (outcome == Outcome.Positive)
            {
                Add(stratum, AuditTotal.Positives);
                if (run.FollowUp == FollowUp.Confirmed) Add(stratum, AuditTotal.Confirmed);
                if (run.FollowUp == FollowUp.Refuted) Add(stratum, AuditTotal.Refuted);
            }
        }

        // A run stands as a negative where it stands as an audited one, so that no stratum has more audited runs than runs.
        foreach (var (from, to) in moved)
        {
            totals[At(from, AuditTotal.Negatives)]--;
            Add(to, AuditTotal.Negatives);
        }

        moved.Clear();
        if (present.Count == 0) return;
        totals[(int)AuditTotal.Persons] = 1;
        present.Add((int)AuditTotal.Persons);
        for (var i = 0; i < present.Count; i++)
        {
            for (var j = i; j < present.Count; j++)
            {
                var (one, other) = (Math.Min(present[i], present[j]), Math.Max(present[i], present[j]));
                products.Add(((ulong)(uint)one << 32) | (uint)other, totals[one] * totals[other]);
            }
        }

        foreach (var at in present) totals[at] = 0;
        present.Clear();
    }

    /// <summary>Adds so many people with negative runs alone, summed elsewhere, or takes them off.</summary>
    /// <param name="negatives">Negative runs of each by stratum, 0 for none.</param>
    /// <param name="people">How many.</param>
    public void AddPeople(IReadOnlyList<(int Stratum, int Negatives)> negatives, long people)
    {
        products.Add((ulong)AuditTotal.Persons << 32 | (ulong)AuditTotal.Persons, people);
        for (var i = 0; i < negatives.Count; i++)
        {
            var at = (uint)At(negatives[i].Stratum - 1, AuditTotal.Negatives);
            products.Add(((ulong)AuditTotal.Persons << 32) | at, people * negatives[i].Negatives);
            for (var j = i; j < negatives.Count; j++)
            {
                var other = (uint)At(negatives[j].Stratum - 1, AuditTotal.Negatives);
                products.Add(((ulong)Math.Min(at, other) << 32) | Math.Max(at, other), people * negatives[i].Negatives * negatives[j].Negatives);
            }
        }
    }

    public void Add(AuditSums other)
    {
        products.AddAll(other.products);
        Misplaced += other.Misplaced;
    }

    public ImmutableArray<AuditProductCell> Products()
    {
        var (keys, sums) = products.ToArrays();
        return [.. keys.Select((key, at) =>
        {
            var (one, other) = (Of((int)(key >> 32)), Of((int)(uint)key));
            var order = string.CompareOrdinal(one.Stratum, other.Stratum);
            if (order > 0 || (order == 0 && one.Total > other.Total)) (one, other) = (other, one);
            return new AuditProductCell(one.Stratum, one.Total, other.Stratum, other.Total, sums[at]);
        })];
    }

    /// <summary>The strata with their negative runs.</summary>
    /// <param name="cells">The products of all people.</param>
    public ImmutableArray<AuditStratumCell> Cells(ImmutableArray<AuditProductCell> cells)
    {
        var counted = cells.Where(cell => cell is { Total: AuditTotal.Persons, OtherTotal: AuditTotal.Negatives })
            .ToDictionary(cell => cell.OtherStratum, cell => cell.Products, StringComparer.Ordinal);
        return [.. strata.Names.Select((name, number) =>
            new AuditStratumCell(name, strata.Origins[number], strata.Stated(number) ?? counted.GetValueOrDefault(name)))];
    }

    private (string Stratum, AuditTotal Total) Of(int at) => (at < Totals ? "" : strata.Names[(at / Totals) - 1], (AuditTotal)(at % Totals));

    private void Add(int stratum, AuditTotal total, int count = 1)
    {
        var at = At(stratum, total);
        if (totals[at] == 0 && !present.Contains(at)) present.Add(at);
        totals[at] += count;
    }

    private static int At(int stratum, AuditTotal total) => ((stratum + 1) * Totals) + (int)total;
}
