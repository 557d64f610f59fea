using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Shared;

/// <summary>Trials and events by level and stratum, added up, so that trials and events may come apart. Levels that are not recorded are left out.</summary>
internal sealed class LevelCounts
{
    private readonly Dictionary<string, Dictionary<string, Sums>> levels = new(StringComparer.Ordinal);

    /// <summary>Those with trials, by level and stratum.</summary>
    public IEnumerable<(string Level, string Stratum, Sums Sums)> Cells
    {
        get
        {
            foreach (var level in levels.Keys.Order(Levels.Order))
            {
                var strata = levels[level];
                foreach (var stratum in strata.Keys.Order(StringComparer.Ordinal))
                {
                    if (strata[stratum] is { Trials: > 0 } sums) yield return (level, stratum, sums);
                }
            }
        }
    }

    /// <summary>Adds.</summary>
    public void Add(string level, string stratum, long trials, long events)
    {
        if (level == Levels.None) return;
        if (!levels.TryGetValue(level, out var strata)) levels.Add(level, strata = new Dictionary<string, Sums>(StringComparer.Ordinal));
        if (!strata.TryGetValue(stratum, out var sums)) strata.Add(stratum, sums = new Sums());
        sums.Trials += trials;
        sums.Events += events;
    }

    /// <summary>Trials and events.</summary>
    internal sealed class Sums
    {
        public long Trials { get; set; }

        public long Events { get; set; }
    }
}
