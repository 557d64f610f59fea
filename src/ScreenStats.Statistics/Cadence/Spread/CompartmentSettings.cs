namespace ScreenStats.Statistics.Cadence.Spread;

/// <summary>A workplace, an infection and a way of screening, for <see cref="CompartmentModel"/>. Nothing here has a default that stands for a disease.</summary>
public sealed record CompartmentSettings
{
    /// <summary>The most cycles of one run.</summary>
    public const int MostCycles = 1_000_000;

    /// <summary>Uninfected people at the start, 0 or more.</summary>
    public required double Uninfected { get; init; }

    /// <summary>Infectious people without symptoms at the start, 0 or more; not counted as infections of the run. With the uninfected at least 1.</summary>
    public required double InfectiousAtStart { get; init; }

    /// <summary>Days, 0 or more.</summary>
    public required int Days { get; init; }

    /// <summary>Infections by one case while everybody else is uninfected and nobody is screened, 0 or more.</summary>
    public required double Reproduction { get; init; }

    /// <summary>Mean days from infection until infectious and detectable, one cycle or more.</summary>
    public required double DaysToInfectious { get; init; }

    /// <summary>Mean days from infectious to recovered, where no symptoms come; more than one cycle.</summary>
    public required double DaysToRecovery { get; init; }

    /// <summary>The share of the infected who ever get symptoms and isolate with them, in [0, 1).</summary>
    public required double SymptomShare { get; init; }

    /// <summary>The share of those with symptoms who die, in [0, 1).</summary>
    public double FatalShare { get; init; }

    /// <summary>People infected from outside at once, each time, 0 or more.</summary>
    public double Imports { get; init; }

    /// <summary>Days from one such time to the next, a whole number of cycles; the first is so long after the start.</summary>
    public double ImportEveryDays { get; init; } = 7;

    /// <summary>Days between the screens of a person, one cycle or more; null where nobody is screened.</summary>
    public double? EveryDays { get; init; }

    /// <summary>The chance that a screen of an infectious person is positive, in [0, 1].</summary>
    public double Sensitivity { get; init; }

    /// <summary>The chance that a screen of an uninfected person is negative, in [0, 1].</summary>
    public double Specificity { get; init; } = 1;

    /// <summary>Mean days that a false positive stays away until the confirmatory test brings the person back, one cycle or more.</summary>
    public double DaysToReturn { get; init; } = 1;

    /// <summary>Cycles to a day, 1 to 1,440; a positive is isolated one cycle after the screen.</summary>
    public int CyclesPerDay { get; init; } = 3;

    /// <summary>Among whom contacts fall.</summary>
    public ContactPool Contacts { get; init; } = ContactPool.Circulating;

    /// <summary>What a screen costs, 0 or more.</summary>
    public double CostPerScreen { get; init; }

    /// <summary>What the confirmatory test of a positive costs, 0 or more.</summary>
    public double CostPerConfirmation { get; init; }

    /// <summary>Infections by one case under the screening, among people none of whom had it: beta / (sigma + rho + tau Se), whatever the delay of a cycle.</summary>
    public double ReproductionUnderScreening => ContactRate / (Symptoms + Recovery + (Screening * Sensitivity));

    /// <summary>Rates of a cycle: recovery.</summary>
    internal double Recovery => 1 / (DaysToRecovery * CyclesPerDay);

    internal double Symptoms => Recovery * SymptomShare / (1 - SymptomShare);

    internal double Fatality => Recovery * FatalShare / (1 - FatalShare);

    internal double Onset => 1 / (DaysToInfectious * CyclesPerDay);

    internal double Return => 1 / (DaysToReturn * CyclesPerDay);

    internal double ContactRate => Reproduction * (Recovery + Symptoms);

    internal double Screening => EveryDays is { } every ? 1 / (every * CyclesPerDay) : 0;

    internal int Cycles => Days * CyclesPerDay;

    internal int ImportEveryCycles => (int)Math.Round(ImportEveryDays * CyclesPerDay);

    internal void Check()
    {
        Guard.Amount(Uninfected);
        Guard.Amount(InfectiousAtStart);
        if (!(Uninfected + InfectiousAtStart >= 1)) throw new ArgumentOutOfRangeException(nameof(Uninfected), Uninfected, "There must be one person at least.");
        if (CyclesPerDay is < 1 or > 1440) throw new ArgumentOutOfRangeException(nameof(CyclesPerDay), CyclesPerDay, "The cycles of a day must be a whole number from 1 to 1,440.");
        if (Days < 0 || Days > MostCycles / CyclesPerDay)
            throw new ArgumentOutOfRangeException(nameof(Days), Days, $"The days must be 0 or more, and their cycles at most {MostCycles}.");
        Guard.Amount(Reproduction);
        Cycle(DaysToInfectious, nameof(DaysToInfectious));
        Cycle(DaysToRecovery, nameof(DaysToRecovery));
        Cycle(DaysToReturn, nameof(DaysToReturn));
        if (EveryDays is { } every) Cycle(every, nameof(EveryDays));
        Share(SymptomShare, nameof(SymptomShare));
        Share(FatalShare, nameof(FatalShare));
        if (Recovery + Symptoms > 1)
            throw new ArgumentOutOfRangeException(nameof(SymptomShare), SymptomShare, "With these days to recovery so many would leave within one cycle that nobody is left: take more cycles to a day.");
        if (Recovery + Fatality > 1)
            throw new ArgumentOutOfRangeException(nameof(FatalShare), FatalShare, "With these days to recovery so many would leave within one cycle that nobody is left: take more cycles to a day.");
        Guard.Amount(Imports);
        var cycles = ImportEveryDays * CyclesPerDay;
        if (!(cycles is >= 1 - 1e-9 and <= 1e9) || Math.Abs(cycles - Math.Round(cycles)) > 1e-9)
            throw new ArgumentOutOfRangeException(nameof(ImportEveryDays), ImportEveryDays, "The days between imports must be a whole number of cycles, one or more.");
        Guard.Probability(Sensitivity);
        Guard.Probability(Specificity);
        Guard.Amount(CostPerScreen);
        Guard.Amount(CostPerConfirmation);
        if (!Enum.IsDefined(Contacts)) throw new ArgumentOutOfRangeException(nameof(Contacts), Contacts, "Not a pool of contacts this library knows.");
    }

    private void Cycle(double days, string name)
    {
        if (!(days * CyclesPerDay >= 1 - 1e-9 && days <= 1e9))
            throw new ArgumentOutOfRangeException(name, days, "These days must be one cycle or more, and at most a billion; for fewer take more cycles to a day.");
    }

    private static void Share(double share, string name)
    {
        if (!(share is >= 0 and < 1)) throw new ArgumentOutOfRangeException(name, share, "This share must be 0 or more and below 1.");
    }
}
