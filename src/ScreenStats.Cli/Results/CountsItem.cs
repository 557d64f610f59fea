namespace ScreenStats.Cli.Results;

/// <summary>The counts behind a proportion.</summary>
internal sealed record CountsItem(long Successes, long Trials);
