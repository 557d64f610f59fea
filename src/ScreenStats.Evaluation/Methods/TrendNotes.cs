using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Methods;

/// <summary>Methods for following rates over time.</summary>
internal static class TrendNotes
{
    public const string LocalLevel = "local-level-binomial";
    public const string Spline = "penalised-spline";
    public const string Growth = "logit-growth";
    public const string Segments = "segmented-logit";
    public const string Interrupted = "interrupted-series";
    public const string Weekdays = "weekdays-within-weeks";

    public static ImmutableArray<MethodNote> All { get; } =
    [
        new(LocalLevel, "Smooth of a level that wanders",
            "The logit of the rate takes a random step from each period to the next; how large the steps are is taken from the counts. What is drawn is the rate of each period given all complete ones, with its band, wide where little was counted; periods in which nothing was counted are passed over. Before it is fitted counts are divided by their design effect within weeks, so that the same people and one site's outbreak are not taken for the course of the whole. Where the most likely steps are none, the periods differ no more than chance makes them. Up to 150 periods are averaged over how large the steps may be, because the most likely ones alone make the band too short (in a study of 40 weeks it held the truth in 86 to 92 % of weeks of a wandering level, averaged in 95 %). The band is for one period at a time.",
            ["logit p(t) = logit p(t − 1) + σ z, z standard normal; x binomial with n and p; σ by maximum likelihood, or averaged with a half-normal density of scale 1; p by forward and backward sums over a grid"],
            "G. Kitagawa, 1987, JASA 82:1032–1041; J. Durbin, S. J. Koopman, 2012, Time Series Analysis by State Space Methods (from memory)."),
        new(Spline, "Smooth curve: penalised spline",
            "A curve through the logits that may bend, each bend being paid for; how much, is taken from the counts by restricted likelihood. It follows slow changes and not single periods; where the level wanders or jumps its band is too short (in a study of 40 weeks it then held the truth in 73 to 87 % of weeks). Counts are divided by their design effect within weeks first.",
            ["logit p(t) = Σ b B(t), cubic; the log likelihood less λ / 2 Σ (second differences of b)²"], "P. H. C. Eilers, B. D. Marx, 1996, Statistical Science 11:89–121 (from memory)."),
        new(Growth, "Growth, doubling and halving",
            "A straight line through the logits of the complete weeks of a stretch. Its slope is the growth: the part by which the odds change each week. Counts are divided by their design effect within weeks; what the weeks vary beyond that, and that a week is like the one before, is in the limits: they are the wider of those by Pearson's statistic (Student's distribution) and, over ten weeks or more, those that are robust to autocorrelation. A line is a summary: over a wave that came and went it says little. Where each week depends strongly on the one before (correlation 0.6), the limits held the true doubling time in 75 to 85 % of drawn series where 95 are promised.",
            ["logit p = a + b t, t in weeks; growth = exp(b) − 1; days to double = 7 ln 2 / b, limits from those of b; none where these hold 0",
             "robust: sandwich with Bartlett weights over the weeks' scores"],
            "P. McCullagh, J. A. Nelder, 1989, Generalized Linear Models; W. K. Newey, K. D. West, 1987, Econometrica 55:703–708 (from memory)."),
        new(Segments, "Changes of slope",
            "A line through the logits that may change its slope at unknown days: where, is sought over all; how many times, is what permutations (or, of many weeks, an information criterion that counts a place twice) ask for. A day of change comes with its limits by the profile of the likelihood. Up to three changes, with four weeks between two. In studies of drawn series these limits held the true day in 87 to 94 % of cases where 95 are promised, and of levels that wander by themselves one in seven showed a change of slope that nobody made; slopes do not allow for the search.",
            ["logit p = a + b t + Σ d (t − c)₊; mean growth of a span: (logit at its end − logit at its beginning) / weeks"],
            "V. M. R. Muggeo, 2003, Statistics in Medicine 22:3055–3071; H.-J. Kim and others, 2000, Statistics in Medicine 19:335–351 (from memory)."),
        new(Interrupted, "Interrupted series of a dated change",
            "A line through the logits before the day that the program file names, and one after: whether the level jumped there, and whether the slope is another. Weeks that the change cuts in two go to the side of their greater part. Errors are robust to weeks that depend on those before. It compares before and after, and nothing else: whatever else changed then is in it.",
            ["logit p = a + b t + c [t ≥ day] + d (t − day)₊; level: exp(c), slope: exp(d)"], "J. Lopez Bernal, S. Cummins, A. Gasparrini, 2017, Int J Epidemiol 46:348–355."),
        new(Weekdays, "Days of the week",
            "Each day of the week against the mean of the days, within the weeks of each site: given how many events the site had in the week, how they spread over its days. So neither a rise over the weeks nor a site that is tested on Mondays is taken for a pattern. With more than a thousand such weeks with events, within the weeks of the whole program. The chance is for all days together.",
            ["logit p = site-week + day, given the events of each site-week; variance: the larger of the design effect and Pearson's statistic; limits by Student's distribution"],
            "P. McCullagh, J. A. Nelder, 1989, Generalized Linear Models (from memory)."),
    ];
}
