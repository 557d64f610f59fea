namespace ScreenStats.Statistics.Cadence.Answers;

/// <summary>What is known of how an infection spreads inside a workplace.</summary>
public sealed record SpreadQuestion
{
    /// <summary>Infections inside that one case causes on average where nobody is screened, 0 to 1e6; those kept away by symptoms are not among them, nor those who are immune at present where <see cref="ImmunityDays"/> says so.</summary>
    public required double Reproduction { get; init; }

    /// <summary>Dispersion of that number, above 0: the smaller, the fewer cases cause most of the spread; null where it is Poisson.</summary>
    public double? Dispersion { get; init; }

    /// <summary>The share of new infections that is brought in from outside, in [0, 1].</summary>
    public double BroughtIn { get; init; } = 1;

    /// <summary>Days for which infections are counted, 1 to 3,660.</summary>
    public int Days { get; init; } = 91;

    /// <summary>Days after which someone infected can be infected again, from 1 to 36,600; null where nobody is within the days. Those infected in as many days before the first are immune too; without it nobody is at the beginning.</summary>
    public double? ImmunityDays { get; init; }

    internal void Check()
    {
        Guard.Amount(Reproduction, nameof(Reproduction));
        Guard.Probability(BroughtIn, nameof(BroughtIn));
        if (Reproduction > 1e6) throw new ArgumentOutOfRangeException(nameof(Reproduction), Reproduction, "The infections by one case must be a number from 0 to a million.");
        if (Dispersion is { } k && !(k is >= 1e-12 and <= 1e15))
            throw new ArgumentOutOfRangeException(nameof(Dispersion), Dispersion, "The dispersion must be a number from 1e-12 to 1e15, or none for Poisson.");
        if (ImmunityDays is not (null or (>= 1 and <= 36_600)))
            throw new ArgumentOutOfRangeException(nameof(ImmunityDays), ImmunityDays, "The days of immunity must be a number from 1 to 36,600, or none where it lasts.");
        if (Days is < 1 or > 3660) throw new ArgumentOutOfRangeException(nameof(Days), Days, "The days must be a whole number from 1 to 3,660.");
    }
}
