using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Scans;

/// <summary>
/// The chance that no window of one cell's length holds k of N events: the count of each cell, as the window slides over it, is a path; windows stay
/// below k where neighbouring paths, set apart by what the cell before lacks to k, do not meet.
/// </summary>
internal static class ScanPaths
{
    public static double NoCluster(int k, int events, int cells)
    {
        var scale = Math.Exp((Rising.Logarithms(1, events) - (events * Math.Log(cells))) / cells);
        var inverse = new double[events + 1];
        inverse[0] = 1;
        for (var i = 1; i <= events; i++) inverse[i] = inverse[i - 1] / i;
        var counts = new int[cells];
        var starts = new int[cells];
        var matrix = new double[cells * cells];
        double sum = 0;

        void Fill(int cell, int left)
        {
            if (cell == cells - 1)
            {
                counts[cell] = left;
                sum += Determinant(matrix, counts, starts, inverse, scale);
                return;
            }

            var room = (cells - cell - 1) * (k - 1);
            for (var n = Math.Max(0, left - room); n <= Math.Min(k - 1, left); n++)
            {
                counts[cell] = n;
                starts[cell + 1] = starts[cell] - (k - n);
                Fill(cell + 1, left - n);
            }
        }

        if (events <= cells * (k - 1)) Fill(0, events);
        return sum;
    }

    private static double Determinant(double[] m, int[] counts, int[] starts, double[] inverse, double scale)
    {
        var size = counts.Length;
        for (var i = 0; i < size; i++)
        {
            for (var j = 0; j < size; j++)
            {
                var steps = counts[j] + starts[j] - starts[i];
                m[(i * size) + j] = steps < 0 || steps >= inverse.Length ? 0 : inverse[steps] * scale;
            }
        }

        double determinant = 1;
        for (var column = 0; column < size; column++)
        {
            var pivot = column;
            for (var row = column + 1; row < size; row++)
            {
                if (Math.Abs(m[(row * size) + column]) > Math.Abs(m[(pivot * size) + column])) pivot = row;
            }

            var top = m[(pivot * size) + column];
            if (top == 0) return 0;
            if (pivot != column)
            {
                determinant = -determinant;
                for (var j = column; j < size; j++) (m[(column * size) + j], m[(pivot * size) + j]) = (m[(pivot * size) + j], m[(column * size) + j]);
            }

            determinant *= top;
            for (var row = column + 1; row < size; row++)
            {
                var factor = m[(row * size) + column] / top;
                if (factor == 0) continue;
                for (var j = column + 1; j < size; j++) m[(row * size) + j] -= factor * m[(column * size) + j];
            }
        }

        return determinant;
    }
}
