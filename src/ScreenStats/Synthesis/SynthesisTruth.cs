using System.Collections.Immutable;

namespace ScreenStats.Synthesis;

/// <summary>
/// What is true of a synthetic program that was written: the counts that its exports only show through dirt and error.
/// "Counted" runs are those a reader should count: no duplicate, no row that must be set aside, no control swab, nobody
/// symptomatic or exposed.
/// </summary>
public sealed record SynthesisTruth
{
    /// <summary>Says that nothing here happened to anybody.</summary>
    public string Remark { get; init; } = "Synthetic: made by ScreenStats from the plan beside this file. No person in it exists.";

    /// <summary>The seed.</summary>
    public ulong Seed { get; init; }

    /// <summary>Rows of the screening export.</summary>
    public long Rows { get; init; }

    /// <summary>Rows that must be set aside.</summary>
    public long SetAside { get; init; }

    /// <summary>Rows that repeat an earlier one.</summary>
    public long Duplicates { get; init; }

    /// <summary>Rows of control swabs in the screening export.</summary>
    public long ControlRuns { get; init; }

    /// <summary>Runs on people with symptoms.</summary>
    public long Symptomatic { get; init; }

    /// <summary>Runs on contacts of a case, without symptoms.</summary>
    public long Exposed { get; init; }

    /// <summary>Counted runs.</summary>
    public long Counted { get; init; }

    /// <summary>Counted runs that an outbreak drove.</summary>
    public long OutbreakRuns { get; init; }

    /// <summary>Positive counted runs on people with a detectable infection.</summary>
    public long DetectedPositive { get; init; }

    /// <summary>Negative counted runs on people with a detectable infection.</summary>
    public long DetectableNegative { get; init; }

    /// <summary>Positive counted runs on people without one.</summary>
    public long FalsePositive { get; init; }

    /// <summary>Negative counted runs on people without one.</summary>
    public long TrueNegative { get; init; }

    /// <summary>Inconclusive counted runs.</summary>
    public long Inconclusive { get; init; }

    /// <summary>Invalid counted runs.</summary>
    public long Invalid { get; init; }

    /// <summary>People with at least one run of any kind.</summary>
    public long People { get; init; }

    /// <summary>People infected during the program.</summary>
    public long Infected { get; init; }

    /// <summary>Rows of the confirmatory export.</summary>
    public long ConfirmatoryRows { get; init; }

    /// <summary>Rows of the confirmatory export that must be set aside.</summary>
    public long ConfirmatorySetAside { get; init; }

    /// <summary>Rows of the confirmatory export that repeat an earlier one.</summary>
    public long ConfirmatoryDuplicates { get; init; }

    /// <summary>Readable audit specimens reported in time.</summary>
    public long Audits { get; init; }

    /// <summary>False positives among counted runs by the lot truly used.</summary>
    public ImmutableSortedDictionary<string, long> FalsePositivesByLot { get; init; } =
        ImmutableSortedDictionary<string, long>.Empty.WithComparers(StringComparer.Ordinal);

    /// <summary>Inconclusive and invalid counted runs by site.</summary>
    public ImmutableSortedDictionary<string, long> UnusableBySite { get; init; } =
        ImmutableSortedDictionary<string, long>.Empty.WithComparers(StringComparer.Ordinal);

    /// <summary>True sensitivity among valid counted tests; null where nobody was detectable.</summary>
    public double? Sensitivity => Share(DetectedPositive, DetectableNegative);

    /// <summary>True specificity among valid counted tests; null where everybody was detectable.</summary>
    public double? Specificity => Share(TrueNegative, FalsePositive);

    /// <summary>True prevalence of detectable infection among valid counted tests; null without a test.</summary>
    public double? Prevalence => Share(DetectedPositive + DetectableNegative, FalsePositive + TrueNegative);

    /// <summary>True positive predictive value; null without a positive test.</summary>
    public double? PositivePredictiveValue => Share(DetectedPositive, FalsePositive);

    private static double? Share(long these, long others) => these + others == 0 ? null : (double)these / (these + others);
}
