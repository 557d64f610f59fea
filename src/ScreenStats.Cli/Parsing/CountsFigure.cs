namespace ScreenStats.Cli.Parsing;

/// <summary>Successes of trials, in that order of size; 0 of 0 is legal.</summary>
internal readonly record struct CountsFigure(long Successes, long Trials);
