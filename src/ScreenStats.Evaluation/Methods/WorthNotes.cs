using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Sojourn;
using ScreenStats.Statistics.Economics.Decision;
using ScreenStats.Statistics.Economics.Frontier;
using ScreenStats.Statistics.Economics.Turning;
using ScreenStats.Statistics.Economics.Uncertainty.Acceptability;
using ScreenStats.Statistics.Economics.Uncertainty.Information;
using ScreenStats.Statistics.Economics.Uncertainty.OneWay;
using ScreenStats.Statistics.Economics.Uncertainty.Ratios;
using ScreenStats.Statistics.Economics.Yield;
using ScreenStats.Statistics.Economics.Yield.Rules;

namespace ScreenStats.Evaluation.Methods;

/// <summary>Methods for whether screening is worth it.</summary>
internal static class WorthNotes
{
    public const string Draws = "worth-draws";
    public const string Sample = "sample-by-regression";
    public const string ByItem = "price-times-number";

    public static ImmutableArray<MethodNote> All { get; } =
    [
        new(ByItem, "Cost by item",
            "What the program paid for over the time of its data: the price that the program file states times the number counted. Bounds put price and number at the ends of their ranges: no cost within these is lower or higher. Each day of isolation, and each day lost to a false alarm, is taken as a working day. Further confirmatory tests are those that are not the first after a screen, or follow no screen that calls for one. Specimens taken for another reason than follow-up or audit are not the program's and are left out.",
            ["cost = price × number; total = Σ cost over the items with a price"],
            "By definition."),
        new(CostYield.Method, "Cost for each of something",
            "All cost divided by the number of screens or cases. Bounds are wider than an interval that holds a chance: they hold whatever the ranges have to do with one another. Where a price is missing the rest gives a lower bound only. Of a case found three kinds of limits are given: prices at the ends of their ranges; the cases at the widened limits of screens for each case, the isolation of one case held and all else shared out among as many; and both at their ends at once, which holds more than either.",
            ["Σ price × number / n", "of a case: (cost − isolation) / screens × screens for each case + isolation of one case"],
            "By definition."),
        new(Draws, "What an option costs and gains, with draws",
            "What each way of screening finds, removes and averts comes from the analysis how often, at its central figures and in each of its draws; prices are drawn from streams of their own, gamma distributions whose 95 % limits are the ends stated, so that the mean of the draws need not be the value (where a range begins at 0 the value is the mean and the upper end is met; between far ends all amounts are as likely). The figure is at the central values; its limits hold the middle of the draws. All options share each draw, so that they differ by themselves alone. Costs and effects are what comes more than with no screening; so are days of isolation: those that symptoms would have brought anyway are charged to nobody, those of averted infections are saved, and whoever a screen finds before symptoms is charged the days before as well. The price of an illness must not hold these days again. The confirmatory test is taken as right. Without one people leave on the screen; with one they do so too, unless the program has them wait for it.",
            ["spending = (screens + repeats of inconclusive ones) × price of a screen + (positives + tests of inconclusive screens) × price of a confirmatory test + days away added × price of an isolation day + days lost to false alarms × price of a working day",
             "days away added = I (q D + (1 − q) f D + q B) − I₀ q D: I infections under the option, I₀ with no screening, D days of an isolation, q share with symptoms × share of these who stay away, f chance that a screen finds the infection where symptoms keep nobody away, B mean of min(onset − isolation by a screen, D) where that comes first",
             "days lost to false alarms = false alarms × (settled share of positives × days lost to one that is refuted + (1 − settled share) × isolation days); where people wait for confirmation nobody unsettled leaves",
             "inconclusive screens are as many, and are tested and repeated as often, as in the data",
             "without a confirmatory test: no test is paid for, and each false alarm loses the whole isolation time",
             "cost = spending − infections averted × share with symptoms × cost of an illness − outbreaks avoided × cost of an outbreak",
             "discounted, where a rate r is stated: what falls into the k-th year after the first by (1 + r)^−k"],
            "Derived; A. Briggs, K. Claxton, M. Sculpher, 2006, Decision Modelling for Health Economic Evaluation (from memory)."),
        new(DrawnRatio.Method, "Cost for each effect, with draws",
            "Cost over effect at the central figures. The draws are put in order by their ratio, those without an effect last: no price buys it there. Where too many draws have no effect there is no upper limit.",
            ["cost / effect; limits: percentiles of the draws in order of their ratio"],
            "R. L. Obenchain et al., 1997, Pharmacoeconomics 11:459–472 (from memory)."),
        new(MarginalCost.Method, "Marginal and average cost",
            "What the step from one option to the next more frequent one spends more, divided by what it gains more: the marginal cost. The average over all screening stays low long after one more step buys next to nothing, so decide on the marginal cost.",
            ["average: spending / effect; marginal: (spending − spending of the step before) / (effect − effect of the step before)"],
            "D. Neuhauser, A. M. Lewicki, 1975, N Engl J Med 293:226–228 (from memory)."),
        new(CostEffectivenessFrontier.Method, "The frontier, and what one more effect costs",
            "An option is dominated where another costs no more and does no less, and is better in one of the two; extendedly where a mix of two others does as much for less. Along what is left, each step costs more for each effect than the one before.",
            ["(cost − cost of the next cheaper) / (effect − effect of the next cheaper), on the frontier"],
            "M. Johannesson, M. C. Weinstein, 1993, J Health Econ 12:459–467 (from memory)."),
        new(NetBenefit.Method, "Net benefit in money",
            "What the effect is worth at the value that the program file states, less what the option costs. Above 0 it gains more than no screening; the highest is the best. Its limits come from the draws; the value is a decision, not an estimate, and is held at what is stated.",
            ["value × effect − cost"],
            "A. A. Stinnett, J. Mullahy, 1998, Med Decis Making 18 (Suppl):S68–S80 (from memory)."),
        new(TurningPoint.Method, "Break-even by search",
            "The figure is moved between its ends with the others at their centre, and each place where the net benefit of an option changes its sign is closed in on; the one nearest to the figure as it is counts. Incidence and participation are moved in the whole model, the spread inside with it; the incidence up to ten times the upper limit of what it is. The option by how much infection there is: the places where another one comes to gain most, each with the follow-up of positives and the pools that are worth most there.",
            ["the figure x with value × effect(x) − cost(x) = 0", "from one option to the next: the incidence x with net benefit of the one (x) = net benefit of the other (x), where none gains more"],
            "Bisection with inverse interpolation: R. P. Brent, 1973, Algorithms for Minimization without Derivatives (from memory)."),
        new(BreakEven.Method, "Break-even in closed form",
            "A straight line set to 0 and solved. Of the prevalence among those screened: the least at which one screen repays its cost, with a true positive worth what it is on average under the option judged. Of half-false-prevalence: the prevalence at which a positive is as likely false as true.",
            ["p = (c + (1 − Sp) h) / (s B + (1 − Sp) h): c cost of a screen, h of a false positive, B worth of a true one; half false: p = (1 − Sp) / (s + 1 − Sp)", "highest cost of a screen: c + net benefit / screens; least value of an effect: cost / effect"],
            "Derived."),
        new(AcceptabilityCurve.Method, "How likely an option is the best",
            "In each draw the option with the highest net benefit counts, of equal ones the first. The frontier follows the option with the highest mean, which is the one to choose; it need not be the one most often best. A share below one half does not speak against it: with several options the best may seldom win by itself.",
            ["share of draws with value × effect − cost highest"],
            "E. Fenwick, K. Claxton, M. Sculpher, 2001, Health Econ 10:779–787 (from memory)."),
        new(PerfectInformation.Method, "What knowing everything would be worth",
            "The mean over the draws of what the option that is best on average loses against the best one of the draw. No study is worth more, for one choice over the days looked at.",
            ["mean of (highest net benefit of the draw − that of the option best on average)"],
            "H. Raiffa, R. Schlaifer, 1961, Applied Statistical Decision Theory (from memory)."),
        new(PerfectInformation.RegressionMethod, "What knowing one figure would be worth",
            "The expected net benefit of each option given the figure, by regression of the draws on a smooth curve of it; then the mean gain of choosing by that. The curve follows chance a little, so a figure that does not matter has a small value above 0: judge it by its standard error.",
            ["mean of max over options of E(net benefit | figure) − max over options of mean net benefit; restricted cubic spline with seven knots"],
            "M. Strong, J. E. Oakley, A. Brennan, 2014, Med Decis Making 34:311–326 (from memory)."),
        new(PerfectInformation.GroupMethod, "What knowing one figure with few values would be worth",
            "As for any figure, with means of the draws in which it has the same value in place of a curve.",
            ["mean of max over options of the mean net benefit of the group − max over options of mean net benefit"],
            "H. Raiffa, R. Schlaifer, 1961, Applied Statistical Decision Theory (from memory)."),
        new(OneWayAnalysis.Method, "One figure at a time, in money",
            "Each figure at the ends of its 95 % range, the others at their centre: the net benefit of the option judged against no screening. What matters only together with another figure does not show here; the draws have it.",
            ["swing = |net benefit at the upper end − net benefit at the lower end|"],
            "A. Briggs, K. Claxton, M. Sculpher, 2006, Decision Modelling for Health Economic Evaluation (from memory)."),
        new(PooledTesting.Method, "Pooled confirmatory tests",
            "Specimens of positives are tested in pools, and a positive pool is taken apart. It saves tests only while few of the positives are real: from 30.7 % on no pool saves any. A pooled test is taken to be as good as a single one; dilution makes it less sensitive, which the laboratory must validate.",
            ["tests for each positive = 1/n + 1 − (1 − p)ⁿ: n in a pool, p share of positives that are real"],
            "R. Dorfman, 1943, Ann Math Stat 14:436–440 (from memory)."),
        new(DecisionCurve.WidenedMethod, "Decision curve from counts, widened for sites and weeks",
            "What is gained by sending away those whose screen is positive, in true positives for each 1,000 screens: one found is weighed against as many sent away for nothing as the threshold says. Positives with a conclusive confirmatory result count, among valid tests less the others. True and false positives come in clusters of their own, such as an outbreak or a faulty lot: the limits of each are widened by its own design effect over sites and site-weeks before they are put together. Without flagged lots: their runs are left out altogether.",
            ["1,000 × (true positives / n − false positives / n × t / (1 − t)), t the threshold; limits: the widened Wilson limits of both shares, put together with their correlation"],
            "A. J. Vickers, E. B. Elkin, 2006, Med Decis Making 26:565–574; G. Y. Zou, A. Donner, 2008, Stat Med 27:1693–1702; J. N. K. Rao, A. J. Scott, 1992, Biometrics 48:577–585 (from memory)."),
        new(DecisionCurve.Method, "Decision curve of sending everyone away",
            "The same for sending everyone away, by the share infected among screens: those found, divided by the sensitivity.",
            ["1,000 × (p − (1 − p) t / (1 − t)), p = true positives / (n × sensitivity)"],
            "A. J. Vickers, E. B. Elkin, 2006, Med Decis Making 26:565–574 (from memory)."),
        new(FrequencyHistory.Method, "A rule of frequency, replayed",
            "The positivity of each period says which line of the rule is in force in the next one. It counts false positives with real ones, so a faulty lot makes the rule screen more often: it is replayed with all runs and without those of flagged lots. The positivity was seen under the screening that there was: under the rule other infections would have been found. Read it as what the rule makes of such counts.",
            ["line in force next = last line whose threshold the positivity exceeds"],
            "By definition."),
        new(Sample, "What verifying a sample of negatives would be worth",
            "In each draw the sensitivity says how many of the negatives are infected; a sample of them then holds a number of these by chance. What learning that number is worth is found as for any figure, by regression of the draws on it. Samples of several sizes are tried, and the one that is worth most after its cost is given.",
            ["infected among negatives = confirmed × (1 − s)/s; found in a sample of n: binomial; worth: mean of max over options of E(net benefit | found) − max over options of mean net benefit"],
            "M. Strong, J. E. Oakley, A. Brennan, P. Breeze, 2015, Med Decis Making 35:570–583 (from memory)."),
    ];
}
