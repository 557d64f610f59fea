namespace ScreenStats.Cli.Results.Cadence;

/// <summary>How limits were made.</summary>
internal sealed record DrawsItem(string Method, int Draws, ulong Seed, double Confidence);
