namespace ScreenStats.Testing.Programs;

/// <summary>What a drawn program is like: the truth that no analysis is told.</summary>
public sealed record DrawnPlan
{
    /// <summary>Lots, 1 or more.</summary>
    public required int Lots { get; init; }

    /// <summary>Runs, about: every person is tested once a week, so the number is that of people times weeks.</summary>
    public required int Runs { get; init; }

    /// <summary>Sites, 1 or more; the largest has about four times the people of the smallest.</summary>
    public required int Sites { get; init; }

    /// <summary>Weeks, 1 or more.</summary>
    public required int Weeks { get; init; }

    /// <summary>How many lots are in use at one time, about.</summary>
    public double LotsAtOnce { get; init; } = 3;

    /// <summary>Mean over sites of the chance that a valid test of a healthy person shows a test line.</summary>
    public double FalsePositiveRate { get; init; } = 0.004;

    /// <summary>Mean over sites of the chance that a run gives no valid result.</summary>
    public double UnusableRate { get; init; } = 0.02;

    /// <summary>Chance that a valid test finds a case.</summary>
    public double CaseRate { get; init; } = 0.002;

    /// <summary>Correlation of two runs of one person, for false positives and for unusable runs alike.</summary>
    public double PersonCorrelation { get; init; }

    /// <summary>Correlation of two runs at one site (rates of sites are beta variables), for both alike.</summary>
    public double SiteCorrelation { get; init; }

    /// <summary>The share of positives that are followed up, drawn for each site between these two.</summary>
    public (double Least, double Most) FollowThrough { get; init; } = (0.6, 0.98);

    /// <summary>The share of runs without a lot.</summary>
    public double WithoutLot { get; init; }

    /// <summary>What is wrong with one lot; null where every lot is sound.</summary>
    public LotFault? Fault { get; init; }

    /// <summary>
    /// A plan drawn between the ends that matter: 3 to 60 lots, 2,000 to 1,000,000 runs, 2 to 12 sites, 6 to 52 weeks; the first two plans are the
    /// smallest and the largest.
    /// </summary>
    public static DrawnPlan Draw(int number, RandomNumbers random)
    {
        var lots = number switch { 0 => 3, 1 => 60, _ => (int)Math.Round(random.Logarithmic(3, 60)) };
        var runs = number switch { 0 => 2_000, 1 => 1_000_000, _ => (int)random.Logarithmic(2_000, 1_000_000) };
        var size = Math.Log(runs / 2_000.0) / Math.Log(500);
        return new DrawnPlan
        {
            Lots = lots,
            Runs = runs,
            Sites = random.Whole(2, 4 + (int)(8 * size)),
            Weeks = random.Whole(6 + (int)(6 * size), 20 + (int)(32 * size)),
            LotsAtOnce = 2 + (2 * random.Next()),
            FalsePositiveRate = random.Logarithmic(0.001, 0.01),
            UnusableRate = random.Logarithmic(0.005, 0.04),
        };
    }
}
