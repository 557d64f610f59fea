using System.Globalization;
using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Rules;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Disclosure.Tables;

/// <summary>How counts of different tables hang together beyond levels that add up: devices are lots, interval cases accumulate, people have runs.</summary>
internal static class ReleaseRelations
{
    private static readonly string[] OfDevices = ["runs", "unusable", "tests", "negative", "positives", "p.conclusive", "p.open", "p.confirmed", "p.refuted"];

    private static readonly string[] RestingOnSpecimens = ["p.tested", "i.tested", "audited"];

    /// <summary>Adds what holds of the counts of some findings.</summary>
    public static void Add(CountModel model, Findings findings, ReleasedCounts release)
    {
        AddDevices(model, findings);
        AddUnflagged(model, findings);
        AddStrata(model);
        AddIntervalCases(model);
        AddParticipation(model, findings);
        AddSpecimens(model);
        AddRecords(model, release);
        AddWeekdays(model, findings);
        AddFlow(model);
        foreach (var unit in release.Shown.Keys)
        {
            foreach (var (part, whole) in CountDefinitions.Bounds) model.Bound(model.Find(unit, part), model.Find(unit, whole));
            Equal(model, unit, "d.run-to-specimen.known", "p.conclusive", "i.conclusive");
        }

        Equal(model, CountUnit.Program, "persons", "gaps", whole: "runs");
        model.Bound(model.Find(CountUnit.Program, "v.persons"), model.Find(CountUnit.Program, "person_weeks"));
    }

    private static IEnumerable<CountVariable> Of(CountModel model, string by, string measure) => model.Variables.Where(variable => variable.Unit.By == by && variable.Measure == measure);

    private static void Equal(CountModel model, CountUnit unit, string first, params string[] others) => Equal(model, unit, [.. others], first);

    private static void Equal(CountModel model, CountUnit unit, string first, string second, string whole) => Equal(model, unit, [first, second], whole);

    private static void Equal(CountModel model, CountUnit unit, List<string> parts, string whole)
    {
        var found = parts.Select(part => model.Find(unit, part)).OfType<CountVariable>().ToList();
        if (model.Find(unit, whole) is { } sum && found.Count == parts.Count && found.Sum(part => part.Value) == sum.Value) model.Relate(sum, found);
    }

    // Which lots are of which device is known from the program file and the names of lots.
    private static void AddDevices(CountModel model, Findings findings)
    {
        var devices = findings.Kits.Devices;
        if (devices.IsDefaultOrEmpty) return;
        var none = new CountUnit("device", "(none)", "");
        var taken = devices.SelectMany(device => device.Lots).ToHashSet(StringComparer.Ordinal);
        var others = model.Variables.Where(variable => variable.Unit.By == "lot").Select(variable => variable.Unit.Level).Where(lot => !taken.Contains(lot)).Distinct(StringComparer.Ordinal).ToList();
        foreach (var measure in OfDevices)
        {
            foreach (var device in devices) Sum(model, DeviceRules.Device(device.Device), measure, device.Lots);
            if (others.Count > 0) Sum(model, none, measure, others);
            var all = Of(model, "device", measure).ToList();
            if (model.Find(CountUnit.Program, measure) is { } program && all.Sum(one => one.Value) == program.Value) model.Relate(program, all);
            var stated = findings.TruePrevalence.Program.Devices.Select(name => model.Find(DeviceRules.Device(name), measure)).OfType<CountVariable>().ToList();
            if (model.Find(DeviceRules.WithAccuracy, measure) is { } with && stated.Sum(one => one.Value) == with.Value && stated.Count > 0) model.Relate(with, stated);
        }
    }

    private static void Sum(CountModel model, CountUnit unit, string measure, IEnumerable<string> lots)
    {
        var parts = lots.Select(lot => model.Find(new CountUnit("lot", lot, ""), measure)).OfType<CountVariable>().ToList();
        if (parts.Count == 0) return;
        var sum = parts.Sum(part => part.Value);
        var total = model.Find(unit, measure) ?? model.Add(unit, measure, sum);
        if (total.Value == sum) model.Relate(total, parts);
    }

