namespace ScreenStats.Evaluation.Cadence.Outcomes;

/// <summary>Infections under one option over the days looked at.</summary>
/// <param name="Expected">All of them.</param>
/// <param name="Introductions">Those brought in from outside, as many whatever the option.</param>
/// <param name="Reproduction">Infections that one case causes inside under the option.</param>
internal readonly record struct Infections(double Expected, double Introductions, double Reproduction);
