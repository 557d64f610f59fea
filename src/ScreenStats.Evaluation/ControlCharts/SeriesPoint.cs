namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>What was counted at one point.</summary>
/// <param name="Name">What tells it from the others.</param>
/// <param name="Start">Its day, where it has one.</param>
/// <param name="Trials">Runs or valid tests, at least 1.</param>
/// <param name="Events">Unusable runs or refuted positives.</param>
/// <param name="Incomplete">Whether positives still wait for a result.</param>
internal sealed record SeriesPoint(string Name, DateOnly? Start, long Trials, long Events, bool Incomplete);