    private static void AddUnflagged(CountModel model, Findings findings)
    {
        foreach (var rest in model.Variables.Where(variable => variable.Unit == RunRules.Unflagged).ToList())
        {
            var flagged = findings.PredictiveValue.FlaggedLots.Select(lot => model.Find(new CountUnit("lot", lot, ""), rest.Measure)).OfType<CountVariable>().ToList();
            if (model.Find(CountUnit.Program, rest.Measure) is { } program && flagged.Sum(lot => lot.Value) + rest.Value == program.Value) model.Relate(program, [rest, .. flagged]);
        }
    }

    private static void AddStrata(CountModel model)
    {
        foreach (var measure in new[] { "negative", "a.conclusive", "a.missed", "a.agreed" })
        {
            var all = model.Find(SpecimenRules.Strata, measure);
            var strata = Of(model, "stratum", measure).ToList();
            if (all is not null && strata.Sum(stratum => stratum.Value) == all.Value) model.Relate(all, strata);
            foreach (var stratum in strata) model.Bound(stratum, model.Find(CountUnit.Program, measure));
            model.Bound(all, model.Find(CountUnit.Program, measure));
            // Strata may be sites or lots by name.
            foreach (var stratum in strata)
            {
                foreach (var by in new[] { "site", "lot" })
                {
                    if (model.Find(new CountUnit(by, stratum.Unit.Level, ""), measure) is { } same && same.Value == stratum.Value) model.Relate(same, stratum);
                }
            }
        }
    }

    private static void AddIntervalCases(CountModel model)
    {
        CountVariable? before = null;
        foreach (var day in Of(model, "interval", "ic.day").OrderBy(day => Number(day.Unit.Level)).ToList())
        {
            if (model.Find(day.Unit, "ic.cumulative") is not { } cumulative) return;
            if ((before?.Value ?? 0) + day.Value != cumulative.Value) return;
            model.Relate(cumulative, before is null ? [day] : [before, day]);
            before = cumulative;
        }

        model.Bound(before, model.Find(CountUnit.Program, "s.positive"));
    }

    private static void AddParticipation(CountModel model, Findings findings)
    {
        var people = Of(model, PeopleRules.RunsPerPerson, "persons").OrderBy(line => Number(line.Unit.Level)).ToList();
        var found = findings.Participation;
        if (model.Find(CountUnit.Program, "runs") is { } runs && people.Sum(line => line.Value * Number(line.Unit.Level)) == runs.Value) model.RelateWeighted(runs, people.Select(line => (line, (int)Number(line.Unit.Level))));
        AddRank(model, people, found.TenthPercentileRuns, 0.1);
        AddRank(model, people, found.MedianRuns, 0.5);
        AddRank(model, people, found.NinetiethPercentileRuns, 0.9);
        var days = Of(model, PeopleRules.DaysBetween, "gaps").OrderBy(line => Number(line.Unit.Level)).ToList();
        AddRank(model, days, found.MedianGapDays, 0.5);
        AddRank(model, days, found.NinetiethPercentileGapDays, 0.9);
    }

    // So many lie at or below the value, and so many at or above it, whatever else is hidden.
    private static void AddRank(CountModel model, List<CountVariable> lines, double? value, double share)
    {
        if (value is not { } at || lines.Count == 0) return;
        var all = lines.Sum(line => line.Value);
        foreach (var (side, some, least) in new[]
        {
            ("at most", lines.Where(line => Number(line.Unit.Level) <= at).ToList(), (long)Math.Ceiling((share * all) - 1e-9)),
            ("at least", lines.Where(line => Number(line.Unit.Level) >= at).ToList(), (long)Math.Ceiling(((1 - share) * all) - 1e-9)),
        })
        {
            var sum = some.Sum(line => line.Value);
            var variable = model.Add(new CountUnit("overlap", lines[0].Unit.By, string.Create(CultureInfo.InvariantCulture, $"{side} {at} {share}")), lines[0].Measure, sum, sensitive: false);
            variable.LowerBound = Math.Min(sum, least);
            model.Relate(variable, some);
        }
    }

