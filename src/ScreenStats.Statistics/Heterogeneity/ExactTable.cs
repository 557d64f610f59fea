using System.Runtime.InteropServices;
using ScreenStats.Statistics.Monitoring.Scans;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>Fisher's exact test of a table of any size, for instance of sites by three kinds of result.</summary>
public static class ExactTable
{
    // As in the test of groups: tables whose probabilities differ by rounding only are equally likely.
    private const double Tolerance = 1e-7;

    private const int MostCounts = 10_000_000;

    /// <summary>The test that rows and columns are independent, given both margins (Freeman and Halton).</summary>
    /// <param name="table">The counts, row by row, 0 or more; rows and columns without counts are left out.</param>
    /// <param name="options">How far tables are added up and how they are drawn; null for the defaults.</param>
    /// <returns>The p-value, with how it was found; a reason where fewer than two rows or columns have counts.</returns>
    /// <exception cref="ArgumentNullException">No table.</exception>
    /// <exception cref="ArgumentException">Rows of different length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A count below 0, more than 10,000,000 counts in all, or an option outside its domain.</exception>
    /// <remarks>
    /// The sum of the probabilities of all tables with the observed margins that are at most 1 + 1e-7 times as likely as the observed one. All rows but the
    /// two largest are taken one after the other, partial tables with the same rest and probability as one; for each rest the last two rows are listed
    /// once, in order of their probability. Where more partial tables would be open than the options allow, random tables are drawn and
    /// p = (1 + as unlikely) / (1 + drawn). For two columns see <see cref="ExactHomogeneity"/>, which goes farther. Source: Freeman GH, Halton JH,
    /// Biometrika 1951;38:141-149.
    /// </remarks>
    public static ExactTableResult Test(IReadOnlyList<IReadOnlyList<long>> table, ExactHomogeneityOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(table);
        options ??= new ExactHomogeneityOptions();
        options.Check();
        if (table.Any(row => row.Count != table[0].Count)) throw new ArgumentException("All rows must have the same number of columns.", nameof(table));
        if (table.SelectMany(row => row).Any(count => count < 0)) throw new ArgumentOutOfRangeException(nameof(table), "A count must be 0 or more.");
        if (table.Sum(row => row.Sum(count => (double)count)) > MostCounts) throw new ArgumentOutOfRangeException(nameof(table), "There must be no more than 10,000,000 counts.");
        long[][] counts = [.. table.Where(row => row.Any(count => count > 0)).Select(row => row.ToArray())];
        int[] columns = [.. Enumerable.Range(0, table.Count == 0 ? 0 : table[0].Count).Where(j => counts.Any(row => row[j] > 0))];
        counts = [.. counts.Select(row => columns.Select(j => row[j]).ToArray())];
        var total = counts.Sum(row => row.Sum());
        ExactTableResult Result(double? p, ExactHomogeneityMethod? method, UndefinedReason? reason) => method == ExactHomogeneityMethod.MonteCarlo
            ? new ExactTableResult(counts.Length, columns.Length, total, p, method, Math.Sqrt(p!.Value * (1 - p.Value) / options.Replicates), options.Replicates, options.Seed, null)
            : new ExactTableResult(counts.Length, columns.Length, total, p, method, null, 0, null, reason);
        if (total == 0) return Result(null, null, UndefinedReason.NoTrials);
        if (counts.Length < 2 || columns.Length < 2) return Result(null, null, UndefinedReason.FewerThanTwoGroups);

        var factorials = new double[total + 1];
        for (var n = 1; n <= total; n++) factorials[n] = factorials[n - 1] + Math.Log(n);
        var log = -counts.Sum(row => row.Sum(count => factorials[count]));
        long[] rows = [.. counts.Select(row => row.Sum()).Order()], sums = [.. Enumerable.Range(0, columns.Length).Select(j => counts.Sum(row => row[j])).Order()];

        // The fewer counts outside the two largest, the fewer partial tables: rows and columns may change places.
        var wide = rows[..^2].Sum() <= sums[..^2].Sum();
        return AddUp(wide ? rows : sums, wide ? sums : rows, factorials, log + Tolerance, options.MostPartialTables) is { } sum
            ? Result(Math.Min(1, sum), ExactHomogeneityMethod.Network, null)
            : Result(Draw(rows, sums, factorials, log + Tolerance, options), ExactHomogeneityMethod.MonteCarlo, null);
    }

