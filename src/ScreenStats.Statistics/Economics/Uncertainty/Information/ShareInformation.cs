using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Economics.Uncertainty.Information;

/// <summary>What it is worth to learn a share, wholly or by a sample, before choosing between options whose net benefit is a straight line in it.</summary>
/// <remarks>
/// <para>With a share p known by Beta(a, b), a sample of n gives x with beta-binomial chances and a new mean (a + x)/(a + b + n). The sample is worth the expected highest
/// net benefit at the new mean, less the highest at the present one; with n it rises to the value of knowing p. Both are exact sums and integrals. What the sample costs must come off. So it is, for
/// instance, with verifying a sample of negatives, p being the share that was missed.</para>
/// <para>Source: Raiffa H, Schlaifer R, Applied Statistical Decision Theory, 1961 (from memory).</para>
/// </remarks>
public static class ShareInformation
{
    /// <summary>The name in tables of the value of a sample.</summary>
    public const string SampleMethod = "beta-binomial-sum";

    /// <summary>The name in tables of the value of knowing the share.</summary>
    public const string PerfectMethod = "beta-integral";

    /// <summary>The largest sample that is looked at.</summary>
    public const long LargestSample = 1_000_000;

    /// <summary>The value of a sample.</summary>
    /// <param name="known">What is known of the share now.</param>
    /// <param name="options">One or more options.</param>
    /// <param name="sample">How many are looked at, from 0 to <see cref="LargestSample"/>.</param>
    /// <returns>0 or more, before the cost of the sample.</returns>
    /// <exception cref="ArgumentException">No option.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static InformationValue OfSample(BetaDistribution known, IReadOnlyList<LinearBenefit> options, long sample)
    {
        var (best, now) = Now(known, options);
        if (sample is < 0 or > LargestSample) throw new ArgumentOutOfRangeException(nameof(sample), sample, "A sample has from 0 to a million.");
        var (a, b, n) = (known.Alpha, known.Beta, (double)sample);
        double Gain(double found)
        {
            var mean = (a + found) / (a + b + n);
            var own = options[best].At(mean);
            var highest = own;
            for (var option = 0; option < options.Count; option++) highest = Math.Max(highest, options[option].At(mean));
            return highest - own;
        }

        // From the likeliest number outwards, each chance from its neighbour; all of them scaled by their sum.
        var mode = a > 1 && b > 1 ? Math.Clamp(Math.Floor((n + 1) * (a - 1) / (a + b - 2)), 0, n) : a <= b ? 0 : n;
        var twoEnds = a < 1 && b < 1;
        double Up(double x) => (n - x) / (x + 1) * ((a + x) / (b + n - x - 1));
        double Down(double x) => x / (n - x + 1) * ((b + n - x) / (a + x - 1));
        var (total, value) = (1.0, Gain(mode));
        var chance = 1.0;
        for (var x = mode; x < n; x++)
        {
            chance *= Up(x);
            total += chance;
            value += chance * Gain(x + 1);
            if (!twoEnds && chance < 1e-25 * total) break;
        }

        chance = 1;
        for (var x = mode; x > 0; x--)
        {
            chance *= Down(x);
            total += chance;
            value += chance * Gain(x - 1);
            if (!twoEnds && chance < 1e-25 * total) break;
        }

        return new InformationValue(best, now, Math.Max(value / total, 0), null, null, SampleMethod);
    }

