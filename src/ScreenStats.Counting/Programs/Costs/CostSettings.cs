using System.Collections.Immutable;
using ScreenStats.Counting.Programs.Cadence;

namespace ScreenStats.Counting.Programs.Costs;

/// <summary>What the program file states for the question whether screening is worth it. Null: not stated; no price has a default.</summary>
/// <remarks>Money is in <see cref="Currency"/> at the prices of <see cref="PriceYear"/>, from 0 to 1e12, and never converted.</remarks>
public sealed record CostSettings
{
    /// <summary>The currency of every amount of money, as stated; null where not stated.</summary>
    public string? Currency { get; init; }

    /// <summary>The year whose prices the amounts are, 1900 to 2200.</summary>
    public int? PriceYear { get; init; }

    /// <summary>Whose costs and effects are counted, such as "employer"; null where not stated.</summary>
    public string? Perspective { get; init; }

    /// <summary>Discount rate per year, in [0, 1]; null where not stated: nothing is discounted.</summary>
    public double? DiscountRate { get; init; }

    /// <summary>Price of one test device.</summary>
    public StatedRange? Kit { get; init; }

    /// <summary>Minutes of an operator for one screen, 0 to 1,440.</summary>
    public StatedRange? OperatorMinutes { get; init; }

    /// <summary>Cost of an hour of an operator.</summary>
    public StatedRange? OperatorHour { get; init; }

    /// <summary>Supervision, for one screen.</summary>
    public StatedRange? Supervision { get; init; }

    /// <summary>Disposal of waste, for one screen.</summary>
    public StatedRange? Waste { get; init; }

    /// <summary>Cost of one screen, all together; where it is stated, the five parts of it above are not.</summary>
    public StatedRange? Screen { get; init; }

    /// <summary>Cost of one confirmatory specimen.</summary>
    public StatedRange? ConfirmatoryTest { get; init; }

    /// <summary>Cost of a working day on which a true case is kept away because of the screen.</summary>
    public StatedRange? IsolationDay { get; init; }

    /// <summary>Cost of a working day lost to a false alarm.</summary>
    public StatedRange? WorkingDay { get; init; }

    /// <summary>Cost of one case of illness, for an infection averted that would have been one.</summary>
    public StatedRange? Illness { get; init; }

    /// <summary>Cost of one outbreak: a chain of five or more infections from one brought in, so not that of a large outbreak alone.</summary>
    public StatedRange? Outbreak { get; init; }

    /// <summary>Value of one infection averted: what its decision maker is willing to pay for it.</summary>
    public StatedRange? InfectionAverted { get; init; }

    /// <summary>Value of one infectious day removed.</summary>
    public StatedRange? InfectiousDay { get; init; }

    /// <summary>The most specimens of which the laboratory makes one pool, 2 to 1,000; null where it allows none or nothing is stated.</summary>
    public int? LargestPool { get; init; }

    /// <summary>How often people are to be screened by the positivity of the last period, the least frequent first; empty where not stated.</summary>
    public ImmutableArray<FrequencyRuleSettings> Rules { get; init; } = [];

    /// <summary>What only people can say about the evaluation.</summary>
    public EvaluationStatements Report { get; init; } = new();

    /// <summary>Where the amounts are from that name no source of their own; empty where not stated.</summary>
    public string Source { get; init; } = "";

    /// <summary>Whether any amount is stated.</summary>
    public bool AnyStated => this is not
    {
        Kit: null, OperatorMinutes: null, OperatorHour: null, Supervision: null, Waste: null, Screen: null, ConfirmatoryTest: null,
        IsolationDay: null, WorkingDay: null, Illness: null, Outbreak: null, InfectionAverted: null, InfectiousDay: null,
    };
}
