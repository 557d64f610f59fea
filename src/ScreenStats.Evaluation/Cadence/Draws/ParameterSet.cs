namespace ScreenStats.Evaluation.Cadence.Draws;

/// <summary>A value for each figure that is known.</summary>
internal sealed class ParameterSet
{
    private static readonly int Count = Enum.GetValues<Parameter>().Length;
    private readonly double?[] values = new double?[Count];

    public double? this[Parameter parameter]
    {
        get => values[(int)parameter];
        init => values[(int)parameter] = value;
    }

    /// <summary>The value of a figure that is known to be known.</summary>
    public double Known(Parameter parameter) => values[(int)parameter]!.Value;

    /// <summary>The same with one figure at another value.</summary>
    public ParameterSet With(Parameter parameter, double value)
    {
        var other = new ParameterSet();
        values.CopyTo(other.values, 0);
        other.values[(int)parameter] = value;
        return other;
    }

    public static ParameterSet Of(Func<Parameter, double?> value)
    {
        var set = new ParameterSet();
        for (var index = 0; index < Count; index++) set.values[index] = value((Parameter)index);
        return set;
    }
}
