using System.Collections.Immutable;
using ScreenStats.Counting.Rules;

namespace ScreenStats.Counting.Programs.Cadence;

/// <summary>What the program set out to do at some of its sites, where that differs between sites.</summary>
/// <param name="Sites">Patterns (* and ?) of the sites, at least one.</param>
/// <param name="Option">How the people there were to be screened.</param>
public sealed record SitePlanSettings(ImmutableArray<string> Sites, CadenceOptionSettings Option)
{
    /// <summary>Whether it holds at a site.</summary>
    /// <param name="site">Name of the site.</param>
    /// <returns>True where one of the patterns fits.</returns>
    public bool Holds(string site)
    {
        ArgumentNullException.ThrowIfNull(site);
        return Sites.Any(pattern => DeviceRule.Fits(site, pattern));
    }
}
