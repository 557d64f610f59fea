using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Disclosure.Counts;

/// <summary>How the counts of one part of the program add up, and what follows from some of them.</summary>
internal static class CountDefinitions
{
    /// <summary>Remainders that only bound others and are nobody's small group: their size is no secret of its own.</summary>
    private static readonly HashSet<string> Remainders = new(StringComparer.Ordinal) { "unaudited", "never_positive", "confirmed_again", "i.confirmed_again" };

    /// <summary>Each total with its parts. p. are positive runs by follow-up, i. inconclusive ones, a. audited negative ones, c. cases, o. runs by occasion.</summary>
    public static ImmutableArray<(string Total, ImmutableArray<string> Parts)> All { get; } =
    [
        ("runs", ["tests", "unusable"]),
        ("runs", ["o.outbreak", "o.routine"]),
        ("tests", ["negative", "positives"]),
        ("unusable", ["inconclusive", "invalid"]),
        ("positives", ["p.conclusive", "p.open"]),
        ("p.conclusive", ["p.confirmed", "p.refuted"]),
        ("p.open", ["p.unresolved", "p.pending", "p.unverified"]),
        ("inconclusive", ["i.conclusive", "i.open"]),
        ("i.conclusive", ["i.confirmed", "i.refuted"]),
        ("i.open", ["i.unresolved", "i.pending", "i.unverified"]),
        ("audited", ["a.conclusive", "a.unresolved"]),
        ("a.conclusive", ["a.missed", "a.agreed"]),
        ("negative", ["audited", "unaudited"]),
        ("cases", ["c.positive", "c.inconclusive"]),
        ("persons", ["ever_positive", "never_positive"]),
        ("p.confirmed", ["c.positive", "confirmed_again"]),
        ("i.confirmed", ["c.inconclusive", "i.confirmed_again"]),
        ("v.eligible", ["v.persons", "v.missing"]),
        ("s.all", ["s.conclusive", "s.indeterminate", "s.rejected"]),
        ("s.conclusive", ["s.positive", "s.negative"]),
        .. new[] { "both", "inconclusive", "invalid" }.Select(outcome => ($"r.{outcome}.due", ImmutableArray.Create($"r.{outcome}.done", $"r.{outcome}.undone"))),
        .. new[] { "due", "done", "undone" }.Select(count => ($"r.both.{count}", ImmutableArray.Create($"r.inconclusive.{count}", $"r.invalid.{count}"))),
        .. new[] { "negative", "positive" }.Select(expected => ($"k.{expected}", ImmutableArray.Create($"k.{expected}.negative", $"k.{expected}.positive", $"k.{expected}.inconclusive", $"k.{expected}.invalid"))),
        ("k.all", ["k.negative", "k.positive"]),
        .. new[] { "t.", "t.same.", "t.other." }.SelectMany(kind => new (string, ImmutableArray<string>)[]
        {
            (kind + "pairs", [kind + "usable", kind + "unusable"]),
            (kind + "usable", [kind + "again", kind + "negative"]),
            (kind + "again", [kind + "again.confirmed", kind + "again.refuted", kind + "again.open"]),
            (kind + "negative", [kind + "negative.confirmed", kind + "negative.refuted", kind + "negative.open"]),
        }),
        .. new[] { "pairs", "unusable", "again", "negative", "again.confirmed", "again.refuted", "negative.confirmed", "negative.refuted" }
            .Select(count => ($"t.{count}", ImmutableArray.Create($"t.same.{count}", $"t.other.{count}"))),
    ];

    /// <summary>Counts of one part of the program that are some of another count of it: what is left is nobody's secret.</summary>
    public static ImmutableArray<(string Part, string Whole)> Bounds { get; } =
    [
        ("x.expired-lot", "runs"), ("x.read-outside-window", "runs"), ("x.beyond-kit-contents", "runs"), ("x.within-isolation", "runs"),
        ("r.inconclusive.due", "inconclusive"), ("r.invalid.due", "invalid"), ("t.pairs", "positives"), ("v.persons", "runs"),
        ("s.persons", "s.all"), ("d.run-to-specimen.whole", "d.run-to-specimen.known"), ("d.specimen-to-report.whole", "d.specimen-to-report.known"), ("persons", "runs"),
    ];

    /// <summary>Where everybody or nobody of a group has the attribute, everybody's is known: part, and the rest that must then not be known to be none.</summary>
    public static ImmutableArray<(string Part, string Other)> WholeGroups { get; } =
    [
        ("positives", "negative"), ("p.confirmed", "p.refuted"), ("a.missed", "a.agreed"), ("s.positive", "s.negative"),
    ];

    /// <summary>Whether a count is a secret of its own.</summary>
    public static bool IsSensitive(string measure) => !Remainders.Contains(measure);

    /// <summary>Adds every count of a unit that follows from the others.</summary>
    public static void Complete(Dictionary<string, long> counts)
    {
        for (var more = true; more;)
        {
            more = false;
            foreach (var (total, parts) in All)
            {
                var missing = parts.Where(part => !counts.ContainsKey(part)).ToList();
                if (!counts.TryGetValue(total, out var sum))
                {
                    if (missing.Count > 0) continue;
                    counts[total] = parts.Sum(part => counts[part]);
                    more = true;
                }
                else if (missing.Count == 1 && sum >= parts.Where(part => part != missing[0]).Sum(part => counts[part]))
                {
                    counts[missing[0]] = sum - parts.Where(part => part != missing[0]).Sum(part => counts[part]);
                    more = true;
                }
            }
        }
    }
}
