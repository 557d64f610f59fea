namespace ScreenStats.Statistics;

/// <summary>Why a figure has no value (see <see cref="UndefinedReasons.Describe"/> for the words).</summary>
public enum UndefinedReason
{
    /// <summary>Nothing was counted, so there is no denominator.</summary>
    NoTrials,

    /// <summary>No event was seen, so nothing can be said about how events cluster.</summary>
    NoEvents,

    /// <summary>Everything counted was an event, so nothing can be said about how events cluster.</summary>
    OnlyEvents,

    /// <summary>Fewer than two clusters.</summary>
    FewerThanTwoClusters,

    /// <summary>The number of sites or site-weeks is below that from which they show how much they differ.</summary>
    TooFewGroups,

    /// <summary>Each cluster has one trial only.</summary>
    OneTrialInEachCluster,

    /// <summary>The clusters differ no more than chance forces them to, so no variance between them can be estimated.</summary>
    ClustersAllAlike,

    /// <summary>Sensitivity plus specificity is 1 or less.</summary>
    TestNoBetterThanChance,

    /// <summary>With these figures no positive result can occur.</summary>
    NoPositiveResultPossible,

    /// <summary>The sensitivity is 0, so no positive is real at any prevalence.</summary>
    NoTruePositivePossible,

    /// <summary>With these figures no negative result can occur.</summary>
    NoNegativeResultPossible,

    /// <summary>The specificity is 1 as counted, so a positive likelihood ratio has no upper bound.</summary>
    NoFalsePositives,

    /// <summary>The specificity is 1 as stated, so a positive likelihood ratio has no upper bound.</summary>
    SpecificityOfOne,

    /// <summary>The specificity is 0 as stated, so a negative likelihood ratio has no upper bound.</summary>
    SpecificityOfZero,

    /// <summary>The specificity is 0 as counted, so a negative likelihood ratio has no upper bound.</summary>
    NoTrueNegatives,

    /// <summary>Nobody with the condition was counted.</summary>
    NobodyWithTheCondition,

    /// <summary>Nobody without the condition was counted.</summary>
    NobodyWithoutTheCondition,

    /// <summary>No run was verified by a confirmatory test.</summary>
    NoVerifiedRuns,

    /// <summary>No positive run was verified by a confirmatory test.</summary>
    NoVerifiedPositives,

    /// <summary>No negative run was verified by an audit.</summary>
    NoVerifiedNegatives,

    /// <summary>No case was found and none was missed.</summary>
    NoCases,

    /// <summary>No stratum holds trials of both groups.</summary>
    NoSharedStratum,

    /// <summary>There is no value to take a percentile of.</summary>
    NoValues,

    /// <summary>The figure is 0 or 1 as counted, so its usual standard error would be 0.</summary>
    ValueAtTheEdge,

    /// <summary>None of the audited negatives was missed, so the usual standard error would leave out what the audit could not see.</summary>
    NoMissedRuns,

    /// <summary>A stratum with negative runs has no audited one.</summary>
    StratumWithoutAudit,

    /// <summary>No event was counted in the second group, so a ratio to it is unbounded.</summary>
    NoEventsInSecondGroup,

    /// <summary>No event was counted in either group.</summary>
    NoEventsInEitherGroup,

    /// <summary>Everything counted was an event, in both groups.</summary>
    OnlyEventsInBothGroups,

    /// <summary>The second group has no event, or the first nothing else: the odds ratio is unbounded.</summary>
    OddsRatioUnbounded,

    /// <summary>Counts of 0 leave a logarithm without a standard error.</summary>
    NoStandardError,

    /// <summary>No pair in which the two readings differ.</summary>
    NoDiscordantPairs,

    /// <summary>Both readings put everything into one category.</summary>
    OneCategoryOnly,

    /// <summary>No sample within the limits of this library reaches what was asked.</summary>
    NoSampleLargeEnough,

    /// <summary>Even if every screen were verified, the figure would be less certain than asked.</summary>
    TooFewScreens,

    /// <summary>The populations do not differ in how often a test is positive, so nothing tells infected from uninfected.</summary>
    PopulationsAlike,

    /// <summary>A figure of the solution lies at 0 or 1, where the usual standard errors do not hold.</summary>
    BoundarySolution,

