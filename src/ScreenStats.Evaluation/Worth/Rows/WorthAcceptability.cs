namespace ScreenStats.Evaluation.Worth.Rows;

/// <summary>How likely an option is the best at one value of an effect.</summary>
/// <param name="Key">Value and option, joined by a vertical bar.</param>
/// <param name="Value">What one effect is worth.</param>
/// <param name="Option">The key of the option.</param>
/// <param name="Share">The share of draws in which its net benefit is highest.</param>
/// <param name="OnFrontier">Whether its mean net benefit is highest: the one to choose at that value.</param>
public sealed record WorthAcceptability(string Key, double Value, string Option, double Share, bool OnFrontier);
