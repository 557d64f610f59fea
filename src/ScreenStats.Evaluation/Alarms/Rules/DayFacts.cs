using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>What became known on a day.</summary>
internal sealed class DayFacts
{
    /// <summary>Runs of the day by site and lot, in ordinal order.</summary>
    public List<Use> Uses { get; } = [];

    /// <summary>Follow-ups that became known on the day, in canonical order.</summary>
    public List<SettlementCell> Changes { get; } = [];

    /// <summary>Control swabs of the day.</summary>
    public List<ControlCell> Controls { get; } = [];

    /// <summary>Findings of conduct that became known on the day.</summary>
    public List<ConductCell> Conduct { get; } = [];

    /// <summary>Operators who did runs on the day, in ordinal order.</summary>
    public SortedSet<string> Operators { get; } = new(Levels.Order);
}
