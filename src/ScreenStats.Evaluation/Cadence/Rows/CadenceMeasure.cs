namespace ScreenStats.Evaluation.Cadence.Rows;

/// <summary>What is said of a way of screening, over the days looked at and all people screened where it is no share or chance.</summary>
public enum CadenceMeasure
{
    /// <summary>Infectious days outside isolation, days off included, that are fewer than where nobody is screened; those of infections averted are among them.</summary>
    InfectiousDaysRemoved = 0,

    /// <summary>Their share of the infectious days outside isolation, days off included, where nobody is screened.</summary>
    ShareRemoved = 1,

    /// <summary>Share of infections whose person is away, found by a screen, before the infectious time begins.</summary>
    CaughtBeforeSpread = 2,

    /// <summary>Share of infections that a screen finds at all.</summary>
    Detection = 3,

    /// <summary>Infections that are fewer than where nobody is screened.</summary>
    InfectionsAverted = 4,

    /// <summary>Outbreaks of five or more cases from one infection brought in that are fewer than where nobody is screened.</summary>
    OutbreaksAvoided = 5,

    /// <summary>Screens taken.</summary>
    Screens = 6,

    /// <summary>Positive screens of people who are not infected.</summary>
    FalseAlarms = 7,

    /// <summary>The chance that a person who takes part and is not infected has one or more of them.</summary>
    AnyFalseAlarm = 8,

    /// <summary>Infections found, each counted once.</summary>
    TruePositives = 9,

    /// <summary>Share of the positives that are infected.</summary>
    PredictiveValue = 10,

    /// <summary>Working days lost to false alarms; where people leave on the screen, one that is never settled loses the whole isolation time.</summary>
    DaysLost = 11,

    /// <summary>Of the infectious days removed those of infections averted; the others are of infections that come all the same.</summary>
    DaysOfAverted = 12,

    /// <summary>Days that infected people are kept away, found by a screen or because of symptoms, each day once, that are more than where nobody is screened; below 0 where averted infections save more.</summary>
    DaysAwayAdded = 13,

    /// <summary>Screens that are inconclusive.</summary>
    Inconclusive = 14,

    /// <summary>Confirmatory tests that follow these, as in the data.</summary>
    InconclusiveTests = 15,

    /// <summary>Repeats that follow them on the same day, as in the data: screens that come on top.</summary>
    InconclusiveRepeats = 16,
}
