using System.Collections.Immutable;
using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Rules;

namespace ScreenStats.Evaluation.Disclosure;

/// <summary>What figures stand for that are in no row of a table, by their path in findings.json.</summary>
internal static class FigureRules
{
    private static readonly string[] Free =
    [
        "yield.episodeDays", "followUp.confirmWithinHours", "followUp.hasConfirmatory", "span.hasConfirmatory", "span.reportingLagFromData", "expected.prevalence",
        "expected.prevalenceLower", "expected.prevalenceUpper", "answers.nextSteps.rank", "cautions.items.fromData", "coverage.hasHeadcount",
        "accuracy.stratumCount", "accuracy.basis", "kits.deviceCount", "comparison.levelCount", "comparison.confidence",
        "whatIf.positive.people", "whatIf.interval.days", "whatIf.interval.people", "whatIf.interval.participation", "whatIf.interval.removedBySymptoms",
        "changes.sharedDays", "changes.sharedPeriods", "changes.sharedPeriodsFallen", "changes.sharedPeriodsRisen", "changes.newFlags", "changes.stillFlagged", "changes.closedFlags", "changes.flaggedAndGone", "changes.changedSettings",
    ];

    /// <summary>The rule of each path, for the counts of some findings.</summary>
    public static Dictionary<string, ColumnRule> Of(Findings findings)
    {
        var rules = Free.ToDictionary(path => path, _ => ColumnRule.Free, StringComparer.Ordinal);
        void Count(string path, string measure) => rules.Add(path, ColumnRule.Count(Measure.Program(measure)));
        void Ledger(string path, string entry) => rules.Add("ledger." + path, ColumnRule.Count(new Measure(new CountUnit("ledger", "screening", ""), entry)));
        Count("yield.runs", "runs");
        Count("yield.persons", "persons");
        Count("yield.cases", "cases");
        Count("yield.casesThroughPositive", "c.positive");
        Count("yield.casesThroughInconclusive", "c.inconclusive");
        Count("invalidRuns.inconclusive", "inconclusive");
        Count("invalidRuns.invalid", "invalid");
        Count("audits.negativeRuns", "negative");
        Count("accuracy.negativeRuns", "negative");
        Count("accuracy.audited", "a.conclusive");
        Count("accuracy.missed", "a.missed");
        Count("controls.runs", "k.all");
        Count("completeness.outbreakRuns", "o.outbreak");
        Count("participation.persons", "persons");
        Count("participation.runs", "runs");
        Count("participation.gaps", "gaps");
        Ledger("read", "read");
        Ledger("counted", "counted");
        Ledger("setAside", "set-aside");
        Ledger("duplicates", "duplicate");
        Ledger("controlRuns", "control-run");
        foreach (var (name, beyond, of) in new[]
        {
            ("medianRuns", 0.5, "persons"), ("tenthPercentileRuns", 0.1, "persons"), ("ninetiethPercentileRuns", 0.1, "persons"), ("medianGapDays", 0.5, "gaps"), ("ninetiethPercentileGapDays", 0.1, "gaps"),
        })
        {
            rules.Add("participation." + name, ColumnRule.Rank(beyond, Measure.Program(of)));
        }

        rules.Add("participation.oneRunOnly", findings.Participation.OneRunOnly == 0 ? ColumnRule.Free : ColumnRule.Count(new Measure(new CountUnit(PeopleRules.RunsPerPerson, "1", ""), "persons")));
        if (findings.IntervalCases.Days is { Length: > 0 } days)
        {
            var last = new CountUnit("interval", days[^1].DaysSinceRun.ToString(System.Globalization.CultureInfo.InvariantCulture), "");
            rules.Add("intervalCases.total", ColumnRule.Count(new Measure(last, "ic.cumulative")));
            rules.Add("intervalCases.medianDays", ColumnRule.Rank(0.5, new Measure(last, "ic.cumulative")));
        }

        Count("intervalCases.screenDetected", "cases");
        AddAccuracy(rules);
        AddDevices(rules, findings);
        return rules;
    }

    // Bounds and limits that are copies of a row's; the one-sided limits rest on single people, so they stand in coarse steps or not at all.
    private static void AddAccuracy(Dictionary<string, ColumnRule> rules)
    {
        ImmutableArray<Measure> counts = ["positives", "p.confirmed", "p.refuted", "negative", "a.conclusive", "a.missed"];
        ImmutableArray<Measure> program = [.. counts.Select(measure => Measure.Program(measure.Name))];
        foreach (var name in new[] { "sensitivityBounds", "specificityBounds" })
        {
            rules.Add($"accuracy.{name}.lower", ColumnRule.Drawn(program));
            rules.Add($"accuracy.{name}.upper", ColumnRule.Drawn(program));
        }

        foreach (var name in new[] { "sensitivityLimit", "specificityLimit" })
        {
            rules.Add($"accuracy.{name}.confidence", ColumnRule.Free);
            rules.Add($"accuracy.{name}.lower", ColumnRule.WidenedOther([.. program, Measure.Every("stratum", "negative"), Measure.Every("stratum", "a.conclusive"), Measure.Every("stratum", "a.missed")]));
        }
    }

    private static void AddDevices(Dictionary<string, ColumnRule> rules, Findings findings)
    {
        if (!findings.Kits.Devices.IsDefaultOrEmpty)
            rules.Add("kits.runsWithoutDevice", ColumnRule.Drawn([Measure.Program("runs"), .. findings.Kits.Devices.Select(device => new Measure(DeviceRules.Device(device.Device), "runs"))]));
        // What is corrected for the confirmatory test's accuracy is drawn from the same counts; its limits are widened.
        Measure[] observed = [Measure.Program("p.confirmed"), Measure.Program("p.conclusive")];
        rules.Add("predictiveValue.corrected.estimate", ColumnRule.Drawn([.. observed]));
        rules.Add("predictiveValue.corrected.lower", ColumnRule.WidenedOther([.. observed]));
        rules.Add("predictiveValue.corrected.upper", ColumnRule.WidenedOther([.. observed]));
    }
}
