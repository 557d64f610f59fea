using System.Collections.Immutable;

namespace ScreenStats.Statistics.Cadence.Spread;

/// <summary>What a run of <see cref="CompartmentModel"/> came to.</summary>
/// <param name="Settings">What it was run with.</param>
/// <param name="States">The states at the start and after each cycle.</param>
/// <param name="Imported">Infections brought in.</param>
/// <param name="Inside">Infections passed on inside.</param>
/// <param name="ImportsRefused">Imports for which no uninfected person was left.</param>
/// <param name="Screens">Screens taken.</param>
/// <param name="FalseAlarms">Uninfected people isolated for a positive screen.</param>
/// <param name="Found">Infected people isolated for a positive screen.</param>
public sealed record CompartmentCourse(
    CompartmentSettings Settings, ImmutableArray<CompartmentState> States, double Imported, double Inside, double ImportsRefused, double Screens, double FalseAlarms, double Found)
{
    /// <summary>Infections during the run, without those infected at its start.</summary>
    public double Infections => Imported + Inside;

    /// <summary>Those who died.</summary>
    public double Deaths => States[^1].Died;

    /// <summary>Person-days away from work for false positives.</summary>
    public double FalseAlarmDays => Sum(state => state.FalsePositives) / Settings.CyclesPerDay;

    /// <summary>People isolated, on average over the ends of the cycles; undefined where there is none.</summary>
    public Estimate MeanIsolated => Mean(state => state.Isolated);

    /// <summary>Of them those infected (found or with symptoms).</summary>
    public Estimate MeanIsolatedInfected => Mean(state => state.TruePositives + state.Symptomatic);

    /// <summary>Screens and confirmatory tests of all positives, at their costs.</summary>
    public double Cost => (Screens * Settings.CostPerScreen) + ((FalseAlarms + Found) * Settings.CostPerConfirmation);

    /// <summary>The cost by everybody present at the start.</summary>
    public double CostPerPerson => Cost / (Settings.Uninfected + Settings.InfectiousAtStart);

    /// <summary>What each infection costs that this course averts beyond another one, as one with less screening: the marginal, not the average, cost.</summary>
    /// <param name="other">The course to compare with.</param>
    /// <returns>The difference of the costs by the difference of the infections, negative where more is averted for less; undefined where no infection is averted.</returns>
    public Estimate CostPerInfectionAverted(CompartmentCourse other)
    {
        ArgumentNullException.ThrowIfNull(other);
        var averted = other.Infections - Infections;
        if (averted <= 0) return Estimate.Undefined(UndefinedReason.NoInfectionAverted);
        var cost = (Cost - other.Cost) / averted;
        return double.IsFinite(cost) ? Estimate.Point(cost, CompartmentModel.Method) : Estimate.Undefined(UndefinedReason.TooLarge);
    }

    private double Sum(Func<CompartmentState, double> count) => States.Skip(1).Sum(count);

    private Estimate Mean(Func<CompartmentState, double> count) => States.Length < 2
        ? Estimate.Undefined(UndefinedReason.NoExposure)
        : Estimate.Point(Sum(count) / (States.Length - 1), CompartmentModel.Method);
}
