using System.Collections.Immutable;
using ScreenStats.Counting.Rules;

namespace ScreenStats.Counting.Programs.Surroundings;

/// <summary>A dated change that the program's owner names beforehand: a new kit, a new rule.</summary>
/// <param name="On">First day on which it held.</param>
/// <param name="What">What changed, in a few words.</param>
/// <param name="Sites">Patterns (* and ?) of the sites that it touched; empty: every site.</param>
public sealed record ChangeSettings(DateOnly On, string What, ImmutableArray<string> Sites)
{
    /// <summary>Whether the change touched a site.</summary>
    /// <param name="site">Name of the site.</param>
    /// <returns>True where no patterns are stated, or one of them fits.</returns>
    public bool Touches(string site)
    {
        ArgumentNullException.ThrowIfNull(site);
        return Sites.IsDefaultOrEmpty || Sites.Any(pattern => DeviceRule.Fits(site, pattern));
    }
}
