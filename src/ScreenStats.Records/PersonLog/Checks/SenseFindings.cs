using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Scanning;

namespace ScreenStats.Records.PersonLog.Checks;

/// <summary>The findings of conduct and sense in single runs and people.</summary>
internal sealed class SenseFindings(
    ProgramSettings settings, SpecimenIndex specimens, PartitionScan scan, CubeAssembly cubes, IRowSource rows, FoundDiagnostics found)
{
    // Rows that are read again to compare their columns; a file in which more people than this have two runs in one second has another fault.
    private const int MostCompared = 5_000;

    public void Add(SpanOfProgram span, IRowSource? confirmatoryRows)
    {
        var (checks, people) = (cubes.Checks, scan.Checks);
        Times(people.InTheFuture, people.BeforeProgram, span, rows, "run", "runs");
        if (confirmatoryRows is not null) SpecimenTimes(span, confirmatoryRows);
        Row(ConductDiagnostics.ReadBeforeCollected, "read_at", checks.ReadBeforeCollected, "were read before their specimen was collected. Check whether the two columns are swapped, and how times are entered.");
        Row(ConductDiagnostics.ReadTooEarly, "read_at", checks.ReadTooEarly, "were read earlier than the reading window allows, which can miss positives. Retrain those who read, and have times entered when they happen.");
        Row(ConductDiagnostics.ReadTooLate, "read_at", checks.ReadTooLate, "were read later than the reading window allows, which can make false positives. Retrain those who read, and have times entered when they happen.");
        Row(ConductDiagnostics.ExpiredLot, "lot_expiry", checks.Expired, "used a lot that had expired. Take expired kits out of use, and ask the manufacturer whether the expiry was extended.");
        Kits();
        Row(ConductDiagnostics.TwoSitesOnOneDay, "site", people.TwoSites, "are at another site than an earlier run of the same person and day. Check whether two people share a pseudonym, or a site is entered wrongly.");
        AtOneTime();
        Row(ConductDiagnostics.WithinIsolation, "person", people.Isolated, "fall within the isolation after a confirmatory positive of the person. Check whether the person was on site; local rules say what follows.");
        if (confirmatoryRows is not null) Linkage(confirmatoryRows);
    }

    private void Row(string code, string column, FirstRecords records, string what) =>
        found.Add(code, column, rows, records.First().Where(record => !cubes.Gone.Contains(record)), records.Count, $"{records.Count:N0} {(records.Count == 1 ? "run" : "runs")} {Singular(what, records.Count)}");

    private void Times(FirstRecords future, FirstRecords early, SpanOfProgram span, IRowSource source, string one, string many)
    {
        found.Add(ConductDiagnostics.TimeBeforeProgram, "collected_at", source, early.First(), early.Count, span.FirstStated
            ? $"{early.Count:N0} {(early.Count == 1 ? one + " was" : many + " were")} collected, by their time, before the program started (startsOn in the program file). Correct the year or the clock in the source."
            : (FormattableString)$"{early.Count:N0} {(early.Count == 1 ? one + " was" : many + " were")} collected, by their time, long before all others. Correct the year or the clock in the source.");
        found.Add(ConductDiagnostics.TimeInTheFuture, "collected_at", source, future.First(), future.Count, span.LastInstant is not null
            ? $"{future.Count:N0} {(future.Count == 1 ? one + " was" : many + " were")} collected, by their time, after the date up to which the data are complete (--as-of or dataAsOf). Correct the year or the clock in the source, or state a later date."
            : (FormattableString)$"{future.Count:N0} {(future.Count == 1 ? one + " was" : many + " were")} collected, by their time, long after all others. Correct the year or the clock in the source.");
    }

    private void SpecimenTimes(SpanOfProgram span, IRowSource source)
    {
        var days = new Dictionary<int, long>();
        foreach (ref readonly var row in specimens.Rows.AsSpan())
        {
            var day = SpecimenIndex.Time(row).DayNumber;
            days[day] = days.GetValueOrDefault(day) + 1;
        }

        var own = span.For(days, settings);
        var (future, early) = (new FirstRecords(), new FirstRecords());
        foreach (ref readonly var row in specimens.Rows.AsSpan())
        {
            var time = SpecimenIndex.Time(row);
            if (time.DayNumber < own.First) early.Add(row.Record);
            else if (time.DayNumber > own.Last || time.Instant > own.LastInstant) future.Add(row.Record);
        }

        Times(future, early, own, source, "specimen of the confirmatory export", "specimens of the confirmatory export");
    }

    private void Kits()
    {
        var (overfull, beyond, mixed) = (cubes.Kits.Overfull, cubes.Kits.BeyondOverfull, cubes.Kits.MixedLots);
        found.Add(ConductDiagnostics.BeyondKitContents, "kit", rows, overfull, beyond,
            $"{beyond:N0} more {(beyond == 1 ? "run is" : "runs are")} recorded for {overfull.Count:N0} {(overfull.Count == 1 ? "kit" : "kits")} than {(overfull.Count == 1 ? "it holds" : "they hold")}; the lines are the first of each. Check how kits are entered: one may have been changed without its number.");
        found.Add(ConductDiagnostics.LotsMixedInKit, "kit", rows, mixed, mixed.Count,
            $"{mixed.Count:N0} {(mixed.Count == 1 ? "kit is" : "kits are")} recorded with more than one lot at a site, though a kit holds one; the lines are the first with another lot. Check how kits and lots are entered.");
    }

    private void AtOneTime()
    {
        var people = scan.Checks;
        var columns = new SortedSet<string>(StringComparer.Ordinal);
        var near = new List<uint>();
        people.AtOneTime.Sort();
        for (var i = 0; i < people.AtOneTime.Count; i++)
        {
            var (first, second) = people.AtOneTime[i];
            if (i < MostCompared && OneColumn(rows.Read(first), rows.Read(second)) is { } column)
            {
                columns.Add(column);
                near.Add(second);
            }
            else people.WithinMinutes.Add(second);
        }

        Row(ConductDiagnostics.ResultsWithinMinutes, "collected_at", people.WithinMinutes,
            FormattableString.Invariant($"follow a valid run of the same person within less than {ConductRule.FewestMinutesBetweenResults} minutes, sooner than a device can be read. Check whether runs are entered twice, or under the wrong person."));
        found.Add(ConductDiagnostics.NearDuplicate, "", rows, near, near.Count,
            $"{near.Count:N0} {(near.Count == 1 ? "run has" : "runs have")} the person and time of an earlier one and {(near.Count == 1 ? "differs" : "differ")} from it in one column only ({string.Join(", ", columns)}); all are counted. Find out which is right and remove the other.");
    }

    // Equal in all of these, the two differ in whether a mark is blank or says no: blank counts as not recorded, so that is one column too.
    private static string? OneColumn(RunRow a, RunRow b)
    {
        string[] columns =
        [
            .. a.Site != b.Site ? ["site"] : Array.Empty<string>(), .. a.Lot != b.Lot ? ["lot"] : Array.Empty<string>(),
            .. a.Kit != b.Kit ? ["kit"] : Array.Empty<string>(), .. a.Operator != b.Operator ? ["operator"] : Array.Empty<string>(),
            .. a.Outcome != b.Outcome ? ["result"] : Array.Empty<string>(), .. a.Outbreak != b.Outbreak ? ["outbreak"] : Array.Empty<string>(), .. a.Specimen != b.Specimen ? ["specimen"] : Array.Empty<string>(),
            .. a.Collection != b.Collection ? ["collection"] : Array.Empty<string>(), .. a.LotExpiry != b.LotExpiry ? ["lot_expiry"] : Array.Empty<string>(),
            .. a.MinutesToReading != b.MinutesToReading ? ["read_at"] : Array.Empty<string>(),
            .. a.HasScreenId != b.HasScreenId || a.ScreenId != b.ScreenId ? ["screen_id"] : Array.Empty<string>(),
        ];
        return columns.Length > 1 ? null : columns.Length == 1 ? columns[0] : "a mark";
    }

    private void Linkage(IRowSource source)
    {
        var never = specimens.NeverMet().ToList();
        var rate = specimens.Persons == 0 ? 0 : 100.0 * (specimens.Persons - never.Count) / specimens.Persons;
        found.Add(ConductDiagnostics.PersonsNeverScreened, "person", source, never, never.Count,
            $"{never.Count:N0} of {specimens.Persons:N0} people of the confirmatory export {(never.Count == 1 ? "does" : "do")} not appear in the screening export: {rate:0.0} % are linked. Check that both exports use the same pseudonyms and cover the same people and time.");
        var minutes = scan.Checks.MinutesToNearest;
        var within = (int)Math.Min(FollowUpWindow.OfFollowUp(settings.Policy).WithinSeconds / 60, int.MaxValue / 4);
        if (ShiftedClockRule.Hours(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(minutes), within) is not { } hours) return;
        var outside = minutes.Count(apart => apart < -ShiftedClockRule.MinutesBefore || apart > within);
        found.Add(ConductDiagnostics.ShiftedClock, "collected_at", source, [], outside,
            $"{outside:N0} of {minutes.Count:N0} specimens lie outside the time in which they could follow up the nearest run of the person, and nearly all would lie inside if specimens were {Math.Abs(hours)} {(Math.Abs(hours) == 1 ? "hour" : "hours")} {(hours > 0 ? "later" : "earlier")}. Nothing was shifted: check the time zones of both exports, state timeZone, or export times with their offset.");
    }

    // The sentences are written for several runs.
    private static string Singular(string what, long count) => count != 1 ? what
        : what.StartsWith("were ", StringComparison.Ordinal) ? "was" + what[4..].Replace("their specimen", "its specimen", StringComparison.Ordinal)
        : what.StartsWith("are ", StringComparison.Ordinal) ? "is" + what[3..]
        : what.StartsWith("fall ", StringComparison.Ordinal) ? "falls" + what[4..]
        : what.StartsWith("follow ", StringComparison.Ordinal) ? "follows" + what[6..]
        : what;
}
