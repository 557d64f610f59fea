namespace ScreenStats.Statistics.Cadence.Courses.ViralLoads;

/// <summary>How viral loads are simulated.</summary>
public sealed record ViralLoadSettings
{
    /// <summary>People drawn, 2 to 10,000,000.</summary>
    public int People { get; init; } = 20_000;

    /// <summary>
    /// Places of the infection within the schedule that are tried for each person, 1 to 100,000, evenly spread from a random beginning; null: all of
    /// them, integrated exactly.
    /// </summary>
    public int? Phases { get; init; }

    /// <summary>What the drawing starts from: the same seed gives the same figures.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Threads at most, 1 or more; null: as many as the machine gives. The figures do not depend on it.</summary>
    public int? Threads { get; init; }

    internal void Check()
    {
        if (People is < 2 or > 10_000_000) throw new ArgumentOutOfRangeException(nameof(People), People, "The people must number 2 to 10,000,000.");
        if (Phases is < 1 or > 100_000) throw new ArgumentOutOfRangeException(nameof(Phases), Phases, "The phases must number 1 to 100,000.");
        if (Threads is < 1) throw new ArgumentOutOfRangeException(nameof(Threads), Threads, "The threads must number 1 or more.");
    }
}
