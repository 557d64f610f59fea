namespace ScreenStats.Counting.Programs;

/// <summary>Accuracy of the confirmatory test.</summary>
public sealed record ConfirmatoryTestSettings
{
    /// <summary>Sensitivity; null where not stated.</summary>
    public StatedAccuracy? Sensitivity { get; init; }

    /// <summary>Specificity; null where not stated.</summary>
    public StatedAccuracy? Specificity { get; init; }

    /// <summary>Where the accuracy is stated.</summary>
    public string Source { get; init; } = "";
}
