using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs.Surroundings;

namespace ScreenStats.Counting.Rules;

/// <summary>Whether a run was taken because of an outbreak at its site.</summary>
public static class OccasionRule
{
    /// <summary>The occasion of a run: what its row says; where the row says nothing, what the program file says of its site and day.</summary>
    /// <param name="marked">The row's own word; null where nothing is recorded.</param>
    /// <param name="site">Name of the site.</param>
    /// <param name="day">Local calendar day of the run.</param>
    /// <param name="outbreaks">The outbreaks of the program file.</param>
    /// <returns>The occasion.</returns>
    public static Occasion Of(bool? marked, string site, DateOnly day, ImmutableArray<OutbreakSettings> outbreaks) =>
        (marked ?? outbreaks.Any(outbreak => outbreak.Holds(site, day))) ? Occasion.Outbreak : Occasion.Routine;
}
