namespace ScreenStats.Counting.Programs.Surroundings;

/// <summary>Days on which the runs of a site were taken because of an outbreak there.</summary>
/// <param name="Site">Name of the site.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day, not before the first; null: it goes on.</param>
/// <param name="Note">What is said of it; empty where nothing is.</param>
public sealed record OutbreakSettings(string Site, DateOnly From, DateOnly? To, string Note)
{
    /// <summary>Whether a run of the site on a day is marked.</summary>
    /// <param name="site">Name of the site.</param>
    /// <param name="day">Local calendar day of the run.</param>
    /// <returns>True from the first to the last day, both included.</returns>
    public bool Holds(string site, DateOnly day) =>
        string.Equals(site, Site, StringComparison.Ordinal) && day >= From && (To is not { } last || day <= last);
}
