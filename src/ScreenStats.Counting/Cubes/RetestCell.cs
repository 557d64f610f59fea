namespace ScreenStats.Counting.Cubes;

/// <summary>Positive runs that were repeated on the same person and day before any specimen: pairs of runs, see <see cref="Rules.RetestRule"/>.</summary>
/// <param name="Site">Site of the positive run.</param>
/// <param name="Lot">Lot of the positive run, or <see cref="Levels.None"/>.</param>
/// <param name="Day">Local day of both runs.</param>
/// <param name="RetestLot">Lot of the retest, or <see cref="Levels.None"/>.</param>
/// <param name="Retest">Outcome of the retest.</param>
/// <param name="FollowUp">What became of the positive run.</param>
/// <param name="Pairs">Number of pairs, positive.</param>
public sealed record RetestCell(
    string Site, string Lot, DateOnly Day, string RetestLot, Outcome Retest, FollowUp FollowUp, long Pairs);
