using MathNet.Numerics;
using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Acceptance;

/// <summary>How often a sampling plan accepts a lot, by the share of its items that are defective.</summary>
/// <remarks>Source: Montgomery DC, Introduction to Statistical Quality Control, chapters on acceptance sampling (from memory).</remarks>
public static class OperatingCharacteristic
{
    /// <summary>The largest sample that <see cref="Smallest"/> considers.</summary>
    public const long LargestSample = 10_000_000;

    /// <summary>The chance of acceptance where the sample is small beside the lot.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="rate">The share of defective items, in [0, 1]; with the Poisson model events per item, finite and 0 or more.</param>
    /// <param name="model">Binomial, or Poisson.</param>
    /// <returns>A probability, relative error below 1e-10.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A rate outside its domain, or an unknown model.</exception>
    public static double Acceptance(SamplingPlan plan, double rate, CountModel model = CountModel.Binomial)
    {
        Check(plan);
        if (model == CountModel.Binomial) Guard.Probability(rate);
        else if (model != CountModel.Poisson) throw new ArgumentOutOfRangeException(nameof(model), model, "Not a model this library knows.");
        else if (!(rate >= 0) || !double.IsFinite(rate)) throw new ArgumentOutOfRangeException(nameof(rate), rate, "The events per item must be a finite number, 0 or more.");
        return model == CountModel.Binomial ? AtMost(plan.AcceptanceNumber, plan.Size, rate) : PoissonAtMost(plan.AcceptanceNumber, plan.Size * rate);
    }

    /// <summary>The chance of acceptance of a lot with so many defective items: hypergeometric.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="lotSize">Items of the lot, at least the sample's.</param>
    /// <param name="defective">Defective items of the lot, 0 to <paramref name="lotSize"/>.</param>
    /// <returns>A probability.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Numbers that cannot be.</exception>
    public static double Acceptance(SamplingPlan plan, long lotSize, long defective)
    {
        Check(plan, lotSize);
        if (defective < 0 || defective > lotSize) throw new ArgumentOutOfRangeException(nameof(defective), defective, "The defective items must lie between 0 and the size of the lot.");
        return Hypergeometric.LowerTail(plan.AcceptanceNumber, lotSize, defective, plan.Size);
    }

    /// <summary>The chance that a double plan accepts: binomial.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="rate">The share of defective items, in [0, 1].</param>
    /// <returns>The chance by the sample that decides, and the items tested on average.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A rate outside [0, 1], or no plan.</exception>
    public static DoubleAcceptance Acceptance(DoubleSamplingPlan plan, double rate)
    {
        Guard.Probability(rate);
        if (plan.FirstSize < 1) throw new ArgumentOutOfRangeException(nameof(plan), plan.FirstSize, "The first sample must hold at least 1 item.");
        double second = 0, decides = 0;
        for (var k = plan.FirstAcceptance + 1; k < plan.FirstRejection && k <= plan.FirstSize; k++)
        {
            var chance = Binomial.Probability(k, plan.FirstSize, rate, 1 - rate);
            decides += chance;
            if (k <= plan.Acceptance) second += chance * AtMost(plan.Acceptance - k, plan.SecondSize, rate);
        }

        return new DoubleAcceptance(AtMost(plan.FirstAcceptance, plan.FirstSize, rate), second, plan.FirstSize + (decides * plan.SecondSize));
    }

    /// <summary>The rate at which a plan accepts with a given chance.</summary>
    /// <param name="plan">The plan; not one that accepts everything.</param>
    /// <param name="acceptance">The chance of acceptance, in (0, 1).</param>
    /// <param name="model">Binomial, or Poisson.</param>
    /// <returns>The share of defective items, or events per item; relative error below 1e-10. Undefined for a binomial plan that accepts everything.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A chance outside (0, 1), or an unknown model.</exception>
    public static double? RateAccepted(SamplingPlan plan, double acceptance, CountModel model = CountModel.Binomial)
    {
        Check(plan);
        if (!(acceptance > 0 && acceptance < 1)) throw new ArgumentOutOfRangeException(nameof(acceptance), acceptance, "The chance of acceptance lies strictly between 0 and 1.");
        var (c, n) = (plan.AcceptanceNumber, plan.Size);
        if (model == CountModel.Binomial)
        {
            // P(X <= c) is the upper tail of Beta(c + 1, n - c) at the rate.
            return c == n ? null : LogitScale.Fraction(TailEquation.BetaQuantileLogit(c + 1, n - c, acceptance, upperTail: true));
        }

        if (model != CountModel.Poisson) throw new ArgumentOutOfRangeException(nameof(model), model, "Not a model this library knows.");
        double Excess(double logMean) => acceptance < 0.5
            ? Math.Log(PoissonAtMost(c, Math.Exp(logMean)) / acceptance)
            : -Math.Log(SpecialFunctions.GammaLowerRegularized(c + 1, Math.Exp(logMean)) / (1 - acceptance));
        var (low, high) = (Math.Log(c + 1.0), Math.Log(c + 1.0));
        while (Excess(low) < 0) low -= 1;
        while (Excess(high) > 0) high += 0.1;
        return Math.Exp(Root.Between(Excess, low, high)) / n;
    }

