using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Yield;

/// <summary>How much screening was done for each case found.</summary>
internal static class YieldAnalysis
{
    /// <summary>Divides what was done by what was found.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="people">Sums over people.</param>
    /// <param name="settings">What the program file says.</param>
    /// <returns>The findings.</returns>
    /// <remarks>
    /// Each figure is the reciprocal of a proportion (found / done), and its limits are the reciprocals of that proportion's limits, so
    /// they cover as often as those do. Where nothing was found there is no figure and no upper limit, but a lower one.
    /// </remarks>
    public static YieldFindings Of(Tally tally, PersonSums people, ProgramSettings settings)
    {
        var cells = tally.Cells;
        var confidence = settings.Report.Confidence;
        var counts = RunCounts.Of(cells.Screens);
        var through = cells.Cases.ToLookup(cell => cell.FoundThrough, cell => cell.Cases);
        var cases = cells.Cases.Sum(cell => cell.Cases);
        var persons = people.Cell(PersonScope.Program, PersonMeasure.InvalidRuns)?.Persons;

        var casesOfRuns = new ClusterCounter();
        var bySite = new SortedDictionary<string, ClusterCounter>(StringComparer.Ordinal);
        foreach (var cell in cells.Screens) Add(cell.Site, cell.Day, cell.Runs, 0);
        foreach (var cell in cells.Cases) Add(cell.Site, cell.Day, 0, cell.Cases);
        var confirmed = Proportions.Of(
            cells.Screens, (outcome, _) => outcome is Outcome.Negative or Outcome.Positive,
            (outcome, followUp) => outcome == Outcome.Positive && followUp == FollowUp.Confirmed, null, "there are no valid tests", confidence);
        var refuted = Refuted.RefutedAnalysis.Rate(cells.Screens, people.Sums(PersonScope.Program, PersonMeasure.Refuted), confidence);

        var runsPerCase = Of(YieldMeasure.RunsPerCase, casesOfRuns.Proportion(confidence), "no case was found", "no run was counted");
        var personsPerCase = PersonsPerCase(persons, cases, confidence);
        var perConfirmed = Of(YieldMeasure.TestsPerConfirmedRun, confirmed, "no positive run was confirmed", "there are no valid tests");
        var perRefuted = Of(YieldMeasure.TestsPerRefutedRun, refuted, "no positive run was refuted", "there are no valid tests");
        ImmutableArray<SiteYield> sites = [.. bySite.Select(site => new SiteYield(site.Key, Of(YieldMeasure.RunsPerCase, site.Value.Proportion(confidence), "no case was found", "no run was counted")))];
        var findings = new YieldFindings(
            counts.Runs, persons, cases, through[Outcome.Positive].Sum(), through[Outcome.Inconclusive].Sum(), settings.Policy.EpisodeDays,
            runsPerCase, personsPerCase, perConfirmed, perRefuted,
            YieldTables.Table([runsPerCase, personsPerCase, perConfirmed, perRefuted]), [])
        {
            Sites = sites,
            SiteTable = YieldTables.BySite(sites),
        };
        return findings with { Sentences = YieldSentences.Of(findings) };

        void Add(string site, DateOnly day, long runs, long found)
        {
            casesOfRuns.Add(site, day, runs, found);
            if (!bySite.TryGetValue(site, out var counter)) bySite.Add(site, counter = new ClusterCounter());
            counter.Add(site, day, runs, found);
        }
    }

    private static YieldFinding PersonsPerCase(long? persons, long cases, double confidence)
    {
        const YieldMeasure Measure = YieldMeasure.PersonsPerCase;
        if (persons is not { } tested) return Undefined(Measure, 0, cases, "the data hold no sums over people", confidence);
        if (cases > tested) return Undefined(Measure, tested, cases, "there are more cases than people tested", confidence);
        return Of(Measure, ClusteredProportion.Of(cases, tested, confidence), "no case was found", "nobody was tested", false);
    }

    private static YieldFinding Of(YieldMeasure measure, ProportionFinding share, string nothingFound, string nothingDone, bool widened = true)
    {
        if (share.Trials == 0) return Undefined(measure, 0, share.Events, nothingDone, share.Confidence);
        return new YieldFinding(
            measure, share.Trials, share.Events,
            share.Events == 0 ? null : (double)share.Trials / share.Events, share.Events == 0 ? nothingFound : null,
            Reciprocal(share.Upper), Reciprocal(share.Lower),
            widened ? Reciprocal(share.WidenedUpper) : null, widened ? Reciprocal(share.WidenedLower) : null,
            share.Method, share.Confidence)
        {
            FewSites = widened ? share.FewSites : null,
        };
    }

    private static double? Reciprocal(double? limit) => limit is > 0 ? 1 / limit : null;

    private static YieldFinding Undefined(YieldMeasure measure, long done, long found, string reason, double confidence) =>
        new(measure, done, found, null, reason, null, null, null, null, null, confidence);
}
