using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Accuracy;
using ScreenStats.Evaluation.Alarms;
using ScreenStats.Evaluation.Alarms.Rules;
using ScreenStats.Evaluation.Audits;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Conduct;
using ScreenStats.Evaluation.Controls;
using ScreenStats.Evaluation.Expected;
using ScreenStats.Evaluation.Flagging;
using ScreenStats.Evaluation.FollowThrough;
using ScreenStats.Evaluation.Lots;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Evaluation.Sites;

namespace ScreenStats.Evaluation.Answers;

/// <summary>What to do next, ranked by what the data show.</summary>
/// <remarks>
/// In this order: missing confirmatory results, and lots and sites flagged for refuted positives (whichever of the two touches more
/// positives first); sites and lots flagged for runs without a valid result; devices with more refuted positives than their stated
/// specificity allows; a screen that misses more of the infected than it finds, or fewer than are stated; how runs were carried out; lots that are not recorded; audits that were never made.
/// </remarks>
internal static class NextSteps
{
    /// <summary>From this share on, missing follow-up and unrecorded lots are worth a step.</summary>
    private const double WorthAStep = 0.05;

    /// <summary>Below this sensitivity the screen misses more of the infected than it finds.</summary>
    private const double MoreMissedThanFound = 0.5;

    public static ImmutableArray<NextStep> Of(
        bool hasConfirmatory, LotFindings lots, SiteFindings sites, ConductFindings conduct, ControlFindings controls, FollowUpFindings followUp, AuditFindings audits,
        AccuracyFindings accuracy, ExpectedFindings expected, AlarmFindings alarms, DateOnly? lastDay)
    {
        var steps = new List<(string Id, Sentence Sentence)>();
        var refuted = new List<(string Id, Sentence Sentence)>();
        foreach (var lot in lots.Where(lot => lot.Flag.HasFlag(Flag.Refuted)).OrderByDescending(lot => lot.Refuted).ThenBy(lot => lot.Lot, Levels.Order))
        {
            refuted.Add(("look-into-lot:" + lot.Lot, LookInto(lot, alarms.Lots.FirstOrDefault(one => one.Lot == lot.Lot), lastDay)));
        }

        foreach (var site in sites.Where(site => site.Flag.HasFlag(Flag.Refuted)).OrderByDescending(site => site.Refuted).ThenBy(site => site.Site, Levels.Order))
        {
            refuted.Add(("look-into-site:" + site.Site, Flagged(
                "sites", "site", site,
                "Look into how runs are done, read and labelled at site {0}, where {1} of {2} positives with a conclusive result were refuted.")));
        }

        var missing = Missing(hasConfirmatory, followUp);
        var touched = lots.Where(lot => lot.Flag.HasFlag(Flag.Refuted)).Sum(lot => lot.Refuted)
            + sites.Where(site => site.Flag.HasFlag(Flag.Refuted)).Sum(site => site.Refuted);
        var missingFirst = followUp.Positive.Unverified > touched;
        if (missingFirst) steps.AddRange(missing);
        steps.AddRange(refuted);
        if (!missingFirst) steps.AddRange(missing);
        AddInvalid(steps, lots, sites);
        AddDevices(steps, expected);
        AddSensitivity(steps, accuracy, expected);
        AddConduct(steps, conduct, alarms);
        AddControls(steps, controls);
        AddRecords(steps, lots);
        if (hasConfirmatory && audits.NegativeRuns > 0 && audits.Program.Audited == 0)
        {
            steps.Add(("audit-negatives", new Sentence(
                "Have a random sample of negative runs confirmed: without it nothing says how many infected people test negative.")));
        }

        if (steps.Count == 0 && audits.NegativeRuns + followUp.Positive.Due == 0) steps.Add(("nothing-counted", new Sentence("No test was counted, so there is nothing to act on: see the ledger for what became of the rows.")));
        if (steps.Count == 0) steps.Add(("keep-going", new Sentence("Nothing that these steps look at (flags of lots and sites, follow-up, accuracy, conduct, control swabs, lots recorded, audits) calls for a change; that does not prove that all is well. Keep following up positive and inconclusive runs, and auditing negative ones.")));
        return [.. steps.Select((step, index) => new NextStep(step.Id, index + 1, step.Sentence))];
    }

    private static List<(string Id, Sentence Sentence)> Missing(bool hasConfirmatory, FollowUpFindings followUp)
    {
        var positive = followUp.Positive;
        if (!hasConfirmatory)
        {
            return positive.Due == 0 ? [] :
            [
                ("get-confirmatory-results", new Sentence(
                    "Get the confirmatory results of the {0} positive runs: without them nothing says which of them were true.",
                    Figure.Count("followUp.positive.due", positive.Due))),
            ];
        }

        if (!(positive.UnverifiedShare >= WorthAStep)) return [];
        return
        [
            ("close-follow-up", new Sentence(
                "Find out why {0} of {1} positive runs ({2}) never got a confirmatory test within {3} hours.",
                Figure.Count("followUp.positive.unverified", positive.Unverified),
                Figure.Count("followUp.positive.due", positive.Due),
                Say.Share("followUp.positive.unverifiedShare", positive.UnverifiedShare),
                Say.Hours("followUp.confirmWithinHours", followUp.ConfirmWithinHours))),
        ];
    }

