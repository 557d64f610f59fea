namespace ScreenStats.Synthesis.Planning;

/// <summary>One make of screening device: what is true of it, and what its paper says.</summary>
public sealed record SynthesisKit
{
    /// <summary>Name of the device.</summary>
    public required string Name { get; init; }

    /// <summary>True chance of a positive result on the best day of an infection, in [0, 1]; other days: times the day's detectability.</summary>
    public double PeakSensitivity { get; init; } = 0.85;

    /// <summary>True chance of a negative result in a person without detectable infection, in [0, 1].</summary>
    public double Specificity { get; init; } = 0.998;

    /// <summary>Runs that one kit holds, at least 1.</summary>
    public int RunsPerKit { get; init; } = 25;

    /// <summary>Earliest minute after collection at which the device may be read.</summary>
    public int ReadFromMinutes { get; init; } = 15;

    /// <summary>Latest minute after collection at which the device may be read.</summary>
    public int ReadToMinutes { get; init; } = 25;

    /// <summary>Sensitivity as stated in the program file, as counts ("178/221"); null: not stated.</summary>
    public string? StatedSensitivity { get; init; }

    /// <summary>Specificity as stated in the program file, as counts; null: not stated.</summary>
    public string? StatedSpecificity { get; init; }

    /// <summary>Where the stated accuracy comes from.</summary>
    public string Source { get; init; } = "fictional";
}
