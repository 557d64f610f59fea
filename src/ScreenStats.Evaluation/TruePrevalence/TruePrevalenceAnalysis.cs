using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.InteropServices;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Prevalence;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.TruePrevalence;

/// <summary>The prevalence behind the positivity, by period, site and device.</summary>
internal static class TruePrevalenceAnalysis
{
    private const string Program = "program";
    private const string Site = "site";
    private const string Device = "device";
    private const string NotStated = "the program file does not state both sensitivity and specificity of any device that was used here";

    /// <summary>Corrects the positivity of the program, its periods, sites and devices for the stated accuracy of the devices.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="people">Sums over people.</param>
    /// <param name="settings">What the program file says.</param>
    /// <returns>The findings.</returns>
    /// <remarks>
    /// Where several devices were used, one correction is made with their sensitivities and specificities weighted by their valid tests in
    /// that part and period (<see cref="AccuracyMixture"/>). It assumes that people tested with each device are infected as often; added up
    /// device by device it would not, but each small part would be held at 0 on its own, and the sum would be too high. Limits hold the
    /// uncertainty of the positives and of the stated accuracies; the widened ones use the design effect of the positivity, with
    /// Student's quantile where there are fewer than 30 clusters.
    /// </remarks>
    public static TruePrevalenceFindings Of(Tally tally, PersonSums people, ProgramSettings settings)
    {
        var parts = new Dictionary<(string By, string Level, DateOnly? Start), TruePrevalencePart>();
        TruePrevalencePart Part(string by, string level, DateOnly? start)
        {
            ref var part = ref CollectionsMarshal.GetValueRefOrAddDefault(parts, (by, level, start), out _);
            return part ??= new TruePrevalencePart(by, level, start);
        }

        var program = Part(Program, "", null);
        foreach (var lot in tally.Cells.Screens.Where(cell => cell.Outcome.IsValidTest()).GroupBy(cell => cell.Lot, StringComparer.Ordinal))
        {
            var device = DeviceRule.Of(lot.Key, settings.Screens);
            var ofDevice = device is null ? null : Part(Device, device.Name, null);
            // Cells come in order of site and day: most are of the same site and period as the one before.
            TruePrevalencePart? period = null, site = null;
            foreach (var cell in lot)
            {
                var start = tally.Cells.Period.Start(cell.Day);
                if (period is null || period.Start != start) period = Part(Program, "", start);
                if (site is null || site.Level != cell.Site) site = Part(Site, cell.Site, null);
                program.Add(cell, device);
                period.Add(cell, device);
                site.Add(cell, device);
                ofDevice?.Add(cell, device);
            }
        }

        ImmutableArray<TruePrevalenceFinding> Of(string by, bool periods) =>
        [
            .. parts.Values.Where(part => part.By == by && part.Start is not null == periods && part != program)
                .OrderBy(part => part.Level, Levels.Order).ThenBy(part => part.Start)
                .Select(part => TruePrevalenceAnalysis.Of(part, tally, people, settings)),
        ];

        var whole = TruePrevalenceAnalysis.Of(program, tally, people, settings);
        var (byPeriod, bySite, byDevice) = (Of(Program, true), Of(Site, false), Of(Device, false));
        var findings = new TruePrevalenceFindings(
            whole, byPeriod, byPeriod.Count(period => period.BelowFalsePositiveRate), bySite, byDevice,
            TruePrevalenceTables.Table([whole, .. byPeriod, .. bySite, .. byDevice]), []);
        return findings with { Sentences = TruePrevalenceSentences.Of(findings, tally.Cells.Period) };
    }

    private static TruePrevalenceFinding Of(TruePrevalencePart part, Tally tally, PersonSums people, ProgramSettings settings)
    {
        var confidence = settings.Report.Confidence;
        var apparent = part.Counter.Proportion(confidence, PersonsOf(part, people));
        var key = part.Start is { } start ? start.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : part.Level;
        ImmutableArray<string> devices = [.. part.Devices(settings).Select(device => device.Name)];
        if (apparent.Trials == 0)
        {
            var reason = part.WithoutAccuracy > 0 ? NotStated : "there are no valid tests";
            return new TruePrevalenceFinding(
                key, part.By, part.Level, part.Start, apparent.Because(reason), part.WithoutAccuracy, devices, null, null, false, false,
                [.. TruePrevalenceMethods.Undefined(reason, confidence)], "");
        }

        var sensitivity = part.Mixed(settings, device => device.Sensitivity!.Statement());
        var specificity = part.Mixed(settings, device => device.Specificity!.Statement());
        ImmutableArray<PrevalenceEstimate> whole = part is { By: Program, Start: null } ? [TruePrevalenceMethods.Posterior(apparent, sensitivity, specificity)] : [];
        var below = apparent.Estimate < 1 - specificity.Value;
        var above = apparent.Estimate > sensitivity.Value;
        var finding = new TruePrevalenceFinding(
            key, part.By, part.Level, part.Start, apparent, part.WithoutAccuracy, devices, sensitivity.Value, specificity.Value, below, above,
            [.. TruePrevalenceMethods.Of(apparent, sensitivity, specificity), .. whole], "") { Confirmed = part.Confirmed };
        return finding with { Remark = Remark(finding, part) };
    }

    /// <summary>Sums over the people of the part; of the whole program where they are not kept for it.</summary>
    private static ClusterSums? PersonsOf(TruePrevalencePart part, PersonSums people)
    {
        var program = people.Sums(PersonScope.Program, PersonMeasure.Positivity);
        if (part.WithoutAccuracy > 0 || part.By == Device) return program;
        if (part.By == Site) return people.Sums(PersonScope.Site, PersonMeasure.Positivity, part.Level);
        return part.Start is { } start ? people.Sums(PersonScope.Period, PersonMeasure.Positivity, "", start) : program;
    }

    private static string Remark(TruePrevalenceFinding finding, TruePrevalencePart part)
    {
        var (apparent, below, above) = (finding.Apparent, finding.BelowFalsePositiveRate, finding.AboveSensitivity);
        var parts = new List<string>();
        if (below) parts.Add("fewer tests were positive than 1 - specificity alone would give: the estimate is 0, and the stated specificity is not compatible with these data, or only by chance");
        if (finding.BelowConfirmed) parts.Add("less than was confirmed: the stated accuracy expects more false positives than were seen, so the stated specificity is too low for these data, or only by chance so few were seen");
        if (above) parts.Add("more tests were positive than the sensitivity can give: the estimate is 1");
        if (part is { WithoutAccuracy: > 0, By: Program, Start: null }) parts.Add("tests of devices without stated accuracy are left out");
        if (apparent.FewCounts) parts.Add("few counts");
        if (apparent.DesignEffectUndefined is { } reason) parts.Add("not widened: " + reason);
        return string.Join("; ", parts);
    }
}
