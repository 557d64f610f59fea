namespace ScreenStats.Evaluation.Expected;

/// <summary>One point of one device's curve.</summary>
/// <param name="Device">The device.</param>
/// <param name="Point">The point.</param>
public sealed record CurveRow(string Device, CurvePoint Point);
