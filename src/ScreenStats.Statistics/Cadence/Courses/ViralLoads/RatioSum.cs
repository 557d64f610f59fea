namespace ScreenStats.Statistics.Cadence.Courses.ViralLoads;

/// <summary>Sums over people behind a ratio of two means and its standard error.</summary>
internal struct RatioSum
{
    private double top;
    private double bottom;
    private double topSquares;
    private double products;
    private double bottomSquares;

    public readonly double? Value => bottom > 0 ? top / bottom : null;

    public void Add(double above, double below)
    {
        top += above;
        bottom += below;
        topSquares += above * above;
        products += above * below;
        bottomSquares += below * below;
    }

    public void Add(in RatioSum other)
    {
        top += other.top;
        bottom += other.bottom;
        topSquares += other.topSquares;
        products += other.products;
        bottomSquares += other.bottomSquares;
    }

    /// <summary>The standard error by linearisation: the root of the sum of squares of (above - ratio below), over the sum below.</summary>
    public readonly double? Error(int people)
    {
        if (Value is not { } ratio) return null;
        var squares = topSquares - (2 * ratio * products) + (ratio * ratio * bottomSquares);
        return Math.Sqrt(Math.Max(squares, 0) * people / (people - 1.0)) / bottom;
    }
}
