using System.Collections.Immutable;

namespace ScreenStats.Statistics.Cadence.Spread;

/// <summary>Outbreaks at several sites that do not infect each other.</summary>
/// <param name="Size">Cases that make an outbreak.</param>
/// <param name="Sites">The sites.</param>
/// <param name="Chances">For each site the chance that a case brought in becomes an outbreak.</param>
/// <param name="Expected">Outbreaks expected over all sites.</param>
/// <param name="ChanceOfAny">The chance of one or more.</param>
public sealed record SeparateOutbreaks(int Size, ImmutableArray<SiteIntroductions> Sites, ImmutableArray<double> Chances, double Expected, double ChanceOfAny);
