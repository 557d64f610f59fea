using System.Collections.Immutable;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Charts;

/// <summary>A curve with its limits.</summary>
/// <param name="Name">What it is, written at its end.</param>
/// <param name="Tone">Its colour.</param>
/// <param name="Points">Places in rising order; limits equal to the value where there are none.</param>
internal sealed record CurveLine(string Name, Tone Tone, ImmutableArray<(double At, double Value, double Lower, double Upper)> Points)
{
    /// <summary>The value at a place, read off between its neighbours on a logarithmic axis; null outside.</summary>
    public double? ValueAt(double at)
    {
        for (var index = 1; index < Points.Length; index++)
        {
            var (left, right) = (Points[index - 1], Points[index]);
            if (at < left.At || at > right.At) continue;
            var share = (Math.Log(at) - Math.Log(left.At)) / (Math.Log(right.At) - Math.Log(left.At));
            return left.Value + (share * (right.Value - left.Value));
        }

        return null;
    }
}
