namespace ScreenStats.Evaluation.WhatIf;

/// <summary>Where one control can start: a figure of the program or of what it states.</summary>
/// <param name="Key">What tells the row from the others.</param>
/// <param name="Name">Whose figures they are: <c>this program</c>, or the name of a device.</param>
/// <param name="Measure">Which control: <c>prevalence</c>, <c>sensitivity</c>, <c>specificity</c> or <c>days-between-screens</c>.</param>
/// <param name="Value">The figure.</param>
/// <param name="Lower">Its lower limit; null where it has none.</param>
/// <param name="Upper">Its upper limit; null where it has none.</param>
/// <param name="Method">What made it or its limits.</param>
/// <param name="Confidence">Confidence of the limits; null where there are none.</param>
/// <param name="Source">Where it comes from, in words.</param>
/// <param name="FromData">Whether it comes from the data of the program.</param>
/// <param name="At">Where the control starts: the figure as the control shows it (prevalence with three digits, sensitivity to a tenth and specificity to a hundredth of a per cent, whole days), or the nearest end of the control where it lies outside.</param>
public sealed record WhatIfStart(
    string Key, string Name, string Measure, double Value, double? Lower, double? Upper, string Method, double? Confidence, string Source, bool FromData, double At);
