using MathNet.Numerics.Distributions;

namespace ScreenStats.Statistics.Cadence.Courses.Quadrature;

/// <summary>The chances of people with different effects at given overall chances: the probit effect that keeps the overall chance.</summary>
/// <remarks>
/// Over the effect z the trapezoidal rule with steps of √(1 - ρ)/2 out to 6: for means of products of up to 30 misses its error is below 3e-7
/// (against a rule five times as fine, for correlations up to 0.99); below 1e-8 up to a correlation of 0.3.
/// </remarks>
internal sealed class PersonChances
{
    /// <summary>Lanes of a vector: the number of effects is a multiple of it, the last with weight 0.</summary>
    public const int Lanes = 4;

    private const double Widest = 6;

    private readonly double[] effects;
    private readonly double scale;

    public PersonChances(double correlation)
    {
        if (correlation <= 0)
        {
            (effects, scale) = ([0, 0, 0, 0], 1);
            Weights = [1, 0, 0, 0];
            return;
        }

        var capped = Math.Min(correlation, ScreeningRules.LargestComputedCorrelation);
        scale = 1 / Math.Sqrt(1 - capped);
        var step = 0.5 / scale;
        var half = (int)Math.Ceiling(Widest / step);
        var count = ((2 * half) + Lanes) / Lanes * Lanes;
        (effects, Weights) = (new double[count], new double[count]);
        var root = Math.Sqrt(capped);
        var sum = 0.0;
        for (var i = 0; i <= 2 * half; i++)
        {
            var z = (i - half) * step;
            effects[i] = root * z;
            sum += Weights[i] = Math.Exp(-0.5 * z * z);
        }

        for (var i = 0; i < count; i++) Weights[i] /= sum;
    }

    /// <summary>The shares of people with each effect; they sum to 1.</summary>
    public double[] Weights { get; }

    public int Count => Weights.Length;

    /// <summary>The chance of a person with each effect where the overall one is p; 0 and 1 are the same for all.</summary>
    public void Fill(double chance, Span<double> chances)
    {
        if (scale == 1 || chance is <= 0 or >= 1)
        {
            chances.Fill(chance);
            return;
        }

        var middle = Normal.InvCDF(0, 1, chance);
        for (var i = 0; i < chances.Length; i++) chances[i] = NormalTable.Below((middle + effects[i]) * scale);
    }

    public double[] Of(double chance)
    {
        var chances = new double[Count];
        Fill(chance, chances);
        return chances;
    }
}
