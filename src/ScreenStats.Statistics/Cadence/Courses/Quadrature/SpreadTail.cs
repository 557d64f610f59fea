namespace ScreenStats.Statistics.Cadence.Courses.Quadrature;

/// <summary>What is passed on from an age on by people whom symptoms have not isolated: the integral of v(x) (1 - w F(x)).</summary>
internal sealed class SpreadTail
{
    private readonly AgeCurve spread;
    private readonly OnsetLaw onset;
    private readonly double isolating;
    private readonly double[] slopes;
    private readonly double[] levels;
    private readonly double[] ends;

    /// <summary>Prepares the integrals.</summary>
    /// <param name="spread">The infectiousness v.</param>
    /// <param name="symptoms">When symptoms come, F.</param>
    public SpreadTail(AgeCurve spread, SymptomOnset symptoms)
    {
        this.spread = spread;
        onset = new OnsetLaw(symptoms);
        isolating = symptoms.Share * symptoms.IsolationShare;
        var count = Math.Max(spread.Ages.Length - 1, 0);
        (slopes, levels, ends) = (new double[count], new double[count], new double[count]);
        var after = 0.0;
        for (var i = count - 1; i >= 0; i--)
        {
            var (from, to) = (spread.Ages[i], spread.Ages[i + 1]);
            if (to > from)
            {
                slopes[i] = (spread.Values[i + 1] - spread.Values[i]) / (to - from);
                levels[i] = spread.Values[i] - (slopes[i] * from);
            }

            ends[i] = after + Plain(i, to);
            after = ends[i] - Plain(i, from);
        }

        Total = after;
    }

    /// <summary>The integral over all ages.</summary>
    public double Total { get; }

    /// <summary>The integral from an age on, where the age lies in the piece given of the infectiousness and its score and share of onsets are known.</summary>
    public double From(int piece, double age, double score, double share)
    {
        if (piece < 0) return Total;
        if (piece >= ends.Length) return 0;
        var (a, b) = (levels[piece], slopes[piece]);
        return ends[piece] - (age * (a + (b * age / 2))) + (isolating * onset.Antiderivative(a, b, age, score, share));
    }

    private double Plain(int piece, double age)
    {
        var (a, b) = (levels[piece], slopes[piece]);
        return (age * (a + (b * age / 2))) - (isolating * onset.Antiderivative(a, b, age));
    }
}
