using System.Collections.Immutable;

namespace ScreenStats.Synthesis.Planning;

/// <summary>
/// How infections arise and how well they can be seen. The incidence is a background plus a wave that rises and falls in
/// straight lines: no function whose last bit depends on the machine.
/// </summary>
public sealed record SynthesisInfection
{
    /// <summary>Infections per person-day outside the wave, in [0, 1).</summary>
    public double BackgroundIncidence { get; init; } = 0.0002;

    /// <summary>Infections per person-day added at the top of the wave, in [0, 1).</summary>
    public double WaveIncidence { get; init; }

    /// <summary>Day of the top of the wave; null: no wave.</summary>
    public DateOnly? WavePeak { get; init; }

    /// <summary>Days from the foot of the wave to its top, at least 1.</summary>
    public int WaveHalfWidthDays { get; init; } = 35;

    /// <summary>First day after infection on which the infection is detectable, at least 1.</summary>
    public int DetectableFromDay { get; init; } = 2;

    /// <summary>
    /// Detectability by a screen on each detectable day, as a factor in [0, 1] of the device's peak sensitivity. Its length
    /// is the length of the detectable window. "Detectable" is what the confirmatory test is meant to find.
    /// </summary>
    public ImmutableArray<double> DetectabilityByDay { get; init; } = [0.35, 0.8, 1, 1, 0.95, 0.9, 0.75, 0.6, 0.45, 0.3, 0.2];

    /// <summary>Share of infections with symptoms, in [0, 1].</summary>
    public double SymptomaticShare { get; init; } = 0.4;

    /// <summary>Days from infection to symptoms, at least 1.</summary>
    public int SymptomDay { get; init; } = 4;

    /// <summary>Share of those with symptoms who have a specimen of their own (reason other), in [0, 1].</summary>
    public double SymptomaticSpecimenShare { get; init; } = 0.5;

    /// <summary>Share of those with symptoms who come and are run as symptomatic, in [0, 1].</summary>
    public double SymptomaticRunShare { get; init; } = 0.3;

    /// <summary>Share of runs on people whose symptoms have another cause, in [0, 1].</summary>
    public double OtherSymptomsShare { get; init; } = 0.001;

    /// <summary>Share of runs on contacts of a case, in [0, 1].</summary>
    public double ExposedShare { get; init; } = 0.004;
}