    /// <summary>The sample that is worth most after its cost, found by trying every size.</summary>
    /// <param name="known">What is known of the share now.</param>
    /// <param name="options">One or more options.</param>
    /// <param name="costOfEach">What it costs to look at one, 0 or more.</param>
    /// <param name="fixedCost">What it costs to take a sample at all, 0 or more.</param>
    /// <param name="largest">The largest sample that can be had, from 0 to 10,000.</param>
    /// <returns>The best size, the smallest of equal ones; 0 where none is worth its cost.</returns>
    /// <exception cref="ArgumentException">No option.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>The first few may be worth nothing, as they cannot change the choice, and more of them much: so no size is left out, but for those that cost more than knowing the share could gain.</remarks>
    public static BestSample Best(BetaDistribution known, IReadOnlyList<LinearBenefit> options, double costOfEach, double fixedCost, int largest)
    {
        Guard.Amount(costOfEach);
        Guard.Amount(fixedCost);
        if (largest is < 0 or > 10_000) throw new ArgumentOutOfRangeException(nameof(largest), largest, "The largest sample must lie between 0 and 10,000.");
        var most = OfPerfect(known, options).Value;
        var best = new BestSample(0, OfSample(known, options, 0), 0);
        for (var sample = 1; sample <= largest; sample++)
        {
            var cost = fixedCost + (sample * costOfEach);
            if (most - cost <= best.Net) break;
            var worth = OfSample(known, options, sample);

            // A gain within rounding is none.
            if (worth.Value - cost > best.Net + (1e-12 * most)) best = new BestSample(sample, worth, cost);
        }

        return best;
    }

    /// <summary>The value of knowing the share.</summary>
    /// <param name="known">What is known of the share now.</param>
    /// <param name="options">One or more options.</param>
    /// <returns>0 or more.</returns>
    /// <exception cref="ArgumentException">No option.</exception>
    /// <exception cref="ArgumentOutOfRangeException">What is known has a weight that is not above 0, as in a default value of the type.</exception>
    public static InformationValue OfPerfect(BetaDistribution known, IReadOnlyList<LinearBenefit> options)
    {
        var (best, now) = Now(known, options);
        var ahead = options.Select(option => (Zero: option.AtZero - options[best].AtZero, One: option.AtOne - options[best].AtOne)).ToArray();
        double Lead(double share) => ahead.Max(line => line.Zero + (share * (line.One - line.Zero)));

        // The upper envelope of the lines is straight between places where two of them cross.
        var marks = new SortedSet<double> { 0, 1 };
        for (var i = 0; i < ahead.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                var (zero, one) = (ahead[i].Zero - ahead[j].Zero, ahead[i].One - ahead[j].One);
                if (zero < 0 != one < 0 && zero != one) marks.Add(Math.Clamp(zero / (zero - one), 0, 1));
            }
        }

        double value = 0;
        foreach (var (low, high) in marks.Zip(marks.Skip(1)))
        {
            var (middle, line) = ((low + high) / 2, 0);
            for (var i = 1; i < ahead.Length; i++)
            {
                if (ahead[i].Zero + (middle * (ahead[i].One - ahead[i].Zero)) > ahead[line].Zero + (middle * (ahead[line].One - ahead[line].Zero))) line = i;
            }

            if (Lead(middle) <= 0) continue;
            value += (ahead[line].Zero * Mass(known.Alpha, known.Beta, low, high))
                + ((ahead[line].One - ahead[line].Zero) * known.Mean * Mass(known.Alpha + 1, known.Beta, low, high));
        }

        return new InformationValue(best, now, Math.Max(value, 0), null, null, PerfectMethod);
    }

    /// <summary>The chance of a beta variable between two places, from whichever tail is smaller.</summary>
    private static double Mass(double a, double b, double low, double high)
    {
        var below = Binomial.BetaLower(a, b, low, 1 - low);
        return below > 0.5
            ? Binomial.BetaUpper(a, b, low, 1 - low) - Binomial.BetaUpper(a, b, high, 1 - high)
            : Binomial.BetaLower(a, b, high, 1 - high) - below;
    }

    private static (int Best, double Now) Now(BetaDistribution known, IReadOnlyList<LinearBenefit> options)
    {
        ArgumentNullException.ThrowIfNull(options);
        if (options.Count == 0) throw new ArgumentException("There must be at least one option.", nameof(options));
        var mean = new BetaDistribution(known.Alpha, known.Beta).Mean;
        var best = 0;
        for (var option = 1; option < options.Count; option++)
        {
            if (options[option].At(mean) > options[best].At(mean)) best = option;
        }

        return (best, options[best].At(mean));
    }
}