    // A lot that nobody uses any more is told with the day of its last use: what matters then is what is left of it.
    private static Sentence LookInto(LotFinding lot, LotAlarm? alarm, DateOnly? lastDay)
    {
        const string Opening = "Look into lot {0}, where {1} of {2} positives with a conclusive result were refuted: ";
        if (alarm is null || lastDay is not { } end || end.DayNumber - alarm.LastUse.DayNumber < AlarmEngine.RecentDays)
            return Flagged("lots", "lot", lot, Opening + "run control swabs, ask the supplier, and settle under local rules whether its kits stay in use.");
        return Flagged(
            "lots", "lot", lot, Opening + "it was last used on {3}, so see that no kits of it are left, run control swabs on any that are, and ask the supplier.",
            Figure.Day(FigurePath.Row("alarms.lots", lot.Lot) + ".lastUse", alarm.LastUse));
    }

    private static Sentence Flagged(string list, string kind, IJudgedLevel level, string template, params FigureReference[] more)
    {
        var path = FigurePath.Row(list, level.Name);
        return new Sentence(
            template,
            [StandsOut.Name(path, kind, level), Figure.Count(path + ".refuted", level.Refuted), Figure.Count(path + ".conclusive", level.Conclusive), .. more]);
    }

    private static void AddInvalid(List<(string Id, Sentence Sentence)> steps, LotFindings lots, SiteFindings sites)
    {
        foreach (var site in sites.Where(site => site.Flag.HasFlag(Flag.Invalid)).OrderByDescending(site => site.Inconclusive + site.Invalid).ThenBy(site => site.Site, Levels.Order))
        {
            steps.Add(("train-at-site:" + site.Site, Invalid(
                "sites", "site", site, "Review technique and train at site {0}, where {1} of {2} runs were inconclusive and {3} invalid.")));
        }

        foreach (var lot in lots.Where(lot => lot.Flag.HasFlag(Flag.Invalid)).OrderByDescending(lot => lot.Inconclusive + lot.Invalid).ThenBy(lot => lot.Lot, Levels.Order))
        {
            steps.Add(("check-lot:" + lot.Lot, Invalid(
                "lots", "lot", lot, "Check storage and handling of lot {0}, with which {1} of {2} runs were inconclusive and {3} invalid.")));
        }
    }

    private static Sentence Invalid(string list, string kind, IJudgedLevel level, string template)
    {
        var path = FigurePath.Row(list, level.Name);
        return new Sentence(
            template,
            StandsOut.Name(path, kind, level),
            Figure.Count(path + ".inconclusive", level.Inconclusive),
            Figure.Count(path + ".runs", level.Runs),
            Figure.Count(path + ".invalid", level.Invalid));
    }

    private static void AddDevices(List<(string Id, Sentence Sentence)> steps, ExpectedFindings expected)
    {
        foreach (var device in expected.Devices)
        {
            if (device.Compatibility != Compatibility.NotCompatible || !(device.RefutedRate.Estimate > device.StatedFalsePositiveRate)) continue;
            var path = FigurePath.Row("expected.devices", device.Device);
            steps.Add(("ask-about-device:" + device.Device, new Sentence(
                "Ask the supplier of {0} about its specificity: {1} of {2} valid tests were positive and refuted, where the stated specificity lets expect {3}.",
                Figure.Name(path + ".device", device.Device),
                Say.Share(path + ".refutedRate.estimate", device.RefutedRate.Estimate),
                Figure.Count(path + ".validTests", device.ValidTests),
                Say.Share(path + ".statedFalsePositiveRate", device.StatedFalsePositiveRate))));
        }
    }

