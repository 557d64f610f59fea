namespace ScreenStats.Statistics.Tests.Monitoring.Sequential;

/// <summary>Compares a simulated average with a computed one.</summary>
internal static class Simulated
{
    public static void ShouldAgree(IReadOnlyList<double> lengths, double expected)
    {
        var mean = lengths.Average();
        var error = Math.Sqrt(lengths.Sum(one => (one - mean) * (one - mean)) / (lengths.Count - 1) / lengths.Count);
        mean.Should().BeApproximately(expected, 3 * error);
        error.Should().BeLessThan(0.05 * expected, "a wide error proves nothing");
    }

    /// <summary>A standard normal number.</summary>
    public static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
