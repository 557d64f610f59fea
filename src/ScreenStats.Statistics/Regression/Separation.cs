namespace ScreenStats.Statistics.Regression;

/// <summary>
/// Finds combinations of terms that tell events from the others without exception, by linear programming: of all directions that lower the rate in no row
/// with events and raise it in none with others, the one that moves the rows most. Source: Albert A, Anderson JA, Biometrika 1984;71:1-10; Konis
/// K, thesis, Oxford 2007, chapter 4 (from memory).
/// </summary>
internal static class Separation
{
    private const double Small = 1e-9;

    /// <summary>The direction, 0 where there is none, and whether it moves all rows.</summary>
    public static (SeparationKind Kind, double[] Direction) Find(double[][] x, bool[] events, bool[] others)
    {
        // One constraint for each distinct row and side: s x'd >= 0; rows with both move neither way.
        var terms = x[0].Length;
        var constraints = new List<double[]>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        void Add(double[] row, double sign)
        {
            var largest = row.Max(Math.Abs);
            if (largest == 0) return;
            var scaled = Array.ConvertAll(row, value => sign * value / largest);
            if (seen.Add(string.Join(' ', scaled.Select(value => BitConverter.DoubleToInt64Bits(value + 0.0))))) constraints.Add(scaled);
        }

        for (var i = 0; i < x.Length; i++)
        {
            if (events[i]) Add(x[i], 1);
            if (others[i]) Add(x[i], -1);
        }

        var sums = new double[terms];
        foreach (var row in constraints)
        {
            for (var j = 0; j < terms; j++) sums[j] += row[j];
        }

        var direction = Maximise(constraints, sums);
        if (!constraints.Any(row => Dot(row, direction) > Small)) return (SeparationKind.None, new double[terms]);

        // Complete where one direction moves each row by a margin: the margin is one more unknown, and the largest one is sought.
        List<double[]> margins = [.. constraints.Select(row => (double[])[.. row, -1])];
        var widest = Maximise(margins, [.. new double[terms], 1]);
        return widest[^1] > Small ? (SeparationKind.Complete, widest[..^1]) : (SeparationKind.Partial, direction);
    }

    /// <summary>The direction in [-1, 1] per term that maximises the objective, each constraint kept at 0 or more: the simplex method from 0, by Bland's rule.</summary>
    private static double[] Maximise(List<double[]> constraints, double[] objective)
    {
        var terms = objective.Length;

        // d = u - v, 0 <= u, v <= 1: columns u, v; rows: -(c'd) + slack = 0, u + slack = 1, v + slack = 1.
        var (rows, columns) = (constraints.Count + (2 * terms), 2 * terms);
        var table = new double[rows + 1][];
        for (var r = 0; r <= rows; r++) table[r] = new double[columns + 1];
        for (var r = 0; r < constraints.Count; r++)
        {
            for (var j = 0; j < terms; j++)
            {
                var value = constraints[r][j];
                (table[r][j], table[r][terms + j]) = (-value, value);
            }
        }

        for (var j = 0; j < terms; j++) (table[rows][j], table[rows][terms + j]) = (-objective[j], objective[j]);

        for (var j = 0; j < columns; j++) (table[constraints.Count + j][j], table[constraints.Count + j][columns]) = (1, 1);
        var basic = Enumerable.Range(columns, rows).ToArray();
        var free = Enumerable.Range(0, columns).ToArray();
        for (var step = 0; step < 50_000; step++)
        {
            var enter = -1;
            for (var j = 0; j < columns; j++)
            {
                if (table[rows][j] < -Small && (enter < 0 || free[j] < free[enter])) enter = j;
            }

            if (enter < 0) break;
            var leave = -1;
            var best = double.PositiveInfinity;
            for (var r = 0; r < rows; r++)
            {
                if (table[r][enter] <= Small) continue;
                var ratio = table[r][columns] / table[r][enter];
                if (ratio < best - 1e-12 || (ratio < best + 1e-12 && basic[r] < basic[leave])) (best, leave) = (Math.Min(best, ratio), r);
            }

            if (leave < 0) break;
            Pivot(table, leave, enter);
            (basic[leave], free[enter]) = (free[enter], basic[leave]);
        }

        var solution = new double[terms];
        for (var r = 0; r < rows; r++)
        {
            if (basic[r] < terms) solution[basic[r]] += table[r][columns];
            else if (basic[r] < columns) solution[basic[r] - terms] -= table[r][columns];
        }

        return solution;
    }

    private static void Pivot(double[][] table, int row, int column)
    {
        var pivot = table[row][column];
        var width = table[row].Length;
        for (var j = 0; j < width; j++) table[row][j] /= pivot;
        table[row][column] = 1 / pivot;
        for (var r = 0; r < table.Length; r++)
        {
            if (r == row || table[r][column] == 0) continue;
            var factor = table[r][column];
            for (var j = 0; j < width; j++)
            {
                if (j != column) table[r][j] -= factor * table[row][j];
            }

            table[r][column] = -factor / pivot;
        }
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (var i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }
}
