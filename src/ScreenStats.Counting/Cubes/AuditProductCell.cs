namespace ScreenStats.Counting.Cubes;

/// <summary>Sum over people of the product of two of a person's totals: what a variance over people needs, and no person.</summary>
/// <param name="Stratum">Sampling stratum of the first total; empty for people, and for runs that belong to no stratum.</param>
/// <param name="Total">The first total.</param>
/// <param name="OtherStratum">Sampling stratum of the second total; empty as above. The second never comes before the first: stratum, then total.</param>
/// <param name="OtherTotal">The second total.</param>
/// <param name="Products">The sum, positive.</param>
/// <remarks>
/// Positive and negative runs stand in the stratum to which they belong, audited ones in the stratum that their specimen names (of a stratum
/// with a stated number, only as audited ones: which negative runs it holds is not known). There are cells only where at least one negative run was audited.
/// </remarks>
public sealed record AuditProductCell(string Stratum, AuditTotal Total, string OtherStratum, AuditTotal OtherTotal, long Products);
