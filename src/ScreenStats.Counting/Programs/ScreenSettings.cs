using System.Collections.Immutable;

namespace ScreenStats.Counting.Programs;

/// <summary>One screening device (a kit's make), as its maker or a study states it.</summary>
public sealed record ScreenSettings
{
    /// <summary>Name of the device.</summary>
    public string Name { get; init; } = "";

    /// <summary>Patterns (* and ?) of the lots of this device; empty: every lot that no other device claims.</summary>
    public ImmutableArray<string> Lots { get; init; } = [];

    /// <summary>Stated sensitivity; null where not stated.</summary>
    public StatedAccuracy? Sensitivity { get; init; }

    /// <summary>Stated specificity; null where not stated.</summary>
    public StatedAccuracy? Specificity { get; init; }

    /// <summary>Where the accuracy is stated.</summary>
    public string Source { get; init; } = "";

    /// <summary>Earliest minute after collection at which the device may be read; null where not stated.</summary>
    public int? ReadFromMinutes { get; init; }

    /// <summary>Latest minute after collection at which the device may be read; null where not stated.</summary>
    public int? ReadToMinutes { get; init; }

    /// <summary>Runs that one kit holds; null where not stated.</summary>
    public int? RunsPerKit { get; init; }
}
