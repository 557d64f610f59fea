namespace ScreenStats.Statistics.Cadence.Intervals;

/// <summary>When an infection can be detected and when it is passed on, in days since infection; the same for everybody.</summary>
public readonly record struct InfectionWindows
{
    /// <summary>Makes the two windows.</summary>
    /// <param name="detectableFrom">Days since infection from which a screen can be positive, 0 or more.</param>
    /// <param name="detectableTo">Days since infection until which it can, not before <paramref name="detectableFrom"/>.</param>
    /// <param name="infectiousFrom">Days since infection from which the person passes it on, 0 or more.</param>
    /// <param name="infectiousTo">Days since infection until which the person does, not before <paramref name="infectiousFrom"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside 0 to a billion days, or an end before its beginning.</exception>
    public InfectionWindows(double detectableFrom, double detectableTo, double infectiousFrom, double infectiousTo)
    {
        Guard.Days(detectableFrom);
        Guard.Days(detectableTo);
        Guard.Days(infectiousFrom);
        Guard.Days(infectiousTo);
        if (detectableTo < detectableFrom)
            throw new ArgumentOutOfRangeException(nameof(detectableTo), detectableTo, "The detectable window must not end before it begins.");
        if (infectiousTo < infectiousFrom)
            throw new ArgumentOutOfRangeException(nameof(infectiousTo), infectiousTo, "The infectious time must not end before it begins.");
        DetectableFrom = detectableFrom;
        DetectableTo = detectableTo;
        InfectiousFrom = infectiousFrom;
        InfectiousTo = infectiousTo;
    }

    /// <summary>Days since infection from which a screen can be positive.</summary>
    public double DetectableFrom { get; }

    /// <summary>Days since infection until which a screen can be positive.</summary>
    public double DetectableTo { get; }

    /// <summary>Days since infection from which the person passes it on.</summary>
    public double InfectiousFrom { get; }

    /// <summary>Days since infection until which the person passes it on.</summary>
    public double InfectiousTo { get; }

    /// <summary>The length of the detectable window in days.</summary>
    public double DetectableDays => DetectableTo - DetectableFrom;

    /// <summary>The length of the infectious time in days.</summary>
    public double InfectiousDays => InfectiousTo - InfectiousFrom;

    /// <summary>One window for both: detectable exactly while infectious.</summary>
    /// <param name="days">Its length in days, from infection on.</param>
    /// <returns>The windows.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not from 0 to a billion days.</exception>
    public static InfectionWindows Same(double days)
    {
        Guard.Days(days);
        return new InfectionWindows(0, days, 0, days);
    }
}
