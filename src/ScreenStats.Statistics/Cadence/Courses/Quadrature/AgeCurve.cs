namespace ScreenStats.Statistics.Cadence.Courses.Quadrature;

/// <summary>A curve over the age of an infection: linear between knots, with jumps where two knots have one age, 0 outside.</summary>
internal sealed class AgeCurve
{
    private static readonly AgeCurve Nothing = new([], []);

    private readonly double[] tails;

    private AgeCurve(double[] ages, double[] values)
    {
        Ages = ages;
        Values = values;
        tails = new double[ages.Length];
        for (var i = ages.Length - 2; i >= 0; i--) tails[i] = tails[i + 1] + ((ages[i + 1] - ages[i]) * (values[i] + values[i + 1]) / 2);
    }

    /// <summary>The ages of the knots, never falling.</summary>
    public double[] Ages { get; }

    public double[] Values { get; }

    public double First => Ages.Length == 0 ? 0 : Ages[0];

    public double Last => Ages.Length == 0 ? 0 : Ages[^1];

    /// <summary>The integral of the whole curve.</summary>
    public double Total => Ages.Length == 0 ? 0 : tails[0];

    public static AgeCurve Box(double from, double to, double height) => to > from ? new AgeCurve([from, to], [height, height]) : Nothing;

    /// <summary>A curve through points, without what is 0 before and after.</summary>
    /// <param name="ages">The ages, never falling.</param>
    /// <param name="values">The values.</param>
    /// <param name="keepAllZero">Whether a curve that is 0 throughout keeps its ends.</param>
    /// <param name="scale">Whether the values are divided by the highest.</param>
    public static AgeCurve Linear(double[] ages, double[] values, bool keepAllZero, bool scale)
    {
        if (ages.Length == 0 || ages[^1] <= ages[0]) return Nothing;
        var first = Array.FindIndex(values, value => value > 0);
        if (first < 0) return keepAllZero ? Box(ages[0], ages[^1], 0) : Nothing;
        var last = Array.FindLastIndex(values, value => value > 0);
        (first, last) = (Math.Max(first - 1, 0), Math.Min(last + 1, ages.Length - 1));

        // A jump at either end needs no knot of 0 at the same age: outside of its knots a curve is 0 anyway.
        if (first + 1 < ages.Length && ages[first] == ages[first + 1] && values[first] == 0) first++;
        if (last > 0 && ages[last] == ages[last - 1] && values[last] == 0) last--;
        if (ages[last] <= ages[first]) return Nothing;
        var highest = values.Max();
        return new AgeCurve(ages[first..(last + 1)], scale ? Array.ConvertAll(values[first..(last + 1)], value => value / highest) : values[first..(last + 1)]);
    }

    /// <summary>The piece [Ages[i], Ages[i + 1]) of some length that holds an age; -1 before the first, the last knot's index from the last on.</summary>
    public int Piece(double age)
    {
        var (low, high) = (-1, Ages.Length - 1);
        if (high < 0 || age < Ages[0]) return -1;
        if (age >= Ages[high]) return high;
        low = 0;
        while (high - low > 1)
        {
            var middle = (low + high) >> 1;
            if (Ages[middle] <= age) low = middle;
            else high = middle;
        }

        return low;
    }

    /// <summary>Whether the curve has the same value all along a piece.</summary>
    public bool IsFlat(int piece) => Values[piece] == Values[piece + 1];

    public double Value(double age)
    {
        var piece = Piece(age);
        if (piece < 0 || piece == Ages.Length - 1) return 0;
        return Values[piece] + ((Values[piece + 1] - Values[piece]) * (age - Ages[piece]) / (Ages[piece + 1] - Ages[piece]));
    }

    /// <summary>The integral from an age on, where the age lies in the piece given.</summary>
    public double Tail(int piece, double age)
    {
        if (piece < 0) return Total;
        if (piece >= Ages.Length - 1) return 0;
        var left = Ages[piece + 1] - age;
        var slope = (Values[piece + 1] - Values[piece]) / (Ages[piece + 1] - Ages[piece]);
        return tails[piece + 1] + (left * (Values[piece + 1] - (slope * left / 2)));
    }
}
