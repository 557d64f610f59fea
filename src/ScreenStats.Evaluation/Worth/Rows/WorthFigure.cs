using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Worth.Rows;

/// <summary>One figure of what screening cost and did.</summary>
/// <param name="Key">Measure and basis, joined by a vertical bar; where a figure stands again with other limits, these too.</param>
/// <param name="Measure">
/// <c>total-cost</c>, <c>cost-per-screen</c>, <c>cost-per-case</c>, <c>screens-per-case</c>, <c>days-lost</c>, <c>days-kept-out</c>, <c>days-kept-out-per-day-lost</c>,
/// <c>real-positives</c>, <c>cost-per-infectious-day</c>, <c>cost-per-infection-averted</c>, <c>average-cost</c>, <c>marginal-cost</c> or <c>screens-per-person</c>.
/// </param>
/// <param name="Basis"><c>counted</c>: in the data; <c>counted-without-flagged-lots</c>: the same without the runs of lots flagged for refuted positives; <c>modelled</c>: of what was done, over the days looked at; <c>rule</c>: by the rule of frequency, over the time of the data; <c>rule-without-flagged-lots</c>: by the same on the runs of the other lots; <c>as-done</c>: by the gaps as they were, over the same time; else the option that it is of.</param>
/// <param name="Unit">In what it is measured, in words.</param>
/// <param name="Figure">The figure with its limits.</param>
public sealed record WorthFigure(string Key, string Measure, string Basis, string Unit, EstimateFinding Figure)
{
    /// <summary>What the limits hold: <c>prices</c> (the ranges of prices and of stated figures), <c>counts</c> (chance in what was counted), <c>prices-and-counts</c>, <c>days</c> (those that one false alarm takes), <c>draws</c> (all that is uncertain); empty where there are none.</summary>
    public string LimitsOf { get; init; } = "";
}
