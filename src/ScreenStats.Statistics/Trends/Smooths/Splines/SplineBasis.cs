namespace ScreenStats.Statistics.Trends.Smooths.Splines;

/// <summary>Cubic B-splines over segments of equal length: at each place four of them are not 0.</summary>
internal sealed class SplineBasis(double lower, double upper, int segments)
{
    private readonly double length = (upper - lower) / segments;

    public int Count => segments + 3;

    /// <summary>The first of the four and their values.</summary>
    public (int First, double[] Values) At(double place)
    {
        var scaled = (place - lower) / length;
        var segment = Math.Clamp((int)Math.Floor(scaled), 0, segments - 1);
        var u = scaled - segment;
        var v = 1 - u;
        return (segment, [v * v * v / 6, (4 + (u * u * ((3 * u) - 6))) / 6, (4 + (v * v * ((3 * v) - 6))) / 6, u * u * u / 6]);
    }

    /// <summary>Second differences of neighbouring coefficients, transposed times themselves.</summary>
    public double[,] Penalty()
    {
        var penalty = new double[Count, Count];
        double[] difference = [1, -2, 1];
        for (var k = 0; k + 2 < Count; k++)
        {
            for (var i = 0; i < 3; i++)
            {
                for (var j = 0; j < 3; j++) penalty[k + i, k + j] += difference[i] * difference[j];
            }
        }

        return penalty;
    }
}
