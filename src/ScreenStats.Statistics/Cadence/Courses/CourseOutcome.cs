namespace ScreenStats.Statistics.Cadence.Courses;

/// <summary>What screening finds of an infection and takes away of what it passes on, on average over infections, found or not.</summary>
public sealed record CourseOutcome
{
    /// <summary>The name of the method in tables, of figures by <see cref="CourseYield"/>.</summary>
    public const string ByQuadrature = "course-quadrature";

    /// <summary>The name of the method in tables, of figures from simulated viral loads.</summary>
    public const string BySimulation = "viral-load-simulation";

    internal CourseOutcome(
        string method, double detected, double screens, double days, double removed, double bySymptoms, double byScreening, double before, double? beforeOnset, (double All, double BySymptoms)? away)
    {
        Method = method;
        DetectionProbability = Math.Clamp(detected, 0, 1);
        ScreensTaken = Math.Max(screens, 0);
        InfectiousDays = days;
        FractionRemoved = Share(removed);
        FractionRemovedBySymptoms = Share(bySymptoms);
        FractionRemovedByScreening = Share(byScreening);
        CaughtBeforeInfectious = Share(before);
        FoundBeforeOnset = beforeOnset is { } share ? Estimate.Point(Math.Clamp(share, 0, 1), method) : Estimate.Undefined(UndefinedReason.NoSymptoms);
        DaysAway = away is { } known ? Estimate.Point(Math.Max(known.All, 0), method) : Estimate.Undefined(UndefinedReason.NoIsolationTime);
        DaysAwayBySymptoms = away is { } own ? Estimate.Point(Math.Max(own.BySymptoms, 0), method) : Estimate.Undefined(UndefinedReason.NoIsolationTime);
        InfectiousDaysRemoved = days * (FractionRemoved.Value ?? 0);
        InfectiousDaysRemovedBeyondSymptoms = Math.Max(InfectiousDaysRemoved - (days * (FractionRemovedBySymptoms.Value ?? 0)), 0);

        Estimate Share(double share) =>
            days > 0 ? Estimate.Point(Math.Clamp(share, 0, 1), method) : Estimate.Undefined(UndefinedReason.NoInfectiousTime);
    }

    /// <summary>What made the figures.</summary>
    public string Method { get; }

    /// <summary>The chance that a screen finds the infection and leads to isolation, before symptoms do, in [0, 1].</summary>
    public double DetectionProbability { get; }

    /// <summary>Screens taken while the infection can be detected, up to and with the one that finds it, before isolation because of symptoms.</summary>
    public double ScreensTaken { get; }

    /// <summary>Infectious days of one infection with nothing done: its infectiousness summed, over its highest value.</summary>
    public double InfectiousDays { get; }

    /// <summary>The share of what would be passed on that falls after isolation, by screens or by symptoms; undefined where nothing is passed on.</summary>
    public Estimate FractionRemoved { get; }

    /// <summary>The same share without any screen: by isolation because of symptoms alone.</summary>
    public Estimate FractionRemovedBySymptoms { get; }

    /// <summary>The same share by screens alone, were nobody to isolate because of symptoms.</summary>
    public Estimate FractionRemovedByScreening { get; }

    /// <summary>Infectious days that fall after isolation, by screens or by symptoms: their share times <see cref="InfectiousDays"/>.</summary>
    public double InfectiousDaysRemoved { get; }

    /// <summary>What screens add to that: less the days that isolation because of symptoms takes away without them.</summary>
    public double InfectiousDaysRemovedBeyondSymptoms { get; }

    /// <summary>The chance that the person is isolated before anything is passed on, by screens or by symptoms; undefined where nothing is.</summary>
    public Estimate CaughtBeforeInfectious { get; }

    /// <summary>Days that the person is away, by a screen, by symptoms or by both, each day counted once; undefined where it is not stated how long that is.</summary>
    public Estimate DaysAway { get; }

    /// <summary>The same without any screen: isolation days of those whom symptoms isolate; undefined likewise.</summary>
    public Estimate DaysAwayBySymptoms { get; }

    /// <summary>Of people who get symptoms, the share found and isolated by a screen before the onset; undefined where nobody gets symptoms.</summary>
    public Estimate FoundBeforeOnset { get; }
}