    /// <summary>The search for the greatest likelihood did not settle.</summary>
    NotConverged,

    /// <summary>The model has as many figures as the counts have freedom, so it fits in any case.</summary>
    SaturatedModel,

    /// <summary>There are more ways to divide the counts into infected and uninfected than this method adds up.</summary>
    TooManyDivisions,

    /// <summary>No stratum holds an event, a trial without one, and trials of both the lot and others.</summary>
    NoInformativeStratum,

    /// <summary>All events of the informative strata are the lot's, so its ratio to the others has no upper bound.</summary>
    NoEventsInOtherLots,

    /// <summary>The lots differ no more than chance makes them, so that their rates are taken as one.</summary>
    LotsAllAlike,

    /// <summary>With these figures no signal can occur.</summary>
    NeverSignals,

    /// <summary>The figure is larger than the method can compute.</summary>
    TooLarge,

    /// <summary>No limit within the limits of this library reaches what was asked.</summary>
    NoLimitFound,

    /// <summary>There is no point to make a chart of.</summary>
    NoPoints,

    /// <summary>Fewer than two points, so limits taken from them say nothing.</summary>
    FewerThanTwoPoints,

    /// <summary>The centre of a chart is 0 or 1, so that chance leaves no room around it.</summary>
    CentreAtTheEdge,

    /// <summary>The points are all alike, so no variation between them can be estimated.</summary>
    PointsAllAlike,

    /// <summary>Fewer than two points lie off the median, so there are no runs.</summary>
    PointsOnTheMedian,

    /// <summary>All points off the median lie on one side of it, as when most are 0.</summary>
    PointsOnOneSideOfTheMedian,

    /// <summary>Fewer than two lots have trials.</summary>
    FewerThanTwoLots,

    /// <summary>Each lot has no event or nothing else, so that no spread of their rates is too wide.</summary>
    LotsAllOrNothing,

    /// <summary>No window holds more than its share of the events.</summary>
    NoWindowWithExcess,

    /// <summary>The exact sum has more terms than this library adds up.</summary>
    TooManyTerms,

    /// <summary>No sampling plan within the limits of this library keeps both risks.</summary>
    NoPlanWithinLimits,

    /// <summary>Fewer than two groups have trials.</summary>
    FewerThanTwoGroups,

    /// <summary>Fewer than three groups.</summary>
    FewerThanThreeGroups,

    /// <summary>Fewer than four figures: drawing them together need not bring them closer to the truth.</summary>
    FewerThanFourGroups,

    /// <summary>No stratum holds trials of both groups, with an event and a trial without one.</summary>
    NoComparableStratum,

    /// <summary>Only one stratum compares the groups.</summary>
    OneStratumOnly,

    /// <summary>The first group has no event, or the second nothing else: the odds ratio is 0.</summary>
    OddsRatioZero,

    /// <summary>All groups have the same score.</summary>
    ScoresAllAlike,

    /// <summary>The standard population is empty.</summary>
    NoStandardPopulation,

    /// <summary>The standard population has a stratum in which nothing was counted.</summary>
    StratumWithoutTrials,

    /// <summary>A stratum in which something was counted has no reference.</summary>
    StratumWithoutReference,

    /// <summary>The reference leads to expect no event.</summary>
    NoEventsExpected,

    /// <summary>Terms of the model cannot be told apart: one is a sum of others in every row.</summary>
    CollinearTerms,

    /// <summary>A combination of the terms tells events from the others in every row that it moves, so its coefficient has no bound.</summary>
    Separation,

    /// <summary>The model has as many terms as there are rows.</summary>
    NoDegreesOfFreedom,

    /// <summary>The groups differ so much, for instance one with events and the others without any, that no one spread describes them.</summary>
    GroupsTooUnlike,

    /// <summary>The groups differ no more than chance makes them.</summary>
    GroupsAllAlike,

    /// <summary>Fewer periods have trials than the question needs.</summary>
    TooFewPeriods,

    /// <summary>No place leaves each segment an event and a trial without one, the likelihood has no maximum with that many changes, or the line is straight.</summary>
    NoRoomForChanges,

    /// <summary>No row has any exposure.</summary>
    NoExposure,

    /// <summary>The slope may be nil or of the other sign within its limits, so a time that is divided by it has no bound.</summary>
    SlopeMayBeNil,

