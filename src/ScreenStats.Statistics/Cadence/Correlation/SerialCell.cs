namespace ScreenStats.Statistics.Cadence.Correlation;

/// <summary>One cell of a table of serial tests: of people with the infection, how many had a positive among so many tests in a row.</summary>
public readonly record struct SerialCell
{
    /// <summary>Makes a cell.</summary>
    /// <param name="group">The group of people, for instance by symptoms on the day of the first of the tests.</param>
    /// <param name="day">The day of the first of the tests, since the first positive confirmatory test; 0 to 1,000.</param>
    /// <param name="tests">Tests in a row, 1 to 10.</param>
    /// <param name="positives">People with at least one positive among them, 0 to <paramref name="infected"/>.</param>
    /// <param name="infected">People with the infection who took all of the tests, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public SerialCell(string group, int day, int tests, long positives, long infected)
    {
        ArgumentNullException.ThrowIfNull(group);
        if (day is < 0 or > 1000) throw new ArgumentOutOfRangeException(nameof(day), day, "The day must lie between 0 and 1,000.");
        if (tests is < 1 or > 10) throw new ArgumentOutOfRangeException(nameof(tests), tests, "From 1 to 10 tests in a row.");
        if (infected < 0) throw new ArgumentOutOfRangeException(nameof(infected), infected, "The number infected must be 0 or more.");
        if (positives < 0 || positives > infected) throw new ArgumentOutOfRangeException(nameof(positives), positives, "The positives must lie between 0 and the infected.");
        Group = group;
        Day = day;
        Tests = tests;
        Positives = positives;
        Infected = infected;
    }

    /// <summary>The group of people.</summary>
    public string Group { get; }

    /// <summary>The day of the first of the tests.</summary>
    public int Day { get; }

    /// <summary>Tests in a row.</summary>
    public int Tests { get; }

    /// <summary>People with at least one positive among them.</summary>
    public long Positives { get; }

    /// <summary>People with the infection who took all of the tests.</summary>
    public long Infected { get; }
}
