namespace ScreenStats.Statistics.Comparison;

/// <summary>Fisher's exact test of two independent proportions, given both margins of the table.</summary>
/// <remarks>
/// All take events of trials in each group and throw <see cref="ArgumentOutOfRangeException"/> for counts that cannot be. Where a margin is
/// empty only one table is possible and every p-value is 1 (a mid-P 1/2 on one side). Source: Fisher RA, J R Stat Soc 1935;98:39-82 (from
/// memory).
/// </remarks>
public static class FisherExact
{
    // Two tables whose probabilities differ by rounding only are equally likely: R's fisher.test uses the same figure.
    private const double Tolerance = 1e-7;

    /// <summary>The two-sided p-value: the chance of a table as unlikely as the observed one, or more so.</summary>
    /// <param name="firstSuccesses">Events in the first group, 0 to <paramref name="firstTrials"/>.</param>
    /// <param name="firstTrials">Trials in the first group, 0 or more.</param>
    /// <param name="secondSuccesses">Events in the second group, 0 to <paramref name="secondTrials"/>.</param>
    /// <param name="secondTrials">Trials in the second group, 0 or more.</param>
    /// <returns>A p-value in [0, 1]; below 1e-300 it may be 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    /// <remarks>
    /// The sum of the probabilities of all tables with the same margins that are at most 1 + 1e-7 times as likely as the observed one.
    /// Rejects true hypotheses less often than the level says.
    /// </remarks>
    public static double TwoSided(long firstSuccesses, long firstTrials, long secondSuccesses, long secondTrials)
    {
        var table = new Table(new TwoProportions(firstSuccesses, firstTrials, secondSuccesses, secondTrials));
        return table.AtMostAsLikely(Tolerance);
    }

    /// <summary>The two-sided mid-P: tables as likely as the observed one, itself among them, count half.</summary>
    /// <param name="firstSuccesses">Events in the first group, 0 to <paramref name="firstTrials"/>.</param>
    /// <param name="firstTrials">Trials in the first group, 0 or more.</param>
    /// <param name="secondSuccesses">Events in the second group, 0 to <paramref name="secondTrials"/>.</param>
    /// <param name="secondTrials">Trials in the second group, 0 or more.</param>
    /// <returns>A p-value in [0, 1]; below 1e-300 it may be 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    /// <remarks>
    /// Half of the probability of every tied table is subtracted from the exact p-value, not of the observed one alone, as in McNemar's mid-P (<see cref="Paired.McNemar.TwoSidedMidP"/>).
    /// Rejects true hypotheses about as often as the level says. Source: Lancaster HO, J Am Stat Assoc 1961;56:223-234 (from memory).
    /// </remarks>
    public static double TwoSidedMidP(long firstSuccesses, long firstTrials, long secondSuccesses, long secondTrials)
    {
        var table = new Table(new TwoProportions(firstSuccesses, firstTrials, secondSuccesses, secondTrials));
        return (table.AtMostAsLikely(Tolerance) + table.AtMostAsLikely(-Tolerance)) / 2;
    }

    /// <summary>The chance of at least as many events in the first group as observed: small where the first proportion is the greater.</summary>
    /// <param name="firstSuccesses">Events in the first group, 0 to <paramref name="firstTrials"/>.</param>
    /// <param name="firstTrials">Trials in the first group, 0 or more.</param>
    /// <param name="secondSuccesses">Events in the second group, 0 to <paramref name="secondTrials"/>.</param>
    /// <param name="secondTrials">Trials in the second group, 0 or more.</param>
    /// <returns>A p-value in [0, 1].</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    public static double Greater(long firstSuccesses, long firstTrials, long secondSuccesses, long secondTrials)
    {
        var table = new Table(new TwoProportions(firstSuccesses, firstTrials, secondSuccesses, secondTrials));
        return table.Upper(firstSuccesses);
    }

