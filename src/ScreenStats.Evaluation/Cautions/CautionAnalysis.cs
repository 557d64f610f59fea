using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Audits;
using ScreenStats.Evaluation.Delays;
using ScreenStats.Evaluation.Expected;
using ScreenStats.Evaluation.FollowThrough;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Cautions;

/// <summary>What a reader must know before acting on a figure.</summary>
internal static class CautionAnalysis
{
    /// <summary>From this share of the runs due, missing follow-up is worth a caution of its own.</summary>
    public const double LargeShare = 0.1;

    /// <summary>Collects the cautions that these data and settings call for, and those that every report shows.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="settings">What the program file says.</param>
    /// <param name="followUp">Follow-up.</param>
    /// <param name="delays">Waiting times.</param>
    /// <param name="audits">Audits.</param>
    /// <param name="expected">Expected against observed.</param>
    /// <returns>The cautions.</returns>
    public static CautionFindings Of(
        Tally tally, ProgramSettings settings, FollowUpFindings followUp, DelayFindings delays, AuditFindings audits, ExpectedFindings expected)
    {
        var items = ImmutableArray.CreateBuilder<Caution>();
        if (settings.Report.SuppressBelow <= 1)
        {
            items.Add(Of("small-counts", "This report holds small counts and is not for circulation."));
        }

        AddFollowUp(items, tally, followUp);
        if (audits.Program.Audited == 0)
        {
            items.Add(Of("no-audits", "No negative run was audited: nothing here says how many infected people tested negative."));
        }

        AddExactAccuracies(items, settings, expected);
        if (settings.TimeZone is null)
        {
            items.Add(Of("no-time-zone", "The program file states no time zone: times are taken as they are written."));
        }

        if (tally.Cells.Screens.Select(cell => cell.Site).Distinct(StringComparer.Ordinal).Count() is >= 2 and < (int)Statistics.Clusters.WidenedInterval.FewestGroups)
        {
            items.Add(Of("few-sites", "With fewer than five sites limits speak of these sites: so few cannot show how much sites differ, so differences between sites beyond those from week to week are in no limit."));
        }

        if (delays.RunToSpecimen.WholeDays > 0)
        {
            items.Add(new Caution(
                "whole-days",
                new Sentence(
                    "{0} of {1} followed-up runs were linked to their specimen by whole days, because a time of day is missing.",
                    Figure.Count("delays.runToSpecimen.wholeDays", delays.RunToSpecimen.WholeDays),
                    Figure.Count("delays.runToSpecimen.resulted", delays.RunToSpecimen.Resulted)),
                true));
        }

        items.AddRange(StandardCautions.All);
        return new CautionFindings(items.ToImmutable());
    }

    private static void AddFollowUp(ImmutableArray<Caution>.Builder items, Tally tally, FollowUpFindings followUp)
    {
        if (!tally.Cells.HasConfirmatory)
        {
            items.Add(Of("no-confirmatory-export", "There is no confirmatory export: no positive here is confirmed or refuted."));
            return;
        }

        var positive = followUp.Positive;
        if (positive.UnverifiedShare >= LargeShare)
        {
            items.Add(new Caution(
                "many-unverified",
                new Sentence(
                    "{0} of {1} positive runs that called for a confirmatory test ({2}) never got one: read every predictive value with its bounds.",
                    Figure.Count("followUp.positive.unverified", positive.Unverified),
                    Figure.Count("followUp.positive.due", positive.Due),
                    Say.Share("followUp.positive.unverifiedShare", positive.UnverifiedShare)),
                true));
        }

        if (positive.PendingShare >= LargeShare)
        {
            items.Add(new Caution(
                "many-pending",
                new Sentence(
                    "{0} of {1} positive runs that called for a confirmatory test ({2}) are pending: these figures will still change.",
                    Figure.Count("followUp.positive.pending", positive.Pending),
                    Figure.Count("followUp.positive.due", positive.Due),
                    Say.Share("followUp.positive.pendingShare", positive.PendingShare)),
                true));
        }
    }

    private static void AddExactAccuracies(ImmutableArray<Caution>.Builder items, ProgramSettings settings, ExpectedFindings expected)
    {
        foreach (var device in expected.Devices)
        {
            if (device.StatedSensitivity?.TakenAsExact != true && device.StatedSpecificity?.TakenAsExact != true) continue;
            var which = (device.StatedSensitivity?.TakenAsExact, device.StatedSpecificity?.TakenAsExact) switch
            {
                (true, true) => "sensitivity and specificity",
                (true, _) => "sensitivity",
                _ => "specificity",
            };
            items.Add(new Caution(
                "taken-as-exact:" + device.Device,
                new Sentence(
                    $"The stated {which} of {{0}} came without counts or limits and " + (which.Contains("and", StringComparison.Ordinal) ? "are" : "is")
                    + " taken as exact: limits that rest on it are too narrow.",
                    Figure.Name(FigurePath.Row("expected.devices", device.Device) + ".device", device.Device)),
                true));
        }

        if (settings.ConfirmatoryTest is { } test && (test.Sensitivity?.TakenAsExact == true || test.Specificity?.TakenAsExact == true))
        {
            items.Add(Of(
                "taken-as-exact:confirmatory-test",
                "The stated accuracy of the confirmatory test came without counts or limits and is taken as exact: limits that rest on it are too narrow."));
        }

        if (settings.Prevalence is { Lower: null } or { Upper: null })
        {
            items.Add(Of("taken-as-exact:prevalence", "The external prevalence came without limits and is taken as exact: expected predictive values look more certain than they are."));
        }
    }

    private static Caution Of(string id, string text) => new(id, new Sentence(text), true);
}
