namespace ScreenStats.Evaluation.Disclosure.Counts;

/// <summary>One count of a program, wherever it is shown: a part of the program (its unit), what is counted, and what a reader of the release knows of it.</summary>
internal sealed class CountVariable(CountUnit unit, string measure, long value)
{
    public CountUnit Unit { get; } = unit;

    public string Measure { get; } = measure;

    public long Value { get; } = value;

    /// <summary>Its place among all counts of the model.</summary>
    public int Place { get; init; }

    /// <summary>Shown somewhere, or derivable from a shown figure, unless hidden. A count that is not is never known by itself.</summary>
    public bool Published { get; set; }

    /// <summary>Hidden everywhere: it, and each figure drawn from it.</summary>
    public bool Hidden { get; set; }

    /// <summary>Known to every reader already, from an earlier release: hiding it protects nobody.</summary>
    public bool Known { get; set; }

    /// <summary>Known to be none, because a table that lists what there is has no row for it.</summary>
    public bool Absent { get; set; }

    /// <summary>False for a remainder that is only there to bound others.</summary>
    public bool Sensitive { get; init; } = true;

    /// <summary>A reader knows that it is at least this.</summary>
    public long LowerBound { get; set; }

    /// <summary>The reader's upper bound must reach this; 0 where nothing is asked.</summary>
    public long Need { get; set; }

    public override string ToString() => $"{Unit} {Measure}";
}
