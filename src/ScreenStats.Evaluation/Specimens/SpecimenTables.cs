using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Specimens;

/// <summary>The table of specimens by reason.</summary>
internal static class SpecimenTables
{
    public static Table<SpecimenFinding> Table(ImmutableArray<SpecimenFinding> rows) => new(
        "specimens",
        "Confirmatory specimens by reason",
        "Every counted confirmatory specimen by why it was taken, whether or not it settles a run; duplicates are left out. Share: positive of positive and negative ones.",
        [
            new("reason", "Reason", Unit.Text, "Why the specimen was taken; (none) where not recorded.", row => Cell.Text(row.Reason)),
            new("specimens", "Specimens", Unit.Count, "All specimens.", row => Cell.Count(row.Specimens)),
            new("persons", "People", Unit.Count, "People they were taken from; empty for all reasons together.", row => row.Persons is { } persons ? Cell.Count(persons) : Cell.Empty),
            new("positive", "Positive", Unit.Count, "Positive specimens.", row => Cell.Count(row.Positive.Events)),
            new("negative", "Negative", Unit.Count, "Negative specimens.", row => Cell.Count(row.Negative)),
            new("indeterminate", "Indeterminate", Unit.Count, "Tested without a conclusion.", row => Cell.Count(row.Indeterminate)),
            new("rejected", "Rejected", Unit.Count, "Not tested: unfit.", row => Cell.Count(row.Rejected)),
            .. ShareColumns.For<SpecimenFinding>(row => row.Positive),
        ],
        rows);
}