    /// <summary>The chance of at most as many events in the first group as observed: small where the first proportion is the smaller.</summary>
    /// <param name="firstSuccesses">Events in the first group, 0 to <paramref name="firstTrials"/>.</param>
    /// <param name="firstTrials">Trials in the first group, 0 or more.</param>
    /// <param name="secondSuccesses">Events in the second group, 0 to <paramref name="secondTrials"/>.</param>
    /// <param name="secondTrials">Trials in the second group, 0 or more.</param>
    /// <returns>A p-value in [0, 1].</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    public static double Less(long firstSuccesses, long firstTrials, long secondSuccesses, long secondTrials)
    {
        var table = new Table(new TwoProportions(firstSuccesses, firstTrials, secondSuccesses, secondTrials));
        return table.Lower(firstSuccesses);
    }

    /// <summary><see cref="Greater"/> with the observed table counting half.</summary>
    /// <param name="firstSuccesses">Events in the first group, 0 to <paramref name="firstTrials"/>.</param>
    /// <param name="firstTrials">Trials in the first group, 0 or more.</param>
    /// <param name="secondSuccesses">Events in the second group, 0 to <paramref name="secondTrials"/>.</param>
    /// <param name="secondTrials">Trials in the second group, 0 or more.</param>
    /// <returns>A p-value in [0, 1].</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    public static double GreaterMidP(long firstSuccesses, long firstTrials, long secondSuccesses, long secondTrials)
    {
        var table = new Table(new TwoProportions(firstSuccesses, firstTrials, secondSuccesses, secondTrials));
        return (table.Upper(firstSuccesses) + table.Upper(firstSuccesses + 1)) / 2;
    }

    /// <summary><see cref="Less"/> with the observed table counting half.</summary>
    /// <param name="firstSuccesses">Events in the first group, 0 to <paramref name="firstTrials"/>.</param>
    /// <param name="firstTrials">Trials in the first group, 0 or more.</param>
    /// <param name="secondSuccesses">Events in the second group, 0 to <paramref name="secondTrials"/>.</param>
    /// <param name="secondTrials">Trials in the second group, 0 or more.</param>
    /// <returns>A p-value in [0, 1].</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    public static double LessMidP(long firstSuccesses, long firstTrials, long secondSuccesses, long secondTrials)
    {
        var table = new Table(new TwoProportions(firstSuccesses, firstTrials, secondSuccesses, secondTrials));
        return (table.Lower(firstSuccesses) + table.Lower(firstSuccesses - 1)) / 2;
    }

    /// <summary>The tables with the margins of the observed one.</summary>
    private readonly struct Table(TwoProportions counts)
    {
        private readonly long observed = counts.FirstSuccesses;
        private readonly long population = checked(counts.FirstTrials + counts.SecondTrials);
        private readonly long events = counts.FirstSuccesses + counts.SecondSuccesses;
        private readonly long draws = counts.FirstTrials;

        public double Upper(long from) => Hypergeometric.UpperTail(from, population, events, draws);

        public double Lower(long to) => Hypergeometric.LowerTail(to, population, events, draws);

        /// <summary>The chance of all tables at most (1 + tolerance) times as likely as the observed one.</summary>
        /// <remarks>The probabilities rise to one top and then fall, so they are two tails, whose ends two bisections find.</remarks>
        public double AtMostAsLikely(double tolerance)
        {
            var lowest = Math.Max(0, draws - (population - events));
            var highest = Math.Min(events, draws);
            var limit = Log(observed) + tolerance;

            // The top: (n + 1)(K + 1) / (N + 2), rounded down.
            var top = (long)((Int128)(draws + 1) * (events + 1) / (population + 2));
            if (Log(top) <= limit) return 1;
            var (inside, outside) = (top, lowest - 1);
            while (inside - outside > 1)
            {
                var middle = outside + ((inside - outside) / 2);
                if (Log(middle) <= limit) outside = middle;
                else inside = middle;
            }

            var left = outside;
            (inside, outside) = (top, highest + 1);
            while (outside - inside > 1)
            {
                var middle = inside + ((outside - inside) / 2);
                if (Log(middle) <= limit) outside = middle;
                else inside = middle;
            }

            return Math.Min(1, Lower(left) + Upper(outside));
        }

        private double Log(long number) => Hypergeometric.LogProbability(number, population, events, draws);
    }
}
