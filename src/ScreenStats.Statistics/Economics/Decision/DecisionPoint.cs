namespace ScreenStats.Statistics.Economics.Decision;

/// <summary>The three policies at one threshold, in true positives for each screen.</summary>
public sealed record DecisionPoint
{
    internal DecisionPoint(double threshold, Estimate screen, Estimate treatAll)
    {
        Threshold = threshold;
        Screen = screen;
        TreatAll = treatAll;
    }

    /// <summary>The chance of infection from which a person would be treated as infected: its odds are the harm of a false positive over the gain of a true one.</summary>
    public double Threshold { get; }

    /// <summary>Net benefit of treating those whose screen is positive.</summary>
    public Estimate Screen { get; }

    /// <summary>Net benefit of treating everyone; undefined where the infected are not known.</summary>
    public Estimate TreatAll { get; }

    /// <summary>The policy with the highest net benefit, that of treating no one being 0, among those that are defined; of equal ones that which treats fewer.</summary>
    public DecisionPolicy Best => TreatAll.Value is { } all && all > 0 && !(Screen.Value >= all) ? DecisionPolicy.TreatAll
        : Screen.Value > 0 ? DecisionPolicy.Screen
        : DecisionPolicy.TreatNone;
}
