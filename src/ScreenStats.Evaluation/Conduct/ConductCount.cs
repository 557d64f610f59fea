namespace ScreenStats.Evaluation.Conduct;

/// <summary>Runs of which a measure of conduct could be told, and those with it.</summary>
internal sealed record ConductCount(string Site, string Lot, string Operator, DateOnly Day, long Trials, long Events);
