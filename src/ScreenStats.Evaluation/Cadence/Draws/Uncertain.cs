namespace ScreenStats.Evaluation.Cadence.Draws;

/// <summary>A figure that is not known exactly: its centre, its range, and how a value within it is drawn.</summary>
/// <param name="Centre">The figure.</param>
/// <param name="Lower">Lower end of its 95 % range; null where it is taken as exact, or where the draws give it.</param>
/// <param name="Upper">Upper end, likewise.</param>
/// <param name="Draw">Draws a value; null where it is taken as exact.</param>
internal sealed record Uncertain(double Centre, double? Lower, double? Upper, Func<ParameterStream, double>? Draw)
{
    /// <summary>The normal quantile of the upper end of a 95 % range.</summary>
    private const double End = 1.959963984540054;

    public static Uncertain Exact(double value) => new(value, null, null, null);

    /// <summary>
    /// A figure of 0 or more: normal on the scale of the logarithm, with a spread of its own on each side, so that the value is the median and
    /// the range leaves 2.5 % beyond each end. A range that begins at 0 is taken on the scale of the square root.
    /// </summary>
    public static Uncertain Positive(double value, double? lower, double? upper, double most = double.MaxValue) => Ranged(
        value, lower, upper, (low, high) => low > 0
            ? Split(Math.Log, Math.Exp, value, low, high, 0, most)
            : Split(Math.Sqrt, x => Math.Max(x, 0) * Math.Max(x, 0), value, low, high, 0, most));

    /// <summary>A share: likewise on the scale of the logit; a range that reaches 0 or 1 on the plain scale, cut there.</summary>
    public static Uncertain Share(double value, double? lower, double? upper) => Ranged(
        value, lower, upper, (low, high) => low > 0 && high < 1
            ? Split(x => Math.Log(x / (1 - x)), x => 1 / (1 + Math.Exp(-x)), value, low, high, 0, 1)
            : Split(x => x, x => x, value, low, high, 0, 1));

    /// <summary>Known by counts, or by draws of another kind, that give its range.</summary>
    public static Uncertain Drawn(double centre, Func<ParameterStream, double> draw) => new(centre, null, null, draw);

    private static Uncertain Ranged(double value, double? lower, double? upper, Func<double, double, Func<ParameterStream, double>> draw) =>
        lower is { } low && upper is { } high && high > low ? new Uncertain(value, low, high, draw(low, high)) : Exact(value);

    private static Func<ParameterStream, double> Split(Func<double, double> to, Func<double, double> from, double value, double low, double high, double least, double most)
    {
        var (centre, down, up) = (to(value), (to(value) - to(low)) / End, (to(high) - to(value)) / End);
        return stream =>
        {
            var z = stream.Normal();
            return Math.Clamp(from(centre + (z * (z < 0 ? down : up))), least, most);
        };
    }
}
