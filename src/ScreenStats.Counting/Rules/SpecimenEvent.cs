using ScreenStats.Counting.Cubes;

namespace ScreenStats.Counting.Rules;

/// <summary>A confirmatory specimen of one person, as far as the rules look at it.</summary>
/// <param name="Time">When it was collected.</param>
/// <param name="Result">What the laboratory reported.</param>
/// <param name="Reason">Why it was taken.</param>
public readonly record struct SpecimenEvent(Moment Time, ConfirmatoryResult Result, SpecimenReason Reason)
{
    /// <summary>True where the result is positive or negative.</summary>
    public bool IsConclusive => Result is ConfirmatoryResult.Positive or ConfirmatoryResult.Negative;

    /// <summary>True where the result is positive.</summary>
    public bool IsPositive => Result == ConfirmatoryResult.Positive;
}
