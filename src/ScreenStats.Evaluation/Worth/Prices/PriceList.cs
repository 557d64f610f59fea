using System.Collections.Immutable;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Counting.Programs.Costs;
using ScreenStats.Statistics.Economics.Uncertainty;
using ScreenStats.Statistics.Economics.Yield;

namespace ScreenStats.Evaluation.Worth.Prices;

/// <summary>The amounts as stated, and their draws: each from a stream of its own.</summary>
internal sealed class PriceList
{
    /// <summary>The normal quantile of the upper end of a 95 % range.</summary>
    private const double End = 1.959963984540054;

    /// <summary>A lower end below this part of the upper one is as good as 0.</summary>
    private const double LeastPart = 1e-6;

    /// <summary>Where it begins at 0, a range wider than this many times its value has no gamma distribution worth the name.</summary>
    private const double Widest = 5;

    private static readonly Price[] Parts = [Price.Kit, Price.OperatorMinutes, Price.OperatorHour, Price.Supervision, Price.Waste];
    private readonly CostSettings settings;
    private readonly Dictionary<Price, ImmutableArray<double>> drawn = [];

    public PriceList(CostSettings settings, int draws, ulong seed)
    {
        this.settings = settings;
        Centre = PriceSet.Of(price => Stated(price)?.Value ?? double.NaN);
        foreach (var price in Enum.GetValues<Price>())
        {
            if (Stated(price) is { TakenAsExact: false } range) drawn.Add(price, Statistics.Economics.Uncertainty.ParameterDraws.Of(Uncertain(range), "costs." + PriceWords.Of(price).Key, draws, seed));
        }
    }

    /// <summary>Every amount at its value.</summary>
    public PriceSet Centre { get; }

    /// <summary>The amounts with a range.</summary>
    public IEnumerable<Price> Ranged => drawn.Keys.Order();

    /// <summary>Whether the cost of a screen is stated, as one figure or in all of its parts.</summary>
    public bool KnowsScreen => !double.IsNaN(Centre.Screen);

    /// <summary>The parts of the cost of a screen that are missing; empty where it is known.</summary>
    public IEnumerable<Price> MissingParts => KnowsScreen ? [] : Parts.Where(part => Stated(part) is null);

    public bool Knows(Price price) => price == Price.Screen ? KnowsScreen : Stated(price) is not null;

    /// <summary>One draw of all amounts.</summary>
    public PriceSet At(int index) => PriceSet.Of(price => drawn.TryGetValue(price, out var values) ? values[index] : Centre[price]);

    /// <summary>An amount in every draw; it must have a range.</summary>
    public ImmutableArray<double> Drawn(Price price) => drawn[price];

    public StatedRange? Stated(Price price) => price switch
    {
        Price.Screen => settings.Screen,
        Price.Kit => settings.Kit,
        Price.OperatorMinutes => settings.OperatorMinutes,
        Price.OperatorHour => settings.OperatorHour,
        Price.Supervision => settings.Supervision,
        Price.Waste => settings.Waste,
        Price.ConfirmatoryTest => settings.ConfirmatoryTest,
        Price.IsolationDay => settings.IsolationDay,
        Price.WorkingDay => settings.WorkingDay,
        Price.Illness => settings.Illness,
        Price.Outbreak => settings.Outbreak,
        _ => throw new ArgumentOutOfRangeException(nameof(price), price, "Not an amount of this analysis."),
    };

    /// <summary>Where an amount is from.</summary>
    public string Source(Price price)
    {
        if (Stated(price) is not { } stated) return "";
        var source = stated.Source.Length > 0 ? stated.Source : settings.Source.Length > 0 ? settings.Source : "program file";
        return stated.TakenAsExact ? source + "; taken as exact" : source;
    }

    /// <summary>An amount with its range; null where it is not stated.</summary>
    public StatedAmount? Amount(Price price) => Stated(price) is { } stated ? new StatedAmount(stated.Value, stated.Lower ?? stated.Value, stated.Upper ?? stated.Value) : null;

    /// <summary>The cost of a screen with the ends of all its parts; null where one is missing.</summary>
    public StatedAmount? ScreenAmount() => !KnowsScreen ? null : Amount(Price.Screen) ?? new StatedAmount(Centre.Screen, AtEnd(lower: true).Screen, AtEnd(lower: false).Screen);

    /// <summary>An operator's time for one screen; null where minutes or the cost of an hour are missing.</summary>
    public StatedAmount? OperatorAmount()
    {
        const double MinutesPerHour = 60;
        return Amount(Price.OperatorMinutes) is { } minutes && Amount(Price.OperatorHour) is { } hour
            ? new StatedAmount(minutes.Value * hour.Value / MinutesPerHour, minutes.Lower * hour.Lower / MinutesPerHour, minutes.Upper * hour.Upper / MinutesPerHour)
            : null;
    }

    private PriceSet AtEnd(bool lower) => PriceSet.Of(price => Amount(price) is { } amount ? lower ? amount.Lower : amount.Upper : double.NaN);

    private static UncertainFigure Uncertain(StatedRange range)
    {
        var (lower, upper) = (range.Lower!.Value, range.Upper!.Value);
        return lower < LeastPart * upper && (upper - lower) / (2 * End) > Widest * range.Value ? UncertainFigure.Uniform(lower, upper) : UncertainFigure.GammaByRange(range.Value, lower, upper);
    }
}