    private static double? AddUp(long[] rows, long[] sums, double[] factorials, double limit, int most)
    {
        var total = rows.Sum();
        if (sums.Aggregate(1.0, (product, sum) => product * (sum + 1)) > long.MaxValue / 2) return null;
        var open = new Dictionary<(long Left, long Key), (double Log, double Ways)> { [(Code(sums, sums), 0)] = (0, 1) };
        foreach (var row in rows[..^2])
        {
            var next = new Dictionary<(long Left, long Key), (double Log, double Ways)>();
            foreach (var ((code, _), (log, ways)) in open)
            {
                var listed = List(Rest(code, sums), row, factorials, most, (rest, part) =>
                {
                    var past = log + part;
                    ref var at = ref CollectionsMarshal.GetValueRefOrAddDefault(next, (Code(rest, sums), (long)Math.Round(past * 1e9)), out var known);
                    at = known ? (at.Log, at.Ways + (ways * Math.Exp(past - at.Log))) : (past, ways);
                    return next.Count <= most;
                });
                if (!listed) return null;
            }

            open = next;
        }

        // Both margins' probability of everything: Π row! Π column! / total!.
        var constant = rows.Sum(row => factorials[row]) + sums.Sum(sum => factorials[sum]) - factorials[total];
        double result = 0;
        long work = 0;
        foreach (var group in open.GroupBy(entry => entry.Key.Left).OrderBy(group => group.Key))
        {
            var ends = new List<double>();
            var listed = List(Rest(group.Key, sums), rows[^2], factorials, most, (rest, part) =>
            {
                ends.Add(part - rest.Sum(count => factorials[count]));
                return ends.Count <= most;
            });
            if (!listed || (work += ends.Count) > 100L * most) return null;
            ends.Sort();
            var (highest, masses) = (ends[^1], new double[ends.Count + 1]);
            for (var i = 0; i < ends.Count; i++) masses[i + 1] = masses[i] + Math.Exp(ends[i] - highest);
            foreach (var (_, (log, ways)) in group.OrderBy(entry => entry.Value.Log))
            {
                var found = ends.BinarySearch(limit - log);
                result += ways * Math.Exp(log + highest + constant) * masses[found >= 0 ? found + 1 : ~found];
            }
        }

        return result;
    }

    /// <summary>Lists how a row can be filled from what is left of the columns; false once it was told to stop.</summary>
    private static bool List(long[] left, long row, double[] factorials, int most, Func<long[], double, bool> take)
    {
        if (most == 0) return false;
        var rest = (long[])left.Clone();
        var behind = new long[left.Length + 1];
        for (var j = left.Length - 1; j >= 0; j--) behind[j] = behind[j + 1] + left[j];
        bool Fill(int column, long needed, double log)
        {
            if (column == left.Length) return take(rest, log);
            for (var count = Math.Max(0, needed - behind[column + 1]); count <= Math.Min(left[column], needed); count++)
            {
                rest[column] = left[column] - count;
                if (!Fill(column + 1, needed - count, log - factorials[count])) return false;
            }

            rest[column] = left[column];
            return true;
        }

        return Fill(0, row, 0);
    }

    private static long Code(long[] rest, long[] sums)
    {
        long code = 0;
        for (var j = 0; j < sums.Length; j++) code = (code * (sums[j] + 1)) + rest[j];
        return code;
    }

    private static long[] Rest(long code, long[] sums)
    {
        var rest = new long[sums.Length];
        for (var j = sums.Length - 1; j >= 0; j--) (code, rest[j]) = Math.DivRem(code, sums[j] + 1);
        return rest;
    }

    /// <summary>Deals the counts of the columns to the rows, shuffled anew for each table.</summary>
    private static double Draw(long[] rows, long[] sums, double[] factorials, double limit, ExactHomogeneityOptions options)
    {
        var start = new int[rows.Sum()];
        var filled = 0;
        for (var j = 0; j < sums.Length; j++)
        {
            for (var n = 0; n < sums[j]; n++) start[filled++] = j;
        }

        var cards = new int[start.Length];
        var cell = new long[sums.Length];
        long asUnlikely = 0;
        for (var replicate = 0; replicate < options.Replicates; replicate++)
        {
            var stream = new ReplicateStream(options.Seed, replicate);
            Array.Copy(start, cards, start.Length);
            double log = 0;
            var at = 0;
            foreach (var row in rows)
            {
                Array.Clear(cell);
                for (var n = 0; n < row; n++, at++)
                {
                    var other = at + (int)stream.Below(cards.Length - at);
                    (cards[at], cards[other]) = (cards[other], cards[at]);
                    cell[cards[at]]++;
                }

                foreach (var count in cell) log -= factorials[count];
            }

            if (log <= limit) asUnlikely++;
        }

        return (1.0 + asUnlikely) / (1.0 + options.Replicates);
    }
}