    /// <summary>The slope is nil, so nothing doubles or halves and no other level is reached.</summary>
    SlopeNil,

    /// <summary>Nothing was counted before the change.</summary>
    NoDataBeforeChange,

    /// <summary>Nothing was counted after the change.</summary>
    NoDataAfterChange,

    /// <summary>All events fall into the first or the last period, so growth has no bound on one side.</summary>
    EventsInOnePeriod,

    /// <summary>Fewer than two periods have tests.</summary>
    FewerThanTwoPeriods,

    /// <summary>Fewer than three periods have a value.</summary>
    FewerThanThreePeriods,

    /// <summary>The rate jumps so much from period to period that no step between them is too wide.</summary>
    LevelTooUnsteady,

    /// <summary>The steps given between periods are too small for the counts, or for a lattice that can be summed over.</summary>
    StepsTooSmall,

    /// <summary>No sensitivity is known.</summary>
    SensitivityUnknown,

    /// <summary>No specificity is known.</summary>
    SpecificityUnknown,

    /// <summary>No incidence is known.</summary>
    IncidenceUnknown,

    /// <summary>The number of people is not given.</summary>
    PeopleUnknown,

    /// <summary>The infectious time is not given.</summary>
    InfectiousTimeUnknown,

    /// <summary>The infectious time has no length, so there is no share of it.</summary>
    NoInfectiousTime,

    /// <summary>It is not stated how long people who are isolated stay away.</summary>
    NoIsolationTime,

    /// <summary>The sensitivity is 0, so no screen is ever positive in an infected person.</summary>
    NeverDetected,

    /// <summary>Nobody gets symptoms, so nothing can come before them.</summary>
    NoSymptoms,

    /// <summary>At this incidence no interval gains more than it costs.</summary>
    NoIntervalPays,

    /// <summary>Screens cost nothing, so the shorter the interval the better.</summary>
    ScreensCostNothing,

    /// <summary>No prevalence repays what a screen costs.</summary>
    NoPrevalencePays,

    /// <summary>Neither a cost nor a benefit is stated.</summary>
    NothingAtStake,

    /// <summary>The last test adds no case, so a cost per case added has no bound.</summary>
    NoCasesAdded,

    /// <summary>At this prevalence no pool saves tests.</summary>
    NoPoolPays,

    /// <summary>Nobody has the condition, so the larger the pool the fewer the tests.</summary>
    NobodyInfected,

    /// <summary>One case causes one more or more on average, so the mean size of an outbreak has no bound.</summary>
    SpreadWithoutBound,

    /// <summary>Nobody is infected by a case, so nothing grows or shrinks by generations.</summary>
    NoSpread,

    /// <summary>No positive screen is followed up, so none becomes a case.</summary>
    NeverFollowedUp,

    /// <summary>Both options have the same effect, so nothing more is bought.</summary>
    EffectsAlike,

    /// <summary>One of two options is cheaper and does more, so a ratio would say nothing.</summary>
    OneOptionDominates,

    /// <summary>The option is dominated, so no step leads to it.</summary>
    NotOnFrontier,

    /// <summary>The option is the first of the frontier, so there is nothing cheaper to compare it with.</summary>
    FirstOfFrontier,

    /// <summary>It pays at every value within the range.</summary>
    AlwaysPays,

    /// <summary>It pays at no value within the range.</summary>
    NeverPays,

    /// <summary>Within the range it begins or stops to pay more than once.</summary>
    PaysInPieces,

    /// <summary>The difference may be nil, so the number needed has no upper bound.</summary>
    MayDoNothing,

    /// <summary>There is no difference, so no number is enough.</summary>
    DoesNothing,

    /// <summary>The difference is a harm, so no number averts an event.</summary>
    DoesHarm,

    /// <summary>A cost that it needs is not given.</summary>
    CostUnknown,

    /// <summary>There is no effect to divide by.</summary>
    NoEffect,

    /// <summary>How many of all screened were infected is not known.</summary>
    InfectedUnknown,

    /// <summary>No infection is averted, so a cost per infection averted has no meaning.</summary>
    NoInfectionAverted,

    /// <summary>Nobody was tested more than once, so nothing tells whether misses repeat.</summary>
    NoRepeatedTests,
}
