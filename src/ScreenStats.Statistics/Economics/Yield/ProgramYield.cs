using ScreenStats.Statistics.Economics.Turning;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Economics.Yield;

/// <summary>What a program found, for each screen and each positive, from four counts.</summary>
/// <remarks>
/// "Refuted" is the confirmatory test's word. The share confirmed of those followed up stands between two bounds that need no assumption about the others: all of them refuted, all of them confirmed.
/// Limits are Wilson's and take screens to be independent. Source: definitions.
/// </remarks>
public sealed record ProgramYield
{
    /// <summary>Makes the yield.</summary>
    /// <param name="screens">Screens, at least the positives.</param>
    /// <param name="positives">Positive screens, at least those followed up.</param>
    /// <param name="confirmed">Positives that the confirmatory test confirmed, 0 or more.</param>
    /// <param name="refuted">Positives that it refuted, 0 or more.</param>
    /// <param name="confidence">The confidence of intervals, in (0, 1).</param>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    public ProgramYield(long screens, long positives, long confirmed, long refuted, double confidence = 0.95)
    {
        Guard.Confidence(confidence);
        Guard.NotNegative(confirmed);
        Guard.NotNegative(refuted);
        if (positives < confirmed || positives - confirmed < refuted)
            throw new ArgumentOutOfRangeException(nameof(positives), positives, "The number of positives must not be below that of those followed up.");
        if (screens < positives) throw new ArgumentOutOfRangeException(nameof(screens), screens, "The number of screens must not be below that of the positives.");
        Screens = screens;
        Positives = positives;
        Confirmed = confirmed;
        Refuted = refuted;
        Confidence = confidence;
    }

    /// <summary>Screens.</summary>
    public long Screens { get; }

    /// <summary>Positive screens.</summary>
    public long Positives { get; }

    /// <summary>Positives that were confirmed.</summary>
    public long Confirmed { get; }

    /// <summary>Positives that were refuted.</summary>
    public long Refuted { get; }

    /// <summary>The confidence of intervals.</summary>
    public double Confidence { get; }

    /// <summary>Positives of all screens.</summary>
    public ProportionEstimate Positivity => ProportionInterval.Wilson(Positives, Screens, Confidence);

    /// <summary>Those followed up of all positives.</summary>
    public ProportionEstimate FollowThrough => ProportionInterval.Wilson(Confirmed + Refuted, Positives, Confidence);

    /// <summary>Those confirmed of those followed up.</summary>
    public ProportionEstimate ConfirmedShare => ProportionInterval.Wilson(Confirmed, Confirmed + Refuted, Confidence);

    /// <summary>The share confirmed if all not followed up had been refuted, and if all had been confirmed; null without positives.</summary>
    public Interval? ConfirmedShareBounds => Positives == 0 ? null : new Interval((double)Confirmed / Positives, (double)(Positives - Refuted) / Positives);

    /// <summary>Those confirmed of all screens.</summary>
    public ProportionEstimate ConfirmedRate => ProportionInterval.Wilson(Confirmed, Screens, Confidence);

    /// <summary>Those refuted of all screens.</summary>
    public ProportionEstimate RefutedRate => ProportionInterval.Wilson(Refuted, Screens, Confidence);

    /// <summary>Screens for each one confirmed.</summary>
    public Estimate ScreensPerConfirmed => NumberNeeded.PerCase(Confirmed, Screens, Confidence);

    /// <summary>Screens for each one refuted.</summary>
    public Estimate ScreensPerRefuted => NumberNeeded.PerCase(Refuted, Screens, Confidence);
}
