using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Worth.Lists;

/// <summary>Whom to send away, at one threshold: net benefit in true positives for each 1,000 screens.</summary>
/// <param name="Threshold">The chance of infection from which a person would be sent away.</param>
/// <param name="Screened">Net benefit of sending away those whose screen is positive, with limits widened for sites and weeks.</param>
/// <param name="Everyone">Net benefit of sending everyone away; that of sending no one away is 0.</param>
/// <param name="Best"><c>screen</c>, <c>everyone</c> or <c>no-one</c>.</param>
public sealed record WorthDecisionPoint(double Threshold, EstimateFinding Screened, EstimateFinding Everyone, string Best)
{
    /// <summary>The same without the runs of flagged lots; null where none is flagged.</summary>
    public WorthDecisionChoice? WithoutFlaggedLots { get; init; }
}
