namespace ScreenStats.Evaluation.Flow;

/// <summary>The boxes of the flow by their keys: a key begins with that of the box that it comes from, but for what begins anew.</summary>
public static class FlowKeys
{
    /// <summary>Rows of the screening export.</summary>
    public const string Rows = "rows";

    /// <summary>Counted runs.</summary>
    public const string Runs = "rows/counted";

    /// <summary>Positive runs.</summary>
    public const string Positive = "rows/counted/positive";

    /// <summary>Inconclusive runs: test line without control line.</summary>
    public const string Inconclusive = "rows/counted/inconclusive";

    /// <summary>Invalid runs.</summary>
    public const string Invalid = "rows/counted/invalid";

    /// <summary>Negative runs.</summary>
    public const string Negative = "rows/counted/negative";

    /// <summary>Rows of the confirmatory export.</summary>
    public const string SpecimenRows = "specimen-rows";

    /// <summary>Counted confirmatory specimens.</summary>
    public const string Specimens = "specimen-rows/counted";

    /// <summary>Specimens that a run's follow-up or audit rests on.</summary>
    public const string Settling = "specimen-rows/counted/settling";

    /// <summary>Specimens that settle no run.</summary>
    public const string NotLinked = "specimen-rows/counted/not-linked";

    /// <summary>Runs with a confirmatory specimen, of those of an outcome.</summary>
    /// <param name="outcome">Key of the outcome's box.</param>
    /// <returns>The key.</returns>
    public static string Tested(string outcome) => outcome + "/tested";

    /// <summary>Runs without one.</summary>
    /// <param name="outcome">Key of the outcome's box.</param>
    /// <returns>The key.</returns>
    public static string Untested(string outcome) => outcome + "/not-tested";

    /// <summary>The key of the box that a box comes from; empty where something begins.</summary>
    /// <param name="key">A key.</param>
    /// <returns>The key before its last part.</returns>
    /// <exception cref="ArgumentNullException">There is no key.</exception>
    public static string Parent(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return key.LastIndexOf('/') is > 0 and var at ? key[..at] : "";
    }

    /// <summary>What became of them: the last part of the key.</summary>
    /// <param name="key">A key.</param>
    /// <returns>Its last part.</returns>
    /// <exception cref="ArgumentNullException">There is no key.</exception>
    public static string Outcome(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return key[(key.LastIndexOf('/') + 1)..];
    }
}
