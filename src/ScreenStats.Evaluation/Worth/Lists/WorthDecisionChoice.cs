using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Worth.Lists;

/// <summary>Whom to send away at one threshold, by some of the screens: net benefit in true positives for each 1,000 of them.</summary>
/// <param name="Screened">Net benefit of sending away those whose screen is positive, with limits widened for sites and weeks.</param>
/// <param name="Everyone">Net benefit of sending everyone away.</param>
/// <param name="Best"><c>screen</c>, <c>everyone</c> or <c>no-one</c>.</param>
public sealed record WorthDecisionChoice(EstimateFinding Screened, EstimateFinding Everyone, string Best);
