namespace ScreenStats.Statistics;

/// <summary>The words for each <see cref="UndefinedReason"/>.</summary>
public static class UndefinedReasons
{
    /// <summary>Says in plain words why a figure has no value.</summary>
    /// <param name="reason">The reason.</param>
    /// <returns>A clause without capital or full stop, fit to follow "undefined:".</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a member of the enumeration.</exception>
    public static string Describe(this UndefinedReason reason) => reason switch
    {
        UndefinedReason.NoTrials => "nothing was counted, so there is no denominator",
        UndefinedReason.NoEvents => "no event was seen, so nothing is known about how events cluster",
        UndefinedReason.OnlyEvents => "everything counted was an event, so nothing is known about how events cluster",
        UndefinedReason.TooFewGroups => "there are fewer than five sites or site-weeks, too few to show how much they differ",
        UndefinedReason.FewerThanTwoClusters => "there are fewer than two clusters, so nothing is known about how they differ",
        UndefinedReason.OneTrialInEachCluster => "each cluster has one trial only, so nothing is known about how alike the trials of a cluster are",
        UndefinedReason.ClustersAllAlike => "the clusters do not differ, so no variance between them can be estimated",
        UndefinedReason.TestNoBetterThanChance =>
            "sensitivity and specificity add up to 1 or less, so a positive result says nothing about the condition",
        UndefinedReason.NoPositiveResultPossible => "with these figures no positive result can occur",
        UndefinedReason.NoTruePositivePossible => "with a sensitivity of 0 no positive is real at any prevalence",
        UndefinedReason.NoNegativeResultPossible => "with these figures no negative result can occur",
        UndefinedReason.NoFalsePositives => "no false positive was counted, so the ratio has no upper bound",
        UndefinedReason.SpecificityOfOne => "a specificity of 1 leaves no false positive, so the ratio has no upper bound",
        UndefinedReason.SpecificityOfZero => "a specificity of 0 leaves no true negative, so the ratio has no upper bound",
        UndefinedReason.NoTrueNegatives => "no true negative was counted, so the ratio has no upper bound",
        UndefinedReason.NobodyWithTheCondition => "nobody with the condition was counted",
        UndefinedReason.NobodyWithoutTheCondition => "nobody without the condition was counted",
        UndefinedReason.NoVerifiedRuns => "no run was verified by a confirmatory test",
        UndefinedReason.NoVerifiedPositives => "no positive run was verified by a confirmatory test",
        UndefinedReason.NoVerifiedNegatives => "no negative run was verified by an audit",
        UndefinedReason.NoCases => "no case was found and none was missed",
        UndefinedReason.NoSharedStratum => "no stratum holds trials of both, so they cannot be compared within one",
        UndefinedReason.NoValues => "there is no value to take a percentile of",
        UndefinedReason.ValueAtTheEdge => "it is 0 or 1 as counted, so the usual standard error would be 0, which says nothing; see the bounds and one-sided limits",
        UndefinedReason.NoMissedRuns => "none of the audited negatives was missed, so the usual standard error would leave out those the audit did not see",
        UndefinedReason.StratumWithoutAudit => "a sampling stratum with negative runs has no audited one",
        UndefinedReason.NoEventsInSecondGroup => "no event was counted in the second group, so the ratio has no upper bound",
        UndefinedReason.NoEventsInEitherGroup => "no event was counted in either group, so their ratio can be anything",
        UndefinedReason.OnlyEventsInBothGroups => "everything counted was an event in both groups, so their odds can have any ratio",
        UndefinedReason.OddsRatioUnbounded => "the second group has no event or the first nothing else, so the odds ratio has no upper bound",
        UndefinedReason.NoStandardError => "with these counts of 0 this method has no standard error; the others have limits",
        UndefinedReason.NoDiscordantPairs => "the two readings differ in no pair, so nothing is known about the direction in which they differ",
        UndefinedReason.OneCategoryOnly => "both readings put everything into one category, so there is no agreement beyond chance to measure",
        UndefinedReason.NoSampleLargeEnough => "no number of tests that could be made reaches what was asked",
        UndefinedReason.TooFewScreens => "even if every screen were verified, the interval would be wider than asked: more screens are needed",
        UndefinedReason.PopulationsAlike => "a test is positive equally often in all populations, so nothing tells infected from uninfected",
        UndefinedReason.BoundarySolution => "a figure of the solution lies at 0 or 1, where the usual standard errors do not hold",
        UndefinedReason.NotConverged => "the search for the greatest likelihood did not settle",
        UndefinedReason.SaturatedModel => "the model has as many figures as the counts have freedom, so it fits in any case and the counts cannot test it",
        UndefinedReason.TooManyDivisions => "there are more ways to divide these counts into infected and uninfected than the exact sum can add up",
        UndefinedReason.NoInformativeStratum => "no stratum holds an event, a trial without one, and trials of both the lot and others",
        UndefinedReason.NoEventsInOtherLots => "in the strata they share all events are this lot's, so its ratio to the others has no upper bound",
        UndefinedReason.LotsAllAlike => "the lots differ no more than chance makes them, so their rates are taken as one",
        UndefinedReason.NeverSignals => "with these figures no signal can occur, so there is no average time to one",
        UndefinedReason.TooLarge => "the figure is larger than this method can compute",
        UndefinedReason.NoLimitFound => "no limit that this method can reach makes false alarms as rare as asked",
        UndefinedReason.NoPoints => "there is no point to make a chart of",
        UndefinedReason.FewerThanTwoPoints => "there are fewer than two points, so limits taken from them would say nothing",
        UndefinedReason.CentreAtTheEdge => "the centre is 0 or 1, so chance leaves no room around it",
        UndefinedReason.PointsAllAlike => "the points are all alike, so no variation between them can be estimated",
        UndefinedReason.PointsOnTheMedian => "fewer than two points lie off the median, so there are no runs to judge",
        UndefinedReason.PointsOnOneSideOfTheMedian => "all points off the median lie on one side of it, as when most are 0, so runs say nothing",
        UndefinedReason.FewerThanTwoLots => "fewer than two lots have trials, so nothing is known about how lots differ",
        UndefinedReason.LotsAllOrNothing => "each lot has no event or nothing else, so no spread of their rates is too wide",
        UndefinedReason.NoWindowWithExcess => "no window holds more than its share of the events",
        UndefinedReason.TooManyTerms => "the exact sum has more terms than can be added up; see the approximation",
        UndefinedReason.NoPlanWithinLimits => "no sampling plan within the limits of this library keeps both risks",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "Not a reason this library knows."),
    };
}
