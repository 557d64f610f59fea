namespace ScreenStats.Evaluation.Cadence.Draws;

/// <summary>The draws of all figures, each from a stream of its own, and the ends of their ranges.</summary>
internal sealed class ParameterDraws
{
    private readonly IReadOnlyDictionary<Parameter, Uncertain> figures;
    private readonly Dictionary<Parameter, double[]> draws = [];
    private readonly Dictionary<Parameter, (double Lower, double Upper)> ends = [];

    public ParameterDraws(IReadOnlyDictionary<Parameter, Uncertain> figures, int count, ulong seed, double confidence)
    {
        this.figures = figures;
        Count = count;
        Centre = ParameterSet.Of(parameter => figures.GetValueOrDefault(parameter)?.Centre);
        foreach (var (parameter, figure) in figures)
        {
            if (figure.Draw is null) continue;
            var stream = new ParameterStream(seed, parameter.ToString());
            var values = new double[count];
            for (var index = 0; index < count; index++) values[index] = figure.Draw(stream);
            draws.Add(parameter, values);
            var range = Limits(values, confidence);
            ends.Add(parameter, (Math.Min(figure.Lower ?? range.Lower, figure.Centre), Math.Max(figure.Upper ?? range.Upper, figure.Centre)));
        }
    }

    public int Count { get; }

    /// <summary>Every figure at its centre.</summary>
    public ParameterSet Centre { get; }

    /// <summary>The figures that have a range, in their order.</summary>
    public IEnumerable<Parameter> Ranged => ends.Keys.Order();

    /// <summary>The ends of the range of a figure; null where it is taken as exact or not known.</summary>
    public (double Lower, double Upper)? Ends(Parameter parameter) => ends.TryGetValue(parameter, out var range) ? range : null;

    /// <summary>One draw of all figures.</summary>
    public ParameterSet At(int index) => ParameterSet.Of(parameter => draws.TryGetValue(parameter, out var values) ? values[index] : figures.GetValueOrDefault(parameter)?.Centre);

    /// <summary>One figure in each draw; null where it is not known.</summary>
    public Func<int, double?> Drawn(Parameter parameter)
    {
        var centre = Centre[parameter];
        return draws.TryGetValue(parameter, out var values) ? index => values[index] : _ => centre;
    }

    /// <summary>The middle of some draws: so many of them lie between the two.</summary>
    public static (double Lower, double Upper) Limits(double[] values, double confidence)
    {
        var sorted = (double[])values.Clone();
        Array.Sort(sorted);
        var tail = (1 - confidence) / 2;
        return (At(sorted, tail), At(sorted, 1 - tail));
    }

    // Linear between the order statistics, as at (n - 1) p.
    private static double At(double[] sorted, double fraction)
    {
        var place = fraction * (sorted.Length - 1);
        var below = (int)place;
        return below + 1 >= sorted.Length ? sorted[^1] : sorted[below] + ((place - below) * (sorted[below + 1] - sorted[below]));
    }
}
