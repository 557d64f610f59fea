using System.Collections.Immutable;

namespace ScreenStats.Statistics.Verification;

/// <summary>
/// Corrected figures as ratios of estimated totals, and their variance from what each run adds to a ratio (its influence).
/// </summary>
/// <remarks>
/// With a the confirmed share of the verified positives, n1 all positives, m1 the verified ones, a confirmed positive adds
/// a + (n1 / m1)(1 - a) to the estimated number of infected positives, a refuted one a - (n1 / m1) a, an unverified one a; negatives likewise
/// within their stratum. A ratio A / B = t then has the influence (dA - t dB) / B, linear in the counts of the cells.
/// </remarks>
internal static class Linearization
{
    private const int Measures = 5;

    public static VerifiedAccuracy Of(StratifiedCounts counts, PersonProducts? products, double confidence)
    {
        Guard.Confidence(confidence);
        var cells = counts.Cells;
        if (products is not null && products.Cells != cells.Length)
            throw new ArgumentOutOfRangeException(nameof(products), products.Cells, "The products must have a row for each cell of the counts.");
        var positivesKnown = counts.Overall.VerifiedPositives > 0;
        var negativesUnknown = NegativesUnknown(counts);
        var infected = new double[cells.Length];
        FillShare(infected, 0, counts.Overall.Confirmed, counts.Overall.Refuted, counts.Overall.Positives);
        for (var h = 0; h < counts.Strata.Length; h++)
            FillShare(infected, 3 + (3 * h), counts.Strata[h].Missed, counts.Strata[h].Agreed, counts.Strata[h].Negatives);

        var figures = ImmutableArray.CreateBuilder<AccuracyFigure>(Measures);
        var influences = new double[Measures][];
        for (var i = 0; i < Measures; i++)
        {
            var measure = (AccuracyMeasure)i;
            figures.Add(Figure(measure, counts, cells, infected, products, confidence, positivesKnown, negativesUnknown, out influences[i]));
        }

        var covariances = ImmutableArray.CreateBuilder<double>(Measures * Measures);
        for (var i = 0; i < Measures; i++)
        {
            for (var j = 0; j < Measures; j++) covariances.Add(Product(influences[i], influences[j], cells, products));
        }

        return new VerifiedAccuracy(counts, confidence, products?.People, figures.MoveToImmutable(), covariances.MoveToImmutable());
    }

    private static AccuracyFigure Figure(
        AccuracyMeasure measure, StratifiedCounts counts, ImmutableArray<long> cells, double[] infected, PersonProducts? products, double confidence,
        bool positivesKnown, UndefinedReason? negativesUnknown, out double[] influence)
    {
        influence = new double[cells.Length];
        var needsPositives = measure != AccuracyMeasure.NegativePredictiveValue;
        var needsNegatives = measure != AccuracyMeasure.PositivePredictiveValue;
        if (needsPositives && needsNegatives && counts.Overall is { VerifiedPositives: 0, VerifiedNegatives: 0 })
            return AccuracyFigure.Undefined(measure, confidence, UndefinedReason.NoVerifiedRuns);
        if (needsPositives && !positivesKnown) return AccuracyFigure.Undefined(measure, confidence, UndefinedReason.NoVerifiedPositives);
        if (needsNegatives && negativesUnknown is { } why) return AccuracyFigure.Undefined(measure, confidence, why);

        double top = 0, bottom = 0;
        for (var i = 0; i < cells.Length; i++)
        {
            var (part, whole) = Adds(measure, infected[i], positive: i < 3);
            top += cells[i] * part;
            bottom += cells[i] * whole;
        }

        if (!(bottom > 0))
            return AccuracyFigure.Undefined(measure, confidence, measure == AccuracyMeasure.Sensitivity ? UndefinedReason.NoCases : UndefinedReason.NobodyWithoutTheCondition);
        var value = Math.Clamp(top / bottom, 0, 1);
        // Exact where nothing, or everything, is of one kind; the sums above are so but for rounding.
        if (NoneWrong(measure, counts.Overall)) value = 1;
        if (NoneRight(measure, counts.Overall)) value = 0;
        for (var i = 0; i < cells.Length; i++)
        {
            var (part, whole) = Adds(measure, infected[i], positive: i < 3);
            influence[i] = (part - (value * whole)) / bottom;
        }

        if (measure == AccuracyMeasure.Prevalence && counts.Overall.Missed == 0)
            return AccuracyFigure.WithoutError(measure, confidence, value, UndefinedReason.NoMissedRuns);
        return AccuracyFigure.Of(measure, confidence, value, Product(influence, influence, cells, products));
    }

    private static bool NoneWrong(AccuracyMeasure measure, VerificationCounts counts) => measure switch
    {
        AccuracyMeasure.Sensitivity or AccuracyMeasure.NegativePredictiveValue => counts.Missed == 0,
        AccuracyMeasure.Specificity or AccuracyMeasure.PositivePredictiveValue => counts.Refuted == 0,
        _ => false,
    };

    private static bool NoneRight(AccuracyMeasure measure, VerificationCounts counts) => measure switch
    {
        AccuracyMeasure.Sensitivity or AccuracyMeasure.PositivePredictiveValue => counts.Confirmed == 0,
        AccuracyMeasure.Specificity or AccuracyMeasure.NegativePredictiveValue => counts.Agreed == 0,
        _ => false,
    };

    /// <summary>What a run of a cell adds to the part and to the whole of a measure; infected is what it adds to the infected.</summary>
    private static (double Part, double Whole) Adds(AccuracyMeasure measure, double infected, bool positive) => measure switch
    {
        AccuracyMeasure.Sensitivity => (positive ? infected : 0, infected),
        AccuracyMeasure.Specificity => (positive ? 0 : 1 - infected, 1 - infected),
        AccuracyMeasure.Prevalence => (infected, 1),
        AccuracyMeasure.PositivePredictiveValue => positive ? (infected, 1) : (0, 0),
        _ => positive ? (0, 0) : (1 - infected, 1),
    };

    private static void FillShare(double[] infected, int at, long events, long others, long all)
    {
        if (events + others == 0) return;
        var share = (double)events / (events + others);
        var weight = (double)all / (events + others);
        infected[at] = share + (weight * (1 - share));
        infected[at + 1] = share - (weight * share);
        infected[at + 2] = share;
    }

    private static UndefinedReason? NegativesUnknown(StratifiedCounts counts)
    {
        if (counts.Overall.VerifiedNegatives == 0) return UndefinedReason.NoVerifiedNegatives;
        return counts.Strata.Any(stratum => stratum is { Negatives: > 0, Audited: 0 }) ? UndefinedReason.StratumWithoutAudit : null;
    }

    private static double Product(double[] left, double[] right, ImmutableArray<long> cells, PersonProducts? products)
    {
        double sum = 0;
        if (products is null)
        {
            for (var i = 0; i < cells.Length; i++) sum += cells[i] * left[i] * right[i];
            return sum;
        }

        for (var i = 0; i < cells.Length; i++)
        {
            for (var j = 0; j < cells.Length; j++) sum += left[i] * right[j] * products.Sum(i, j);
        }

        return products.People > 1 ? sum * products.People / (products.People - 1) : 0;
    }
}
