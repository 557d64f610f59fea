namespace ScreenStats.Records.Cache;

/// <summary>Where rows that were counted together stand in an entry.</summary>
/// <param name="Offset">Where the frame begins.</param>
/// <param name="Length">Its bytes.</param>
/// <param name="Rows">Rows in it.</param>
/// <param name="Part">Whose numbers of kinds, kits and operators it has.</param>
internal readonly record struct RowFrame(long Offset, int Length, int Rows, int Part);