    /// <summary>A sensitivity of less than a half, or with its whole interval below what is stated of every device.</summary>
    private static void AddSensitivity(List<(string Id, Sentence Sentence)> steps, AccuracyFindings accuracy, ExpectedFindings expected)
    {
        if (accuracy.Sensitivity is not { Estimate: { } estimate } sensitivity) return;
        var few = accuracy.Missed < ProportionFinding.FewBelow ? " [few counts]" : "";
        ImmutableArray<FigureReference> figures =
        [
            Say.Share("accuracy.sensitivity.estimate", estimate), Say.Confidence("accuracy.sensitivity.confidence", sensitivity.Confidence ?? 0.95),
            Say.Share("accuracy.sensitivity.lower", sensitivity.Lower), Say.Share("accuracy.sensitivity.upper", sensitivity.Upper),
        ];
        const string Then = " A negative screen excludes little: have swabbing, reading times and lots checked, ask the supplier, and let those who answer for the program decide whether to test more often or by another test.";
        if (estimate < MoreMissedThanFound)
        {
            steps.Add(("look-into-sensitivity", new Sentence($"By the audits the screen finds only {{0}} of the infected ({{1}} interval {{2}} to {{3}}){few}, less than it misses.{Then}", [.. figures])));
            return;
        }

        var stated = expected.Devices.Where(device => device.ValidTests > 0).ToList();
        if (stated.Count == 0 || stated.Any(device => device.StatedSensitivity is null)) return;
        var least = stated.MinBy(device => device.StatedSensitivity!.Value)!;
        if (!(sensitivity.Upper < least.StatedSensitivity!.Value)) return;
        steps.Add(("look-into-sensitivity", new Sentence(
            $"By the audits the screen finds {{0}} of the infected ({{1}} interval {{2}} to {{3}}){few}, where {{4}} or more are stated.{Then}",
            [.. figures, Say.Share(FigurePath.Row("expected.devices", least.Device) + ".statedSensitivity.value", least.StatedSensitivity!.Value)])));
    }

    private static void AddConduct(List<(string Id, Sentence Sentence)> steps, ConductFindings conduct, AlarmFindings alarms)
    {
        if (conduct.ExpiredLot is { Found: > 0 } expired)
        {
            List<ConductRow> lots = [.. conduct.Places.Where(row => row.Kind == expired.Kind && row.Grouping == Grouping.Lot)];
            var name = AlarmNames.Of(AlarmRule.ExpiredLot);
            // An alarm stands for as many days after the last such run as it looks back.
            var over = alarms.Alarms.Any(alarm => alarm.Rule == name) && !alarms.Alarms.Any(alarm => alarm.Rule == name && alarm.Until is null);
            steps.Add(("remove-expired-lots", new Sentence(
                (over ? "See that no expired kits are left, and how they came to be used: {0} of {1} runs used one" : "Take expired kits out of use: {0} of {1} runs used one") + (lots.Count == 1 ? ", of lot {2}" : "")
                + (over ? ", none in the last two weeks of the data." : "."),
                [
                    Figure.Count("conduct.expiredLot.found", expired.Found.Value), Figure.Count("conduct.expiredLot.runs", expired.Runs),
                    .. lots.Count == 1 ? (FigureReference[])[Figure.Name(FigurePath.Row("conduct.places", lots[0].Key) + ".level", lots[0].Level)] : [],
                ])));
        }

        if (conduct.ReadOutsideWindow is { Found: > 0 } window && window.Share >= WorthAStep)
        {
            steps.Add(("keep-reading-window", new Sentence(
                "Have results read inside the device's reading window: {0} of {1} runs were read outside it.",
                Figure.Count("conduct.readOutsideWindow.found", window.Found.Value), Figure.Count("conduct.readOutsideWindow.runs", window.Runs))));
        }
    }

    private static void AddControls(List<(string Id, Sentence Sentence)> steps, ControlFindings controls)
    {
        foreach (var (trigger, id, what) in new[]
        {
            (ControlTrigger.NewLot, "run-controls-of-new-lots", "Run control swabs before a site takes a lot into use"),
            (ControlTrigger.NewOperator, "run-controls-of-new-operators", "Have operators pass control swabs before they start"),
            (ControlTrigger.NewSite, "run-controls-of-new-sites", "Run control swabs before a site starts"),
            (ControlTrigger.Daily, "run-controls-daily", "Run control swabs on every day of screening"),
        })
        {
            if (controls.Duties.FirstOrDefault(duty => duty.Trigger == trigger && duty.Grouping == Grouping.Program) is not { IsRequired: true, Missed.Events: > 0 } duty) continue;
            var path = FigurePath.Row("controls.duties", duty.Key) + ".missed";
            steps.Add((id, new Sentence(
                what + ", as the program's policy asks: {0} of {1} times none had been passed.",
                Figure.Count(path + ".events", duty.Missed.Events), Figure.Count(path + ".trials", duty.Missed.Trials))));
        }
    }

    private static void AddRecords(List<(string Id, Sentence Sentence)> steps, LotFindings lots)
    {
        var runs = lots.Sum(lot => lot.Runs);
        if (lots.FirstOrDefault(lot => lot.Lot == Levels.None) is not { } none || runs == 0 || (double)none.Runs / runs < WorthAStep) return;
        steps.Add(("record-lots", new Sentence(
            "Record the lot of every run: {0} of {1} runs have none, and a fault of their lots cannot be found.",
            Figure.Count(FigurePath.Row("lots", Levels.None) + ".runs", none.Runs), Figure.Count("yield.runs", runs))));
    }
}
