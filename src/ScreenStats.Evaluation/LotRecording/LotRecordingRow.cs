using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.LotRecording;

/// <summary>Runs of the program, or of one site, for which no lot is recorded.</summary>
/// <param name="Key">Grouping and site joined by a vertical bar.</param>
/// <param name="Grouping">Program or site.</param>
/// <param name="Level">Name of the site; empty for the whole program.</param>
/// <param name="WithoutLot">Runs without a lot (events) among all runs (trials).</param>
/// <param name="TestsWithoutLot">Valid tests among those without a lot.</param>
/// <param name="RefutedWithoutLot">Refuted positives among those without a lot.</param>
/// <param name="Refuted">Refuted positives of the part.</param>
/// <param name="SeenFrom">
/// How many times the program's rate of refuted positives these runs, if all of one faulty lot, must have for their site to be flagged in four programs of five; null where none is enough.
/// </param>
/// <param name="SeenFromUndefined">Why there is none; null where there is one.</param>
/// <param name="RecordedSeenFrom">The same if their lot were recorded, for that lot to be flagged.</param>
/// <param name="RecordedSeenFromUndefined">Why there is none; null where there is one.</param>
public sealed record LotRecordingRow(
    string Key, Grouping Grouping, string Level, ProportionFinding WithoutLot, long TestsWithoutLot, long RefutedWithoutLot, long Refuted,
    double? SeenFrom, string? SeenFromUndefined, double? RecordedSeenFrom, string? RecordedSeenFromUndefined);
