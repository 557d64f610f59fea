using System.Collections.Immutable;

namespace ScreenStats.Statistics.Economics.Uncertainty.OneWay;

/// <summary>Each parameter set to its ends in turn: which of them the outcome hangs on (a tornado).</summary>
/// <remarks>
/// Two parameters that matter together only, or an outcome that is extreme within a range, do not show: the probabilistic analysis has these. Source: definitions; Briggs A, Sculpher M,
/// Claxton K, Decision Modelling for Health Economic Evaluation, 2006 (from memory).
/// </remarks>
public static class OneWayAnalysis
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "one-way";

    /// <summary>The swings.</summary>
    /// <param name="parameters">The parameters.</param>
    /// <param name="outcome">The outcome at given values of all parameters, in their order; null (or a number that is not finite) where it has none.</param>
    /// <returns>One swing for each parameter, the widest first, those equally wide in the order given, those without a swing last.</returns>
    public static ImmutableArray<OneWaySwing> Of(IReadOnlyList<ParameterRange> parameters, Func<ImmutableArray<double>, double?> outcome)
    {
        ArgumentNullException.ThrowIfNull(parameters);
        ArgumentNullException.ThrowIfNull(outcome);
        ImmutableArray<double> values = [.. parameters.Select(parameter => parameter.Value)];
        double? At(int index, double end) => outcome(values.SetItem(index, end)) is { } found && double.IsFinite(found) ? found : null;
        return
        [
            .. parameters.Select((parameter, index) => new OneWaySwing(index, At(index, parameter.Lower), At(index, parameter.Upper)))
                .OrderByDescending(swing => swing.Swing ?? -1).ThenBy(swing => swing.Index),
        ];
    }
}
