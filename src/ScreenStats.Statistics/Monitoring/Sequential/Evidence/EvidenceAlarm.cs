namespace ScreenStats.Statistics.Monitoring.Sequential.Evidence;

/// <summary>The first look at which the evidence against a lot reached the threshold.</summary>
/// <param name="Index">The place of the look in <see cref="EvidencePath.Points"/>, from 0.</param>
/// <param name="Look">The look, as the events name it.</param>
/// <param name="Events">Events by then that could have fallen on the lot or elsewhere.</param>
/// <param name="OnLot">Those of them that fell on the lot.</param>
/// <param name="Expected">How many were expected to.</param>
/// <param name="RisingSince">The look with which the rise began: the first one after the evidence was last at its lowest.</param>
public sealed record EvidenceAlarm(int Index, long Look, long Events, long OnLot, double Expected, long RisingSince);