    private static void AddSpecimens(CountModel model)
    {
        CountVariable? Program(string measure) => model.Find(CountUnit.Program, measure);
        CountVariable? Reason(string reason, string measure) => model.Find(new CountUnit("reason", reason, ""), measure);
        model.Bound(Program("cases"), Program("s.positive"));
        model.Bound(Program("a.missed"), Reason("audit", "s.positive"));
        model.Bound(Program("a.agreed"), Reason("audit", "s.negative"));
        if (Program("s.all") is { } all && model.Find(new CountUnit("ledger", "confirmatory", ""), "counted") is { } counted && counted.Value == all.Value) model.Relate(counted, all);
        if (Program("d.specimen-to-report.known") is not { } known || Program("d.specimen-to-report.unresulted") is not { } waiting || Program("s.all") is not { } some) return;
        if (known.Value + waiting.Value == some.Value) model.Relate(some, known, waiting);
    }

    // Rows of an export by what is recorded in a column; where the ledger counts the same rows under another name, both are one count.
    private static void AddRecords(CountModel model, ReleasedCounts release)
    {
        var ledger = model.Variables.Where(variable => variable.Unit.By == "ledger" && variable.Measure != "read").ToList();
        foreach (var unit in release.Shown.Keys.Where(unit => unit.By == "column"))
        {
            if (model.Find(unit, "recorded") is not { } recorded || model.Find(unit, "not-recorded") is not { } missing) continue;
            var export = unit.Level[..unit.Level.IndexOf(':', StringComparison.Ordinal)];
            if (model.Find(new CountUnit("ledger", export, ""), "read") is { } read && recorded.Value + missing.Value == read.Value) model.Relate(read, recorded, missing);
            foreach (var entry in ledger.Where(entry => entry.Unit.Level == export && entry.Value > 0))
            {
                if (entry.Value == recorded.Value) model.Relate(entry, recorded);
                else if (entry.Value == missing.Value) model.Relate(entry, missing);
            }
        }

        var controls = new[] { ("screening", "control-run"), ("controls", "control-run"), ("controls", "counted") }
            .Select(entry => model.Find(new CountUnit("ledger", entry.Item1, ""), entry.Item2)).OfType<CountVariable>().ToList();
        if (model.Find(CountUnit.Program, "k.all") is { } all && controls.Count > 0 && controls.Sum(entry => entry.Value) == all.Value) model.Relate(all, controls);
    }

    // Boxes of the flow that stand in no other table, and that no more specimens settle runs than there are runs that rest on one.
    private static void AddFlow(CountModel model)
    {
        foreach (var (whole, prefix) in new[] { ("positives", "p."), ("inconclusive", "i.") })
        {
            Equal(model, CountUnit.Program, [prefix + "tested", prefix + "untested"], whole);
            Equal(model, CountUnit.Program, [prefix + "conclusive", prefix + "unresolved"], prefix + "tested");
            Equal(model, CountUnit.Program, [prefix + "pending", prefix + "unverified"], prefix + "untested");
        }

        Equal(model, CountUnit.Program, ["audited", "not_audited"], "negative");
        Equal(model, CountUnit.Program, ["s.settling", "s.unlinked"], "s.all");
        if (model.Find(CountUnit.Program, "s.settling") is not { } settling) return;
        var runs = RestingOnSpecimens.Select(measure => model.Find(CountUnit.Program, measure)).OfType<CountVariable>().ToList();
        var resting = model.Add(new CountUnit("overlap", "flow", "runs that rest on a specimen"), "runs", runs.Sum(run => run.Value), sensitive: false);
        if (runs.Count > 0) model.Relate(resting, runs);
        model.Bound(settling, resting);
    }

    // Where periods are days, a day of the week is the sum of its days.
    private static void AddWeekdays(CountModel model, Findings findings)
    {
        if (findings.Span.Period != Counting.Cubes.ReportPeriod.Day) return;
        foreach (var weekday in model.Variables.Where(variable => variable.Unit.By == "weekday").ToList())
        {
            var days = model.Variables.Where(variable => variable.Unit is { By: "program", Period.Length: > 0 } && variable.Measure == weekday.Measure
                && DateOnly.ParseExact(variable.Unit.Period, "yyyy-MM-dd", CultureInfo.InvariantCulture).DayOfWeek.ToString() == weekday.Unit.Level).ToList();
            if (days.Count > 0 && days.Sum(day => day.Value) == weekday.Value) model.Relate(weekday, days);
        }
    }

    private static double Number(string level) => double.Parse(level, CultureInfo.InvariantCulture);
}
