using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Rows;

/// <summary>Infection in the last days of the data, against all of them: what comes may be like these days and not like the average.</summary>
public sealed record CadenceRecent
{
    /// <summary>How many days.</summary>
    public required int Days { get; init; }

    /// <summary>Cases found in them.</summary>
    public required long Cases { get; init; }

    /// <summary>Cases found in all days.</summary>
    public required long AllCases { get; init; }

    /// <summary>Positive runs of them that still wait for a confirmatory result.</summary>
    public required long Pending { get; init; }

    /// <summary>Infections per 100,000 person-days in them: the screens then taken to find as much as those of all days.</summary>
    public required EstimateFinding PerHundredThousand { get; init; }

    /// <summary>The same of all days.</summary>
    public required EstimateFinding AllPerHundredThousand { get; init; }

    /// <summary>Cases by screens in them, divided by that of the days before; limits exact, given the cases of both.</summary>
    public required EstimateFinding Ratio { get; init; }

    /// <summary>The option to choose at that incidence; null where the program file does not state what a step must add.</summary>
    public required string? Option { get; init; }

    /// <summary>At its lower limit.</summary>
    public required string? OptionAtLower { get; init; }

    /// <summary>At its upper limit.</summary>
    public required string? OptionAtUpper { get; init; }
}
