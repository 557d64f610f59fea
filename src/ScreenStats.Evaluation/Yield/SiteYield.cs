namespace ScreenStats.Evaluation.Yield;

/// <summary>How much screening was done for each case at one site.</summary>
/// <param name="Site">Name of the site.</param>
/// <param name="RunsPerCase">Runs for each case, with what the site alone shows of chance from week to week.</param>
public sealed record SiteYield(string Site, YieldFinding RunsPerCase);
