using System.Collections.Immutable;
using ScreenStats.Statistics.Monitoring.Scans;

namespace ScreenStats.Statistics.Economics.Uncertainty;

/// <summary>Seeded draws of figures, each parameter from a stream of its own.</summary>
/// <remarks>
/// A draw depends on the seed, the parameter's name and the number of the draw alone: another parameter more, another order or more draws leave it as it was. The same draw
/// serves all options, so that they are compared under the same state of the world. Generator: SplitMix64; gamma variables after Marsaglia and Tsang 2000, normal ones after Box
/// and Muller 1958 (from memory).
/// </remarks>
public static class ParameterDraws
{
    /// <summary>The most draws of one parameter.</summary>
    public const int MostDraws = 10_000_000;

    /// <summary>Draws of one figure.</summary>
    /// <param name="figure">What is known of it.</param>
    /// <param name="name">The name of the parameter, which tells its stream from the others; not empty.</param>
    /// <param name="draws">How many, 1 to <see cref="MostDraws"/>.</param>
    /// <param name="seed">What the drawing starts from.</param>
    /// <returns>The draws, in their order.</returns>
    /// <exception cref="ArgumentException">No name.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number of draws outside its domain.</exception>
    public static ImmutableArray<double> Of(UncertainFigure figure, string name, int draws, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var key = Key(name, draws, seed);
        var values = ImmutableArray.CreateBuilder<double>(draws);
        for (var draw = 0; draw < draws; draw++) values.Add(figure.Draw(new ReplicateStream(key, draw)));
        return values.MoveToImmutable();
    }

    /// <summary>Draws of shares that add up to 1.</summary>
    /// <param name="shares">What is known of them.</param>
    /// <param name="name">The name of the parameter, which tells its stream from the others; not empty.</param>
    /// <param name="draws">How many, 1 to <see cref="MostDraws"/>.</param>
    /// <param name="seed">What the drawing starts from.</param>
    /// <returns>For each share its draws, in their order.</returns>
    /// <exception cref="ArgumentException">No name.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number of draws outside its domain.</exception>
    public static ImmutableArray<ImmutableArray<double>> Of(UncertainShares shares, string name, int draws, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(shares);
        var key = Key(name, draws, seed);
        var values = shares.Weights.Select(_ => ImmutableArray.CreateBuilder<double>(draws)).ToArray();
        for (var draw = 0; draw < draws; draw++)
        {
            var drawn = shares.Draw(new ReplicateStream(key, draw));
            for (var share = 0; share < values.Length; share++) values[share].Add(drawn[share]);
        }

        return [.. values.Select(builder => builder.MoveToImmutable())];
    }

    /// <summary>The seed of a parameter's own stream: the hash of Fowler, Noll and Vo over its name (from memory), with the seed.</summary>
    private static ulong Key(string name, int draws, ulong seed)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        if (draws is < 1 or > MostDraws) throw new ArgumentOutOfRangeException(nameof(draws), draws, "The draws must lie between 1 and ten million.");
        var hash = 0xCBF29CE484222325UL;
        foreach (var letter in name)
        {
            hash = (hash ^ (letter & 0xFFUL)) * 0x100000001B3UL;
            hash = (hash ^ ((ulong)letter >> 8)) * 0x100000001B3UL;
        }

        return new ReplicateStream(seed ^ hash, 0).Next();
    }
}
