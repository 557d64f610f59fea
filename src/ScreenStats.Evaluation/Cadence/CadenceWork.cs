using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Evaluation.Cadence.Outcomes;

namespace ScreenStats.Evaluation.Cadence;

/// <summary>How the outcomes of the options were computed: what is worked out from them takes the same draws.</summary>
/// <param name="Known">Every figure of the computation.</param>
/// <param name="Draws">Their draws.</param>
/// <param name="Options">The options.</param>
/// <param name="Outcomes">What each gives and costs, at the centre and in every draw.</param>
internal sealed record CadenceWork(KnownFigures Known, ParameterDraws Draws, OptionList Options, OutcomeDraws Outcomes);
