namespace ScreenStats.Evaluation.Coverage;

/// <summary>People tested among people eligible. A complete count, so it has no interval.</summary>
/// <param name="Key">Site and week joined by a vertical bar, where there are any.</param>
/// <param name="Grouping">Program, site, or site and period (the period is an ISO week here).</param>
/// <param name="Level">Name of the site; empty for the whole program.</param>
/// <param name="Week">Monday of the ISO week; null for the whole span.</param>
/// <param name="Persons">People with a counted run at the site in the week; for a longer span the sum over site-weeks with a headcount.</param>
/// <param name="Eligible">People eligible, from the headcount; for a longer span the sum over site-weeks.</param>
public sealed record CoverageRow(string Key, Grouping Grouping, string Level, DateOnly? Week, long Persons, long Eligible)
{
    /// <summary>Persons divided by eligible, in [0, 1]; null where it has no meaning.</summary>
    public double? Share => ShareUndefined is null ? (double)Persons / Eligible : null;

    /// <summary>Why there is no share; null where there is one.</summary>
    public string? ShareUndefined => Eligible == 0
        ? "the headcount holds nobody"
        : Persons > Eligible ? "more people were tested than the headcount holds; check the headcount" : null;
}
