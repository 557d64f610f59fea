using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Rows;

/// <summary>What the step from one option to the next more frequent one adds.</summary>
public sealed record CadenceStep
{
    /// <summary>Both options, basis and measure, joined by vertical bars.</summary>
    public required string Key { get; init; }

    /// <summary>The less frequent option.</summary>
    public required string From { get; init; }

    /// <summary>The more frequent one.</summary>
    public required string To { get; init; }

    /// <summary>What is gained.</summary>
    public required CadenceMeasure Measure { get; init; }

    /// <summary>What is taken of infections brought in.</summary>
    public required CadenceBasis Basis { get; init; }

    /// <summary>Whether basis and measure are those that are told first.</summary>
    public required bool Leads { get; init; }

    /// <summary>What is gained, with limits from draws paired between the two options.</summary>
    public required EstimateFinding Gain { get; init; }

    /// <summary>Screens that it takes more.</summary>
    public required EstimateFinding MoreScreens { get; init; }

    /// <summary>The gain for each 1,000 more screens.</summary>
    public required EstimateFinding PerThousandScreens { get; init; }

    /// <summary>False alarms that come with it.</summary>
    public required EstimateFinding MoreFalseAlarms { get; init; }

    /// <summary>The gain for each false alarm more.</summary>
    public required EstimateFinding PerFalseAlarm { get; init; }
}
