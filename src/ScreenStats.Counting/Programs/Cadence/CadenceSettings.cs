using System.Collections.Immutable;

namespace ScreenStats.Counting.Programs.Cadence;

/// <summary>What the program file states for the question how often to screen. Null: not stated, and nothing is invented for it.</summary>
public sealed record CadenceSettings
{
    /// <summary>The options to compare, the least frequent first, by <see cref="CadenceOptionSettings.ScreensPerDay"/>; names are unique.</summary>
    public ImmutableArray<CadenceOptionSettings> Options { get; init; } = CadenceWords.Usual;

    /// <summary>True where the program file states options of its own.</summary>
    public bool OptionsStated { get; init; }

    /// <summary>What the program set out to do; one of the options where it is among them.</summary>
    public CadenceOptionSettings? Planned { get; init; }

    /// <summary>What was set out to do at some sites, where that differs between sites; elsewhere <see cref="Planned"/> holds.</summary>
    public ImmutableArray<SitePlanSettings> PlannedAt { get; init; } = [];

    /// <summary>The course of an infection.</summary>
    public CourseSettings? Course { get; init; }

    /// <summary>Days from a screen to its result acted upon, 0 to 366.</summary>
    public StatedRange? DelayDays { get; init; }

    /// <summary>Days from a screen to the confirmatory result acted upon, 0 to 366.</summary>
    public StatedRange? ConfirmatoryDelayDays { get; init; }

    /// <summary>On what a person is sent away.</summary>
    public IsolateOn IsolateOn { get; init; } = IsolateOn.Screen;

    /// <summary>Correlation of misses within a person (of the latent variable), at least 0 and below 1.</summary>
    public StatedRange? RepeatedMisses { get; init; }

    /// <summary>Share of due screens that are taken, in [0, 1].</summary>
    public StatedRange? Participation { get; init; }

    /// <summary>People screened, 1 or more.</summary>
    public long? People { get; init; }

    /// <summary>Days for which the outcomes are given, 1 to 3660.</summary>
    public int Days { get; init; } = 91;

    /// <summary>Infections per person-day, in [0, 1]; never a prevalence.</summary>
    public StatedRange? Incidence { get; init; }

    /// <summary>Infections inside that one case causes on average where nobody is screened, 0 to 100: among people of whom as many are immune as in the data, where <see cref="ImmunityDays"/> is stated, else nobody.</summary>
    public StatedRange? Reproduction { get; init; }

    /// <summary>Share of infections that are brought in from outside, in [0, 1].</summary>
    public StatedRange? BroughtIn { get; init; }

    /// <summary>Dispersion of the number of infections that one case causes: positive; small: a few cases cause most of them.</summary>
    public StatedRange? Dispersion { get; init; }

    /// <summary>Days after which someone infected can be infected again, 1 to 36,600; null: nobody is infected twice within the days looked at, and nobody is immune at their beginning. The days begin with those immune who were infected in as many days before, at the incidence of the data.</summary>
    public StatedRange? ImmunityDays { get; init; }

    /// <summary>Working days lost to one false alarm that is refuted, 0 to 366; one that is never settled loses the isolation time of the policy where people leave on the screen.</summary>
    public StatedRange? FalseAlarmDays { get; init; }

    /// <summary>Infectious days removed per 1,000 more screens below which a step is not worth it, 0 or more.</summary>
    public double? Worthwhile { get; init; }

    /// <summary>Sensitivity of one screen while the infection can be detected.</summary>
    public StatedAccuracy? Sensitivity { get; init; }

    /// <summary>Specificity of one screen.</summary>
    public StatedAccuracy? Specificity { get; init; }

    /// <summary>Random draws by which the uncertainty is carried, 2,000 to 100,000.</summary>
    public int Draws { get; init; } = 2000;

    /// <summary>Seed of the draws, 0 to 2147483647.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Where the figures are from that name no source of their own; empty where not stated.</summary>
    public string Source { get; init; } = "";

    /// <summary>What was set out to do at a site.</summary>
    /// <param name="site">Name of the site.</param>
    /// <returns>The first of <see cref="PlannedAt"/> that holds there, else <see cref="Planned"/>; null where nothing is stated.</returns>
    public CadenceOptionSettings? PlanAt(string site) => PlannedAt.FirstOrDefault(plan => plan.Holds(site))?.Option ?? Planned;
}
