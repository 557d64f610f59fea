using System.Collections.Immutable;
using System.Text.Json;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Counting.Programs.Reading;

/// <summary>Reads how negative runs were drawn for audit.</summary>
internal static class AuditReader
{
    public static AuditSettings Read(JsonItem? item, ProgramProblems problems)
    {
        var audits = new ProgramSection(item, ProgramKeys.Audits, "key", problems);
        var strata = ImmutableArray.CreateBuilder<StratumSettings>();
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var one in audits.List("strata", "a list of sampling strata in brackets, such as [{ \"name\": \"...\", \"sites\": [\"A*\"] }]"))
        {
            var section = new ProgramSection(one, ProgramKeys.Stratum, "key", problems);
            if (one.Kind != JsonValueKind.Object) continue;
            if (section.Find("name") is null) problems.WrongValue(one, "given with a \"name\", as it stands in sampling_stratum");
            var name = section.Text("name") ?? "";
            if (name.Length > 0 && !names.Add(name)) problems.WrongValue(section.Find("name")!, "different for each stratum");
            var stratum = new StratumSettings
            {
                Name = name,
                Sites = section.Texts("sites", "a list of site patterns in brackets, such as [\"A*\"]"),
                Lots = section.Texts("lots", "a list of lot patterns in brackets, such as [\"A*\"]"),
                Collection = section.Word("collection", ProgramKeys.Collections) switch { 0 => CollectedBy.Supervised, 1 => CollectedBy.Self, _ => null },
                Negatives = section.Whole("negatives", 1, int.MaxValue, "a whole number of negative runs, at least 1"),
            };
            var patterns = section.Find("sites") ?? section.Find("lots") ?? section.Find("collection");
            if (patterns is null == section.Find("negatives") is null)
            {
                problems.WrongValue(one, "given with sites, lots or collection, by which its negative runs are counted, or with negatives, their number, and not with both");
            }

            strata.Add(stratum);
        }

        return new AuditSettings { Strata = strata.ToImmutable() };
    }
}
