namespace ScreenStats.Statistics.Verification;

/// <summary>One stratum of negative runs from which an audit drew its sample: how many there are, and what the audit found.</summary>
public readonly record struct AuditStratum
{
    /// <summary>Makes the stratum.</summary>
    /// <param name="name">The stratum's name, for tables; may be empty.</param>
    /// <param name="negatives">All negative runs of the stratum, audited or not.</param>
    /// <param name="missed">Audited ones the confirmatory test found positive.</param>
    /// <param name="agreed">Audited ones the confirmatory test found negative.</param>
    /// <exception cref="ArgumentNullException">No name (an empty one is a name).</exception>
    /// <exception cref="ArgumentOutOfRangeException">A count below 0, or more audited than there are.</exception>
    public AuditStratum(string name, long negatives, long missed, long agreed)
    {
        ArgumentNullException.ThrowIfNull(name);
        Guard.NotNegative(negatives);
        Guard.NotNegative(missed);
        Guard.NotNegative(agreed);
        if (missed > negatives - agreed)
            throw new ArgumentOutOfRangeException(nameof(negatives), negatives, "The negatives of a stratum must be at least those audited in it.");
        Name = name;
        Negatives = negatives;
        Missed = missed;
        Agreed = agreed;
    }

    /// <summary>The stratum's name; may be empty.</summary>
    public string Name { get; }

    /// <summary>All negative runs of the stratum, audited or not.</summary>
    public long Negatives { get; }

    /// <summary>Audited negative runs the confirmatory test found positive.</summary>
    public long Missed { get; }

    /// <summary>Audited negative runs the confirmatory test found negative.</summary>
    public long Agreed { get; }

    /// <summary>Audited negative runs with a conclusive result.</summary>
    public long Audited => Missed + Agreed;

    /// <summary>Negative runs that were not audited, or without a conclusive result.</summary>
    public long Unaudited => Negatives - Audited;
}
