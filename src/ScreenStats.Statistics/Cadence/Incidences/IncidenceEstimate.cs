namespace ScreenStats.Statistics.Cadence.Incidences;

/// <summary>How many people become infected in a day, from the cases that screening found.</summary>
public sealed record IncidenceEstimate
{
    internal IncidenceEstimate(
        long cases, long people, double screens, double personDays, double followThrough, double firstScreenDays, double exposure,
        Estimate detectionProbability, Estimate incidence)
    {
        Cases = cases;
        People = people;
        Screens = screens;
        PersonDays = personDays;
        FollowThrough = followThrough;
        FirstScreenDays = firstScreenDays;
        Exposure = exposure;
        DetectionProbability = detectionProbability;
        Incidence = incidence;
    }

    /// <summary>Cases found, people not runs.</summary>
    public long Cases { get; }

    /// <summary>People whose first screen is among the screens.</summary>
    public long People { get; }

    /// <summary>Screens: first ones and one at the end of each gap.</summary>
    public double Screens { get; }

    /// <summary>Person-days at risk under screening: the days of all gaps.</summary>
    public double PersonDays { get; }

    /// <summary>The chance that a positive is followed up, so that it becomes a case.</summary>
    public double FollowThrough { get; }

    /// <summary>Days' worth of infections that a screen finds where none came before: a first screen finds who is infected then.</summary>
    public double FirstScreenDays { get; }

    /// <summary>Days' worth of infections that all screens find: cases are expected to be incidence times this times the follow-through.</summary>
    public double Exposure { get; }

    /// <summary>
    /// The chance that an infection is found at all under the real gaps, in a routine that goes on; undefined without person-days at risk.
    /// </summary>
    public Estimate DetectionProbability { get; }

    /// <summary>Infections per person-day with its limits; undefined where nothing could have been found.</summary>
    public Estimate Incidence { get; }
}
