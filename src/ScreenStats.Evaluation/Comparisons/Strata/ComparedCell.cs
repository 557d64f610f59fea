namespace ScreenStats.Evaluation.Comparisons.Strata;

/// <summary>Counted runs of one level, site and ISO week with one device (or what else is adjusted for), by what was seen. Numbers stand for names.</summary>
internal sealed class ComparedCell(int level, int site, int week, int first, int second, bool refutedLot, bool invalidLot, bool outbreak)
{
    public int Level { get; } = level;

    public int Site { get; } = site;

    /// <summary>Weeks since the first of the calendar, which was a Monday.</summary>
    public int Week { get; } = week;

    /// <summary>The first thing beside the period that is adjusted for.</summary>
    public int First { get; } = first;

    /// <summary>The second.</summary>
    public int Second { get; } = second;

    /// <summary>Whether the lot is flagged for refuted positives.</summary>
    public bool RefutedLot { get; } = refutedLot;

    /// <summary>Whether the lot is flagged for unusable runs.</summary>
    public bool InvalidLot { get; } = invalidLot;

    public bool Outbreak { get; } = outbreak;

    public long Runs { get; set; }

    public long Tests { get; set; }

    public long Positives { get; set; }

    public long Conclusive { get; set; }

    public long Refuted { get; set; }

    /// <summary>Trials and events of a measure.</summary>
    public (long Trials, long Events) Of(Rows.ComparisonMeasure measure) => measure switch
    {
        Rows.ComparisonMeasure.Positivity => (Tests, Positives),
        Rows.ComparisonMeasure.InvalidRuns => (Runs, Runs - Tests),
        _ => (Conclusive, Refuted),
    };

    /// <summary>Whether a basis leaves the runs out.</summary>
    public bool IsLeftOut(Rows.ComparisonMeasure measure, Rows.ComparisonBasis basis) =>
        (basis is Rows.ComparisonBasis.Routine or Rows.ComparisonBasis.RoutineWithoutFlaggedLots && Outbreak)
        || (basis is Rows.ComparisonBasis.WithoutFlaggedLots or Rows.ComparisonBasis.RoutineWithoutFlaggedLots
            && (measure == Rows.ComparisonMeasure.InvalidRuns ? InvalidLot : RefutedLot));
}
