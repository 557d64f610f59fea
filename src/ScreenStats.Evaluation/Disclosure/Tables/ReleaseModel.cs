using ScreenStats.Evaluation.Disclosure.Counts;

namespace ScreenStats.Evaluation.Disclosure.Tables;

/// <summary>The counts of a release as one model: every count once, however many tables show it, with how they add up.</summary>
internal static class ReleaseModel
{
    // What is confirmed, counted or found only grows while weeks are added; what waits for a result does not.
    private static readonly HashSet<string> Growing = new(StringComparer.Ordinal)
    {
        "runs", "tests", "negative", "positives", "unusable", "inconclusive", "invalid", "persons", "ever_positive", "person_weeks", "gaps", "v.persons", "v.eligible",
        "s.all", "s.positive", "s.negative", "s.conclusive", "recorded", "not-recorded", "read", "x.expired-lot", "x.read-outside-window", "k.all", "k.negative", "k.positive",
    };

    private static readonly string[] Waited = ["p.conclusive", "p.confirmed", "p.refuted", "i.conclusive", "i.confirmed", "i.refuted"];

    private static readonly string[] Overlapping =
    [
        "negative", "positives", "inconclusive", "invalid", "p.confirmed", "p.refuted", "p.unresolved", "p.pending", "p.unverified",
        "i.confirmed", "i.refuted", "i.unresolved", "i.pending", "i.unverified", "a.missed", "a.agreed", "a.unresolved", "unaudited",
        "x.expired-lot", "x.read-outside-window", "x.beyond-kit-contents", "x.within-isolation",
    ];

    /// <summary>The model of a release.</summary>
    /// <param name="release">Its counts.</param>
    /// <param name="overlaps">Levels of two breakdowns that hold the same runs.</param>
    /// <param name="earlier">The counts of an earlier release of the same program; null for none.</param>
    /// <param name="threshold">Counts from 1 to one less are hidden.</param>
    /// <param name="findings">The findings that the counts are of.</param>
    public static CountModel Of(ReleasedCounts release, IEnumerable<LevelOverlap> overlaps, ReleasedCounts? earlier, long threshold, Findings findings)
    {
        var model = new CountModel();
        foreach (var (unit, counts) in release.Shown)
        {
            foreach (var (measure, value) in counts)
            {
                if (release.Ambiguous.Contains((unit, measure))) continue;
                var variable = model.Add(unit, measure, value, CountDefinitions.IsSensitive(measure));
                variable.Published = release.Spoken.Contains((unit, measure));
                variable.LowerBound = Math.Min(value, release.AtLeast.GetValueOrDefault((unit, measure)));
            }
        }

        foreach (var unit in release.Shown.Keys) RelateWithin(model, unit);
        foreach (var breakdown in release.Shown.Keys.Where(unit => unit.Breakdown.Length > 0 && unit.By is not "ledger" and not "device").GroupBy(unit => unit.Breakdown)) RelateLevels(model, [.. breakdown]);
        RelateLedger(model, release.Shown.Keys);
        MarkAbsent(model, release);
        ReleaseRelations.Add(model, findings, release);
        foreach (var overlap in overlaps) RelateOverlap(model, overlap);
        if (earlier is not null) Compare(model, earlier, threshold);
        WholeGroups(model, threshold);
        return model;
    }

    private static void RelateWithin(CountModel model, CountUnit unit)
    {
        foreach (var (total, parts) in CountDefinitions.All)
        {
            if (model.Find(unit, total) is not { } sum) continue;
            var found = parts.Select(part => model.Find(unit, part)).OfType<CountVariable>().ToList();
            if (found.Count == parts.Length && found.Sum(part => part.Value) == sum.Value) model.Relate(sum, found);
        }
    }

    // A level without a row has none of what the table counts, so the rows add up to the program.
    private static void RelateLevels(CountModel model, List<CountUnit> units)
    {
        var measures = units.SelectMany(unit => model.Variables.Where(variable => variable.Unit == unit)).Select(variable => variable.Measure).ToHashSet(StringComparer.Ordinal);
        foreach (var measure in model.Variables.Where(variable => variable.Unit == CountUnit.Program && measures.Contains(variable.Measure)).ToList())
        {
            var levels = units.Select(unit => model.Find(unit, measure.Measure)).OfType<CountVariable>().ToList();
            if (levels.Sum(level => level.Value) == measure.Value && !levels.Append(measure).All(level => FollowsFromParts(model, level))) model.Relate(measure, levels);
        }
    }

