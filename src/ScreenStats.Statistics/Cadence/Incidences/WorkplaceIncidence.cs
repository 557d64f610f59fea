using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Standardisation;

namespace ScreenStats.Statistics.Cadence.Incidences;

/// <summary>How many people become infected in a day, from the cases that a program found under the gaps it really had.</summary>
/// <remarks>
/// <para>Cases over person-days is not the incidence: a case may have been infected before the first screen, and many infections pass between
/// screens. Nor is the share positive: that is a prevalence. With incidence λ the cases are Poisson with mean λ E φ. φ is the chance that a positive is
/// followed up. E is the number of screens times the mean, over the age x of an infection, of the chance that a screen finds it and no earlier one did:
/// the integral of p(x) Q(x) U(x); p: chance that a screen is positive; Q: not isolated by symptoms before; U: not found by an earlier screen, from the
/// screen before back through the gaps (as if each were drawn from all gaps; a screen is a person's first with the share that first screens have of all, and then
/// finds who is infected). Repeated misses: the mean is taken over people. λ = cases/(E φ), limits exact (Garwood) given E and φ.</para>
/// <para>Taken as given: the same incidence on all days, also before the first screen; infections at any time of the day; the rate is per person-day of everybody screened,
/// who cannot be infected (again) included; people take screens whether or not they are infected, until symptoms isolate them. Cases of one outbreak come together, so that the limits are
/// too narrow where much spreads inside. Gaps that follow each other in a pattern, and people who differ in how often they come, change E little (see the
/// studies named in the tests). The uncertainty of the course, of its sensitivity and of φ is not in the limits: draw them and call again.</para>
/// <para>Source: derived as a renewal equation; checked against every history written out and against simulated programs.</para>
/// </remarks>
public static class WorkplaceIncidence
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "cases-under-real-gaps";

    /// <summary>The name of the method for cases over person-days.</summary>
    public const string FoundMethod = "found-per-person-day";

    /// <summary>Infections per person-day.</summary>
    /// <param name="cases">Cases found, people not runs, at first screens too; 0 or more.</param>
    /// <param name="people">People whose first screen is among the screens, 0 or more.</param>
    /// <param name="gaps">Days between a person's consecutive screens, with counts; a second run on one day is no screen of its own.</param>
    /// <param name="course">The chance that a screen is positive by days since infection, and symptoms.</param>
    /// <param name="rules">
    /// How misses repeat in a person. Its follow-through is for people who go on being screened when a positive is not followed up; delays do not
    /// matter here.
    /// </param>
    /// <param name="followThrough">
    /// The chance that a positive is followed up, in [0, 1], where nobody comes back for another screen of the same infection after one that is not.
    /// </param>
    /// <param name="confidence">Confidence of the limits, in (0, 1).</param>
    /// <returns>
    /// The incidence with its limits, and the chance that an infection is found. No cases: 0 with an upper limit. Undefined without a screen, where no screen can
    /// be positive, and where none is followed up.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static IncidenceEstimate Of(
        long cases, long people, ImmutableArray<ObservedGap> gaps, InfectionCourse course, ScreeningRules rules, double followThrough = 1, double confidence = 0.95)
    {
        Guard.NotNegative(cases);
        Guard.NotNegative(people);
        if (gaps.IsDefault) throw new ArgumentNullException(nameof(gaps));
        ArgumentNullException.ThrowIfNull(course);
        ArgumentNullException.ThrowIfNull(rules);
        rules.Check();
        Guard.Probability(followThrough);
        Guard.Confidence(confidence);
        var shares = new GapShares(gaps, ScreenExposure.Days(course));
        var screens = people + shares.Total;
        double first = 0, exposure = 0, endless = 0;
        if (course.DetectableTo > course.DetectableFrom)
        {
            var sum = new ScreenExposure(course, rules, shares);
            first = sum.Of(1);
            exposure = shares.Total == 0 ? people * first : screens * sum.Of(people / screens);
            endless = shares.Total == 0 ? 0 : shares.Total * sum.Of(0);
        }

        var detection = shares.TotalDays == 0 ? Estimate.Undefined(UndefinedReason.NoExposure) : Estimate.Point(Math.Min(1, endless / shares.TotalDays), Method);
        return new IncidenceEstimate(
            cases, people, screens, shares.TotalDays, followThrough, first, exposure, detection, Incidence(cases, screens, exposure, rules, followThrough, confidence));
    }

    /// <summary>Cases found per person-day at risk: what can be said where no course of the infection is known.</summary>
    /// <param name="cases">Cases found at screens that were not a person's first, 0 or more.</param>
    /// <param name="gaps">Days between a person's consecutive screens, with counts.</param>
    /// <param name="confidence">Confidence of the limits, in (0, 1).</param>
    /// <returns>
    /// Cases over the days of the gaps with exact limits. The incidence is higher by all infections that pass unfound; it can only be lower by those that began before
    /// the first screen and were missed by it. Undefined without person-days.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate FoundPerPersonDay(long cases, ImmutableArray<ObservedGap> gaps, double confidence = 0.95)
    {
        Guard.NotNegative(cases);
        if (gaps.IsDefault) throw new ArgumentNullException(nameof(gaps));
        Guard.Confidence(confidence);
        var days = gaps.Sum(gap => (double)gap.Days * gap.Count);
        return days == 0 ? Estimate.Undefined(UndefinedReason.NoExposure) : Rate(cases, days, FoundMethod, confidence);
    }

    private static Estimate Incidence(long cases, double screens, double exposure, ScreeningRules rules, double followThrough, double confidence)
    {
        if (screens == 0) return Estimate.Undefined(UndefinedReason.NoExposure);
        if (followThrough == 0 || rules.FollowThrough == 0) return Estimate.Undefined(UndefinedReason.NeverFollowedUp);
        return exposure == 0 ? Estimate.Undefined(UndefinedReason.NeverDetected) : Rate(cases, exposure * followThrough, Method, confidence);
    }

    /// <summary>A rate with exact limits; where so little could be found that they leave what can be computed, none.</summary>
    private static Estimate Rate(long cases, double days, string method, double confidence)
    {
        var limits = PoissonInterval.Exact(cases, confidence);
        if (!(limits.Upper / days <= 1e15)) return Estimate.Undefined(UndefinedReason.TooLarge);
        var value = cases / days;
        return Estimate.Of(value, new Interval(Math.Min(limits.Lower / days, value), Math.Max(limits.Upper / days, value)), method, confidence);
    }
}
