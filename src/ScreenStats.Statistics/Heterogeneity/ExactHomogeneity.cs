using System.Runtime.InteropServices;
using ScreenStats.Statistics.Monitoring.Scans;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>The exact test that several groups have one rate, given both margins of the table.</summary>
public static class ExactHomogeneity
{
    // Two tables whose probabilities differ by rounding only are equally likely: the same figure as in Fisher's test of two groups.
    private const double Tolerance = 1e-7;

    /// <summary>Fisher's test extended to several groups (Freeman and Halton).</summary>
    /// <param name="groups">The groups, in any order; those without trials are left out.</param>
    /// <param name="options">How far tables are added up and how they are drawn; null for the defaults.</param>
    /// <returns>The p-value, with how it was found; a reason where fewer than two groups have trials, or nothing or everything was an event.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option outside its domain.</exception>
    /// <remarks>
    /// The sum of the probabilities of all tables with the observed margins that are at most 1 + 1e-7 times as likely as the observed one. Groups are
    /// taken one after the other; partial tables with the same sum and probability are one, and those whose completions all count, or none, are
    /// closed at once. Where more partial tables are open than the options allow, random tables are drawn and p = (1 + as unlikely) / (1 + drawn).
    /// Source: Freeman GH, Halton JH, Biometrika 1951;38:141-149; Mehta CR, Patel NR, J Am Stat Assoc 1983;78:427-434 (the network, from memory).
    /// </remarks>
    public static ExactHomogeneityResult Test(IReadOnlyList<GroupCount> groups, ExactHomogeneityOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(groups);
        options ??= new ExactHomogeneityOptions();
        options.Check();

        // In one order whatever the order given: large groups first leave the fewest sums open.
        GroupCount[] used = [.. groups.Where(group => group.Trials > 0).OrderByDescending(group => group.Trials).ThenBy(group => group.Events)];
        var (events, trials) = GroupCount.Sum(used);
        if (HomogeneityTest.ReasonOf(used, events, trials) is { } reason)
            return new ExactHomogeneityResult(used.Length, events, trials, null, null, null, 0, null, reason);

        // Events and non-events may change places: the rarer are spread over the groups.
        var turned = events > trials - events;
        var sizes = Array.ConvertAll(used, group => group.Trials);
        var counts = Array.ConvertAll(used, group => turned ? group.Trials - group.Events : group.Events);
        var spread = turned ? trials - events : events;
        if (options.MostPartialTables > 0 && spread <= 2000 && AddUp(sizes, counts, (int)spread, options.MostPartialTables) is { } sum)
            return new ExactHomogeneityResult(used.Length, events, trials, Math.Min(1, sum), ExactHomogeneityMethod.Network, null, 0, null, null);

        var p = Draw(sizes, counts, spread, trials, options);
        return new ExactHomogeneityResult(
            used.Length, events, trials, p, ExactHomogeneityMethod.MonteCarlo, Math.Sqrt(p * (1 - p) / options.Replicates), options.Replicates, options.Seed, null);
    }

    private static double LogChoices(long n, long k) => GammaLogarithm.Of(n + 1) - GammaLogarithm.Of(k + 1) - GammaLogarithm.Of(n - k + 1);

    private static double? AddUp(long[] sizes, long[] counts, int spread, int most)
    {
        var choices = Array.ConvertAll(sizes, size => Enumerable.Range(0, (int)Math.Min(size, spread) + 1).Select(k => LogChoices(size, k)).ToArray());
        var observed = 0.0;
        for (var i = 0; i < sizes.Length; i++) observed += choices[i][counts[i]];
        var limit = observed + Tolerance;
        var (least, greatest, mass) = Completions(sizes, choices, spread);
        var total = mass[0][spread];
        double sum = 0;
        var open = new Dictionary<(int Left, long Key), (double Log, double Ways)> { [(spread, 0)] = (0, 1) };
        for (var i = 0; i < sizes.Length; i++)
        {
            var next = new Dictionary<(int Left, long Key), (double Log, double Ways)>();
            foreach (var ((left, _), (log, ways)) in open)
            {
                for (var k = 0; k < choices[i].Length && k <= left; k++)
                {
                    var rest = left - k;
                    var past = log + choices[i][k];
                    if (double.IsNegativeInfinity(mass[i + 1][rest]) || past + least[i + 1][rest] > limit) continue;
                    if (past + greatest[i + 1][rest] <= limit)
                    {
                        sum += ways * Math.Exp(past + mass[i + 1][rest] - total);
                        continue;
                    }

                    ref var at = ref CollectionsMarshal.GetValueRefOrAddDefault(next, (rest, (long)Math.Round(past * 1e9)), out var known);
                    at = known ? (at.Log, at.Ways + (ways * Math.Exp(past - at.Log))) : (past, ways);
                }

                if (next.Count > most) return null;
            }

            open = next;
        }

        return sum;
    }

    /// <summary>For the groups from each on and each number left: the logarithm of the least and greatest product, and of the sum of all.</summary>
    private static (double[][] Least, double[][] Greatest, double[][] Mass) Completions(long[] sizes, double[][] choices, int spread)
    {
        var (least, greatest, mass) = (new double[sizes.Length + 1][], new double[sizes.Length + 1][], new double[sizes.Length + 1][]);
        least[^1] = [0, .. Enumerable.Repeat(double.PositiveInfinity, spread)];
        greatest[^1] = [0, .. Enumerable.Repeat(double.NegativeInfinity, spread)];
        mass[^1] = greatest[^1];
        long later = 0;
        for (var i = sizes.Length - 1; i >= 0; i--)
        {
            later += sizes[i];
            (least[i], greatest[i], mass[i]) = (new double[spread + 1], new double[spread + 1], new double[spread + 1]);
            for (var r = 0; r <= spread; r++)
            {
                var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
                for (var k = 0; k < choices[i].Length && k <= r; k++)
                {
                    low = Math.Min(low, choices[i][k] + least[i + 1][r - k]);
                    high = Math.Max(high, choices[i][k] + greatest[i + 1][r - k]);
                }

                (least[i][r], greatest[i][r], mass[i][r]) = (low, high, r <= later ? LogChoices(later, r) : double.NegativeInfinity);
            }
        }

        return (least, greatest, mass);
    }

    /// <summary>Draws the events one after the other without putting back, each falling on a group by the trials it has left.</summary>
    private static double Draw(long[] sizes, long[] counts, long spread, long trials, ExactHomogeneityOptions options)
    {
        var urn = new GroupUrn(sizes, trials);
        var logs = sizes.Max() < GroupUrn.MostKept ? Enumerable.Range(1, (int)sizes.Max() + 1).Select(n => GammaLogarithm.Of(n)).ToArray() : null;
        double Log(long[] table)
        {
            double log = 0;
            for (var i = 0; i < sizes.Length; i++)
                log += logs is null ? LogChoices(sizes[i], table[i]) : logs[sizes[i]] - logs[table[i]] - logs[sizes[i] - table[i]];
            return log;
        }

        var limit = Log(counts) + Tolerance;
        long asUnlikely = 0;
        var table = new long[sizes.Length];
        for (var replicate = 0; replicate < options.Replicates; replicate++)
        {
            var stream = new ReplicateStream(options.Seed, replicate);
            urn.Draw(ref stream, spread, table);
            if (Log(table) <= limit) asUnlikely++;
        }

        return (1.0 + asUnlikely) / (1.0 + options.Replicates);
    }
}