    // A site whose runs are all of one specimen, and the specimen that only this site takes, are one count under two names.
    private static void RelateOverlap(CountModel model, LevelOverlap overlap)
    {
        foreach (var measure in Overlapping)
        {
            var first = overlap.First.Select(unit => model.Find(unit, measure)).OfType<CountVariable>().ToList();
            var second = overlap.Second.Select(unit => model.Find(unit, measure)).OfType<CountVariable>().ToList();
            if (first.Count == 0 || second.Count == 0 || first.Sum(one => one.Value) != second.Sum(one => one.Value)) continue;
            if (first.Count == 1) model.Relate(first[0], second);
            else if (second.Count == 1) model.Relate(second[0], first);
            else
            {
                var both = model.Add(new CountUnit("overlap", string.Join('+', overlap.First), string.Join('+', overlap.Second)), measure, first.Sum(one => one.Value), sensitive: false);
                model.Relate(both, first);
                model.Relate(both, second);
            }
        }
    }

    // A total of totals says no more than their parts do.
    private static bool FollowsFromParts(CountModel model, CountVariable variable) =>
        CountDefinitions.All.Any(one => one.Total == variable.Measure && model.RelationsOf(variable).Any(relation => relation.Total == variable && relation.Parts.Length == one.Parts.Length));

    // Where a table lists only what there is, a part without a row has none of what it counts, whatever other tables hide.
    private static void MarkAbsent(CountModel model, ReleasedCounts release)
    {
        foreach (var (units, measures) in release.Listed.Values)
        {
            var breakdowns = units.Select(unit => unit.Breakdown).Where(breakdown => breakdown.Length > 0).ToHashSet(StringComparer.Ordinal);
            foreach (var unit in release.Shown.Keys.Where(unit => breakdowns.Contains(unit.Breakdown) && !units.Contains(unit)))
            {
                foreach (var variable in measures.Select(measure => model.Find(unit, measure)).OfType<CountVariable>().Where(variable => variable.Value == 0)) variable.Absent = true;
            }
        }

        // Waiting times are of runs that were confirmed or refuted: a site without any has none.
        if (!release.Listed.TryGetValue("delays", out var delays)) return;
        foreach (var unit in release.Shown.Keys.Where(unit => unit.Breakdown == "site" && !delays.Units.Contains(unit)))
        {
            foreach (var variable in Waited
                .Select(measure => model.Find(unit, measure)).OfType<CountVariable>().Where(variable => variable.Value == 0)) variable.Absent = true;
        }
    }

    private static void RelateLedger(CountModel model, IEnumerable<CountUnit> units)
    {
        foreach (var unit in units.Where(unit => unit.By == "ledger"))
        {
            var entries = model.Variables.Where(variable => variable.Unit == unit && variable.Measure != "read").ToList();
            if (model.Find(unit, "read") is { } read && entries.Sum(entry => entry.Value) == read.Value) model.Relate(read, entries);
            if (unit.Level == "screening" && model.Find(unit, "counted") is { } counted && model.Find(CountUnit.Program, "runs") is { } runs && runs.Value == counted.Value) model.Relate(runs, counted);
        }
    }

    private static void Compare(CountModel model, ReleasedCounts earlier, long threshold)
    {
        foreach (var variable in model.Variables)
        {
            if (earlier.Hidden.Contains((variable.Unit, variable.Measure)))
            {
                // Shown now, it would bound what was hidden then.
                variable.Need = Math.Max(variable.Need, variable.Value + threshold);
                continue;
            }

            if (!earlier.Shown.TryGetValue(variable.Unit, out var counts) || !counts.TryGetValue(variable.Measure, out var before)) continue;
            if (variable.Unit.Period.Length > 0 && before == variable.Value)
            {
                variable.Known = variable.Published || before > 0;
                continue;
            }

            if (Growing.Contains(variable.Measure)) variable.LowerBound = Math.Max(variable.LowerBound, Math.Min(before, variable.Value));
            var added = Math.Abs(variable.Value - before);
            if (variable.Sensitive && added > 0 && added < threshold) variable.Need = Math.Max(variable.Need, Math.Min(before, variable.Value) + threshold);
            else if (added == 0 && variable.Value > 0 && variable.Value < threshold) variable.Known = true;
        }
    }

    private static void WholeGroups(CountModel model, long threshold)
    {
        foreach (var (part, rest) in CountDefinitions.WholeGroups)
        {
            foreach (var variable in model.Variables.Where(variable => variable.Measure == part && variable.Value > 0 && !variable.Known))
            {
                if (model.Find(variable.Unit, rest) is not { Value: 0, Known: false, Absent: false } other) continue;
                variable.Hidden |= variable.Published;
                other.Need = Math.Max(other.Need, threshold);
            }
        }
    }
}
