using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Counting.Rules;

/// <summary>The sampling strata of a program's audits, and which runs belong to each.</summary>
/// <remarks>
/// The confirmatory export only labels those negative runs that were drawn; how many each stratum holds must be known from elsewhere, in this
/// order: (1) the program file describes every label; (2) every label is the name of a site; (3) every label is the name of a lot;
/// (4) there is one label, or none: the whole program; else nothing explains them, and all audits stand together without weights.
/// A lot that is not recorded is never a stratum by name, and no pattern fits it.
/// </remarks>
public sealed class AuditStrata
{
    private readonly ImmutableArray<StratumSettings> described;
    private readonly Dictionary<string, int> numbers;

    private AuditStrata(ImmutableArray<string> names, ImmutableArray<StratumOrigin> origins, ImmutableArray<StratumSettings> described)
    {
        Names = names;
        Origins = origins;
        this.described = described;
        numbers = names.Select((name, number) => (name, number)).ToDictionary(pair => pair.name, pair => pair.number, StringComparer.Ordinal);
    }

    /// <summary>Names of the strata, in the order of the program file, else ordinal.</summary>
    public ImmutableArray<string> Names { get; }

    /// <summary>How the negative runs of each are known, in the same order.</summary>
    public ImmutableArray<StratumOrigin> Origins { get; }

    /// <summary>How many different labels the audits have that nothing explains; 0 where all are explained.</summary>
    public int Unexplained { get; private init; }

    /// <summary>Explains the labels of a program's audits.</summary>
    /// <param name="labels">Labels of the audit specimens, <see cref="Levels.None"/> where there is none; at least one.</param>
    /// <param name="sites">Names of the sites.</param>
    /// <param name="lots">Names of the lots.</param>
    /// <param name="settings">What the program file says of audits.</param>
    /// <returns>The strata.</returns>
    public static AuditStrata Of(IEnumerable<string> labels, IEnumerable<string> sites, IEnumerable<string> lots, AuditSettings settings)
    {
        ImmutableArray<string> distinct = [.. labels.Distinct(StringComparer.Ordinal).Order(Levels.Order)];
        var stated = settings.Strata;
        if (!stated.IsEmpty && distinct.All(label => stated.Any(stratum => stratum.Name == label)))
        {
            return new([.. stated.Select(stratum => stratum.Name)],
                [.. stated.Select(stratum => stratum.Negatives is null ? StratumOrigin.Patterns : StratumOrigin.StatedNumber)], stated);
        }

        if (!distinct.Contains(Levels.None))
        {
            if (AreAmong(distinct, sites)) return Named(distinct, StratumOrigin.Site);
            if (AreAmong(distinct, lots)) return Named(distinct, StratumOrigin.Lot);
        }

        return distinct.Length <= 1 && stated.IsEmpty
            ? new([distinct.FirstOrDefault(Levels.None)], [StratumOrigin.WholeProgram], [])
            : new([Levels.None], [StratumOrigin.Unexplained], []) { Unexplained = distinct.Length };
    }

    /// <summary>The stratum of an audited run by the label of its specimen.</summary>
    /// <param name="label">The label, one of those the strata were made from.</param>
    /// <returns>Number of the stratum.</returns>
    public int OfLabel(string label) =>
        Origins[0] is StratumOrigin.WholeProgram or StratumOrigin.Unexplained ? 0 : numbers[label];

    /// <summary>The strata to which a run belongs by its site, lot and collection.</summary>
    /// <param name="site">Its site.</param>
    /// <param name="lot">Its lot, or <see cref="Levels.None"/>.</param>
    /// <param name="collection">Who collected it.</param>
    /// <returns>The number of the first stratum and of a second one that holds it too; -1 where there is none.</returns>
    public (int First, int Second) OfRun(string site, string lot, CollectedBy collection)
    {
        switch (Origins[0])
        {
            case StratumOrigin.WholeProgram or StratumOrigin.Unexplained:
                return (0, -1);
            case StratumOrigin.Site:
                return (numbers.GetValueOrDefault(site, -1), -1);
            case StratumOrigin.Lot:
                return (numbers.GetValueOrDefault(lot, -1), -1);
            default:
                var first = -1;
                for (var number = 0; number < described.Length; number++)
                {
                    if (!Holds(described[number], site, lot, collection)) continue;
                    if (first >= 0) return (first, number);
                    first = number;
                }

                return (first, -1);
        }
    }

    /// <summary>The number of negative runs that the program file states for a stratum; null where they are counted.</summary>
    /// <param name="number">Number of the stratum.</param>
    /// <returns>The number, or null.</returns>
    public long? Stated(int number) => described.IsEmpty ? null : described[number].Negatives;

    private static bool AreAmong(ImmutableArray<string> labels, IEnumerable<string> names)
    {
        var known = names.Where(name => name != Levels.None).ToHashSet(StringComparer.Ordinal);
        return labels.Length > 0 && labels.All(known.Contains);
    }

    private static AuditStrata Named(ImmutableArray<string> labels, StratumOrigin origin) =>
        new(labels, [.. labels.Select(_ => origin)], []);

    private static bool Holds(StratumSettings stratum, string site, string lot, CollectedBy collection) =>
        stratum.Negatives is null
        && (stratum.Sites.IsEmpty || stratum.Sites.Any(pattern => DeviceRule.Fits(site, pattern)))
        && (stratum.Lots.IsEmpty || (lot != Levels.None && stratum.Lots.Any(pattern => DeviceRule.Fits(lot, pattern))))
        && (stratum.Collection is null || stratum.Collection == collection);
}