    /// <summary>What leaves the inspection at a rate, where rejected lots are tested in full and defective items replaced.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="lotSize">Items of the lot, at least the sample's.</param>
    /// <param name="rate">The share of defective items, in [0, 1].</param>
    /// <returns>Acceptance (binomial), average outgoing quality P p (N - n)/N and items tested n + (1 - P)(N - n).</returns>
    /// <exception cref="ArgumentOutOfRangeException">Numbers that cannot be.</exception>
    public static OutgoingQuality Outgoing(SamplingPlan plan, long lotSize, double rate)
    {
        Check(plan, lotSize);
        Guard.Probability(rate);
        var accepted = AtMost(plan.AcceptanceNumber, plan.Size, rate);
        var rejected = plan.AcceptanceNumber == plan.Size ? 0 : Binomial.BetaLower(plan.AcceptanceNumber + 1, plan.Size - plan.AcceptanceNumber, rate, 1 - rate);
        var rest = lotSize - plan.Size;
        return new OutgoingQuality(rate, accepted, accepted * rate * ((double)rest / lotSize), plan.Size + (rejected * rest));
    }

    /// <summary>The worst that leaves the inspection on average: the average outgoing quality limit, and the rate at which it is reached.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="lotSize">Items of the lot, at least the sample's.</param>
    /// <returns>The outgoing quality at the rate where it is greatest; the rate to 1e-9, the limit to 1e-12.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Numbers that cannot be.</exception>
    public static OutgoingQuality OutgoingLimit(SamplingPlan plan, long lotSize)
    {
        Check(plan, lotSize);
        var (c, n) = (plan.AcceptanceNumber, plan.Size);
        if (c == n) return Outgoing(plan, lotSize, 1);

        // d(p P)/dp = P - p * density = 0; p P rises to one top and then falls. On the logit, with the density's kernel over (1 - p).
        double Slope(double logit)
        {
            var (p, q) = (LogitScale.Fraction(logit), LogitScale.Fraction(-logit));
            return Math.Log(Binomial.BetaUpper(c + 1, n - c, p, q)) - Math.Log(Binomial.BetaKernel(c + 1, n - c, p, q) / q);
        }

        var (low, high) = (LogitScale.Logit(1 / (n + 2.0)), LogitScale.Logit((c + 1.0) / (n + 2.0)));
        while (Slope(low) < 0) low -= 1;
        while (Slope(high) > 0) high += 0.5;
        return Outgoing(plan, lotSize, LogitScale.Fraction(Root.Between(Slope, low, high)));
    }

    /// <summary>The smallest plan that accepts good lots and rejects bad ones often enough: binomial.</summary>
    /// <param name="goodRate">The share of defective items of a good lot, in [0, 1).</param>
    /// <param name="producersRisk">The most that the chance of rejecting it may be, in (0, 1).</param>
    /// <param name="badRate">The share of defective items of a bad lot, above <paramref name="goodRate"/>, at most 1.</param>
    /// <param name="consumersRisk">The most that the chance of accepting it may be, in (0, 1).</param>
    /// <returns>The plan with the fewest items and both chances at it; undefined beyond <see cref="LargestSample"/> items.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// For each acceptance number from 0 the smallest sample that keeps the consumer's risk, until one keeps the producer's too: the samples grow
    /// with the acceptance number, so the first is the smallest.
    /// </remarks>
    public static PlanSearch Smallest(double goodRate, double producersRisk, double badRate, double consumersRisk)
    {
        if (!(goodRate is >= 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(goodRate), goodRate, "The good rate lies between 0 and 1, 1 excluded.");
        if (!(badRate > goodRate && badRate <= 1)) throw new ArgumentOutOfRangeException(nameof(badRate), badRate, "The bad rate lies above the good one and is at most 1.");
        if (!(producersRisk is > 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(producersRisk), producersRisk, "A risk lies strictly between 0 and 1.");
        if (!(consumersRisk is > 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(consumersRisk), consumersRisk, "A risk lies strictly between 0 and 1.");
        long size = 1;
        for (long c = 0; size <= LargestSample; c++)
        {
            size = Math.Max(size, c + 1);
            var (low, high) = (size - 1, size);
            while (high <= LargestSample && AtMost(c, high, badRate) > consumersRisk) (low, high) = (high, high * 2);
            high = Math.Min(high, LargestSample + 1);
            while (high - low > 1)
            {
                var middle = low + ((high - low) / 2);
                if (AtMost(c, middle, badRate) > consumersRisk) low = middle;
                else high = middle;
            }

            size = high;
            if (size > LargestSample) break;
            var accepted = AtMost(c, size, goodRate);
            if (accepted >= 1 - producersRisk) return new PlanSearch(new SamplingPlan(size, c), accepted, AtMost(c, size, badRate));
        }

        return new PlanSearch(null, null, null);
    }

    private static double AtMost(long c, long n, double rate) => c >= n ? 1 : Binomial.BetaUpper(c + 1, n - c, rate, 1 - rate);

    private static double PoissonAtMost(long c, double mean) => mean <= 0 ? 1 : SpecialFunctions.GammaUpperRegularized(c + 1, mean);

    private static void Check(SamplingPlan plan, long lotSize = long.MaxValue)
    {
        if (plan.Size < 1) throw new ArgumentOutOfRangeException(nameof(plan), plan.Size, "The sample must hold at least 1 item.");
        if (lotSize < plan.Size) throw new ArgumentOutOfRangeException(nameof(lotSize), lotSize, "The lot must hold at least the items of the sample.");
    }
}
