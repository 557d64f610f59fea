namespace ScreenStats.Evaluation.LotTests;

/// <summary>What one place (a lot, a site) has in one stratum.</summary>
/// <param name="Place">Name of the lot or site.</param>
/// <param name="Beside">The other thing that the stratum is of: the site of a lot, the lot of a site.</param>
/// <param name="Stratum">Number of the stratum.</param>
/// <param name="Events">Its events.</param>
/// <param name="Trials">Its trials.</param>
/// <param name="Weight">Its trials, weighted by follow-through where the measure asks for it.</param>
internal readonly record struct StratumPart(string Place, string Beside, int Stratum, long Events, long Trials, double Weight);
