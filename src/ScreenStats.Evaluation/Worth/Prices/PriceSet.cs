namespace ScreenStats.Evaluation.Worth.Prices;

/// <summary>A value for each amount; NaN where none is stated.</summary>
internal sealed class PriceSet
{
    private const double MinutesPerHour = 60;
    private static readonly int Count = Enum.GetValues<Price>().Length;
    private readonly double[] values = new double[Count];

    private PriceSet()
    {
    }

    public double this[Price price] => values[(int)price];

    /// <summary>All that one screen costs; NaN where a part is missing.</summary>
    public double Screen => !double.IsNaN(this[Price.Screen]) ? this[Price.Screen]
        : this[Price.Kit] + (this[Price.OperatorMinutes] / MinutesPerHour * this[Price.OperatorHour]) + this[Price.Supervision] + this[Price.Waste];

    public static PriceSet Of(Func<Price, double> value)
    {
        var set = new PriceSet();
        for (var index = 0; index < Count; index++) set.values[index] = value((Price)index);
        return set;
    }

    /// <summary>The same with one amount at another value.</summary>
    public PriceSet With(Price price, double value) => Of(other => other == price ? value : this[other]);
}
