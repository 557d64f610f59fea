using System.Collections.Immutable;
using System.Text.Json;
using ScreenStats.Counting.Programs.Surroundings;

namespace ScreenStats.Counting.Programs.Reading;

/// <summary>Reads the dated changes and the outbreaks.</summary>
internal static class SurroundingsReader
{
    public static ImmutableArray<ChangeSettings> Changes(ProgramSection program, ProgramProblems problems)
    {
        var changes = new List<ChangeSettings>();
        var known = new HashSet<(DateOnly On, string What)>();
        foreach (var one in program.List("changes", "a list of dated changes in brackets, such as [{ \"on\": \"2026-01-13\", \"what\": \"...\" }]"))
        {
            var section = new ProgramSection(one, ProgramKeys.Change, "key", problems);
            if (one.Kind != JsonValueKind.Object) continue;
            if (section.Find("on") is null || section.Find("what") is null) problems.WrongValue(one, "given with \"on\", the first day of the change, and \"what\", what changed");
            var on = DayReader.Read(section, "on", "2026-01-13", problems);
            var what = section.Text("what");
            var sites = section.Texts("sites", "a list of site patterns in brackets, such as [\"A*\"]");
            if (section.Find("sites") is { Kind: JsonValueKind.Array, Items.IsEmpty: true } none) problems.WrongValue(none, "a list with at least one site pattern, or left out for every site");
            if (on is not { } day || what is null) continue;
            if (known.Add((day, what))) changes.Add(new ChangeSettings(day, what, sites));
            else problems.WrongValue(one, "different from the changes before it");
        }

        return [.. changes.OrderBy(change => change.On)];
    }

    public static ImmutableArray<OutbreakSettings> Outbreaks(ProgramSection program, ProgramProblems problems)
    {
        var outbreaks = ImmutableArray.CreateBuilder<OutbreakSettings>();
        foreach (var one in program.List("outbreaks", "a list of outbreaks in brackets, such as [{ \"site\": \"...\", \"from\": \"2026-01-05\", \"to\": \"2026-01-18\" }]"))
        {
            var section = new ProgramSection(one, ProgramKeys.Outbreak, "key", problems);
            if (one.Kind != JsonValueKind.Object) continue;
            if (section.Find("site") is null || section.Find("from") is null) problems.WrongValue(one, "given with the \"site\" and \"from\", its first day");
            var site = section.Text("site");
            var from = DayReader.Read(section, "from", "2026-01-05", problems);
            var to = DayReader.Read(section, "to", "2026-01-18", problems);
            var note = section.Text("note") ?? "";
            if (site is null || from is not { } first) continue;
            if (to < first) problems.WrongValue(section.Find("to")!, "a day that is not before \"from\"");
            else outbreaks.Add(new OutbreakSettings(site, first, to, note));
        }

        return outbreaks.ToImmutable();
    }
}
