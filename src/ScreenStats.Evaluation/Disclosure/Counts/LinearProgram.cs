namespace ScreenStats.Evaluation.Disclosure.Counts;

/// <summary>
/// Minimises a linear function over non-negative variables with upper limits under equations: the simplex method on a dense tableau in two
/// phases; a variable at its upper limit is replaced by its distance from it.
/// </summary>
/// <remarks>
/// Source: V. Chvátal, 1983, Linear Programming, chapters 3 (two phases), 8 (upper limits); against cycling by R. G. Bland's rule, 1977,
/// Mathematics of Operations Research 2:103. Coefficients are whole numbers of small size, so a tolerance of 1e-7 tells 0 from the least step.
/// </remarks>
internal sealed class LinearProgram
{
    private const double Zero = 1e-7;
    private readonly int columns;
    private readonly double[] upper;
    private readonly bool[] flipped;
    private readonly List<double[]> rows = [];
    private readonly List<double> right = [];
    private readonly List<int> basis = [];

    /// <param name="upper">Upper limit of each variable; positive infinity for none.</param>
    /// <param name="equations">Coefficients and right-hand sides.</param>
    public LinearProgram(double[] upper, IEnumerable<(IReadOnlyList<(int Column, double Factor)> Left, double Right)> equations)
    {
        columns = upper.Length;
        this.upper = upper;
        flipped = new bool[columns];
        foreach (var (left, value) in equations)
        {
            var row = new double[columns];
            var sign = value < 0 ? -1 : 1;
            foreach (var (column, factor) in left) row[column] += sign * factor;
            rows.Add(row);
            right.Add(sign * value);
            basis.Add(-1);
        }

        Feasible = FirstPhase();
    }

    /// <summary>Whether the equations have a solution within the limits.</summary>
    public bool Feasible { get; }

    /// <summary>The least value of a linear function and where it is taken; null where it has no least value.</summary>
    public (double Value, double[] At)? Minimize(double[] cost)
    {
        if (!Feasible) throw new InvalidOperationException("The equations have no solution within the limits.");
        var reduced = new double[columns];
        for (var column = 0; column < columns; column++) reduced[column] = flipped[column] ? -cost[column] : cost[column];
        for (var row = 0; row < rows.Count; row++)
        {
            if (basis[row] < 0) continue;
            var factor = flipped[basis[row]] ? -cost[basis[row]] : cost[basis[row]];
            if (factor == 0) continue;
            for (var column = 0; column < columns; column++) reduced[column] -= factor * rows[row][column];
        }

        if (!Run(reduced)) return null;
        var at = Solution();
        return (cost.Zip(at, (one, value) => one == 0 ? 0 : one * value).Sum(), at);
    }

    private double[] Solution()
    {
        var at = new double[columns];
        for (var row = 0; row < rows.Count; row++)
        {
            if (basis[row] >= 0) at[basis[row]] = right[row];
        }

        for (var column = 0; column < columns; column++)
        {
            if (flipped[column]) at[column] = upper[column] - at[column];
        }

        return at;
    }

    // Rows without a basic variable have an artificial one, whose sum is brought to 0.
    private bool FirstPhase()
    {
        var reduced = new double[columns];
        foreach (var row in rows)
        {
            for (var column = 0; column < columns; column++) reduced[column] -= row[column];
        }

        Run(reduced);
        for (var row = rows.Count - 1; row >= 0; row--)
        {
            if (basis[row] >= 0) continue;
            if (right[row] > 1e-5) return false;
            var column = Array.FindIndex(rows[row], value => Math.Abs(value) > 1e-6);
            if (column >= 0)
            {
                right[row] = 0;
                Pivot(row, column, new double[columns]);
            }
            else
            {
                rows.RemoveAt(row);
                right.RemoveAt(row);
                basis.RemoveAt(row);
            }
        }

        return true;
    }

    private bool Run(double[] reduced)
    {
        var most = 200 + (20 * (rows.Count + columns));
        for (var step = 0; ; step++)
        {
            if (step > 4 * most) throw new InvalidOperationException("The simplex method did not come to an end.");
            var entering = Entering(reduced, bland: step > most / 4);
            if (entering < 0) return true;
            if (!Step(entering, reduced)) return false;
        }
    }

    private int Entering(double[] reduced, bool bland)
    {
        var best = -1;
        var least = -Zero;
        for (var column = 0; column < columns; column++)
        {
            if (upper[column] <= 0 || reduced[column] >= least) continue;
            best = column;
            if (bland) return best;
            least = reduced[column];
        }

        return best;
    }

    private bool Step(int entering, double[] reduced)
    {
        var length = upper[entering];
        var leaving = -1;
        var atUpper = false;
        for (var row = 0; row < rows.Count; row++)
        {
            var factor = rows[row][entering];
            var artificial = basis[row] < 0;
            double limit;
            var up = false;
            if (factor > Zero) limit = right[row] / factor;
            else if (factor < -Zero && !artificial && double.IsFinite(upper[basis[row]]))
            {
                limit = (upper[basis[row]] - right[row]) / -factor;
                up = true;
            }
            else continue;
            limit = Math.Max(0, limit);
            if (limit < length - 1e-12 || (leaving >= 0 && limit <= length && basis[row] < basis[leaving]))
            {
                length = limit;
                leaving = row;
                atUpper = up;
            }
        }

        if (leaving < 0)
        {
            if (double.IsPositiveInfinity(length)) return false;
            Flip(entering, reduced);
            return true;
        }

        if (atUpper)
        {
            var basic = basis[leaving];
            for (var column = 0; column < columns; column++)
            {
                if (column != basic) rows[leaving][column] = -rows[leaving][column];
            }

            right[leaving] = upper[basic] - right[leaving];
            flipped[basic] = !flipped[basic];
        }

        Pivot(leaving, entering, reduced);
        return true;
    }

    private void Flip(int column, double[] reduced)
    {
        for (var row = 0; row < rows.Count; row++)
        {
            right[row] -= rows[row][column] * upper[column];
            rows[row][column] = -rows[row][column];
        }

        reduced[column] = -reduced[column];
        flipped[column] = !flipped[column];
    }

    private void Pivot(int leaving, int entering, double[] reduced)
    {
        var pivot = rows[leaving];
        var factor = pivot[entering];
        for (var column = 0; column < columns; column++) pivot[column] /= factor;
        right[leaving] /= factor;
        pivot[entering] = 1;
        var used = new List<int>();
        for (var column = 0; column < columns; column++)
        {
            if (Math.Abs(pivot[column]) > 1e-11) used.Add(column);
            else pivot[column] = 0;
        }

        for (var row = 0; row < rows.Count; row++)
        {
            if (row == leaving || rows[row][entering] == 0) continue;
            var other = rows[row];
            var times = other[entering];
            foreach (var column in used) other[column] -= times * pivot[column];
            other[entering] = 0;
            right[row] = Math.Max(0, right[row] - (times * right[leaving]));
        }

        var price = reduced[entering];
        if (price != 0)
        {
            foreach (var column in used) reduced[column] -= price * pivot[column];
            reduced[entering] = 0;
        }

        basis[leaving] = entering;
    }
}
