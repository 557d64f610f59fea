using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Monitoring.Lots;

namespace ScreenStats.Evaluation.LotTests;

/// <summary>Lots compared within site-weeks, and sites within lot-weeks, so that what sites, lots and weeks differ by cannot be laid at the wrong door.</summary>
internal sealed class PlaceTestAnalysis
{
    private const string NoConfirmatory = "there is no confirmatory export, so no positive could be confirmed or refuted";
    private const string NoControls = "no positive control swab with a lot is recorded";

    // As many events at the program's rate as are added to each site (of sites: lot), so that one with few runs is near the program.
    private const double RatePrior = 5;
    private readonly Tally tally;
    private readonly PersonSums sums;
    private readonly double confidence;
    private readonly PlaceWeeks weeks;
    private readonly FollowThroughWeights weights;

    public PlaceTestAnalysis(Tally tally, PersonSums sums, double confidence)
    {
        (this.tally, this.sums, this.confidence) = (tally, sums, confidence);
        weeks = new PlaceWeeks(tally);
        weights = new FollowThroughWeights(weeks.All);
    }

    /// <summary>Lots within site-weeks; of failed control swabs within sites.</summary>
    public PlaceTestFindings Lots()
    {
        var named = weeks.All.Where(entry => entry.Lot != Levels.None).ToList();
        var strata = Numbers(named.Select(entry => (entry.Site, entry.Week)));
        StratumPart Part(PlaceWeek entry, long events, long trials, double weight) => new(entry.Lot, entry.Site, strata[(entry.Site, entry.Week)], events, trials, weight);
        double? Persons(PersonMeasure measure, IReadOnlyCollection<string> lots) => PersonFactor(PersonScope.Lot, measure, lots);
        string[] names = [.. named.Select(entry => entry.Lot).Distinct().Order(Levels.Order)];
        var confirmatory = tally.Cells.HasConfirmatory ? null : NoConfirmatory;
        var controls = tally.Cells.Controls.Where(cell => cell.Expected == ControlExpectation.Positive && cell.Lot != Levels.None).ToList();
        var controlSites = Numbers(controls.Select(cell => (cell.Site, default(DateOnly))));
        var measured = new[]
        {
            Measure(TestMeasure.Refuted, names, strata.Count, confirmatory,
                [.. named.Select(entry => Part(entry, entry.Refuted, entry.Tests, entry.Tests * weights.OfLot(entry.Lot)))], lots => Persons(PersonMeasure.Refuted, lots)),
            Measure(TestMeasure.Invalid, names, strata.Count, null,
                [.. named.Select(entry => Part(entry, entry.Unusable, entry.Runs, entry.Runs))], lots => Persons(PersonMeasure.InvalidRuns, lots)),
            Measure(TestMeasure.Cases, names, strata.Count, confirmatory,
                [.. named.Select(entry => Part(entry, entry.Cases, entry.Runs, entry.Runs * weights.OfLot(entry.Lot)))], _ => null),
            Measure(TestMeasure.FailedControls, names, controlSites.Count, controls.Count == 0 ? NoControls : null,
                [.. controls.GroupBy(cell => (cell.Lot, cell.Site)).Select(group => new StratumPart(
                    group.Key.Lot, group.Key.Site, controlSites[(group.Key.Site, default)], group.Where(cell => !cell.IsPassed).Sum(cell => cell.Runs), group.Sum(cell => cell.Runs), 0))], _ => null),
        };
        return Findings("lot", measured, []);
    }

    /// <summary>Sites within lot-weeks.</summary>
    /// <param name="leaveOut">Lots that stand out by refuted positives: they must not make their sites look bad.</param>
    public PlaceTestFindings Sites(IReadOnlyCollection<string> leaveOut)
    {
        var strata = Numbers(weeks.All.Select(entry => (entry.Lot, entry.Week)));
        StratumPart Part(PlaceWeek entry, long events, long trials, double weight) => new(entry.Site, entry.Lot, strata[(entry.Lot, entry.Week)], events, trials, weight);
        double? Persons(PersonMeasure measure, IReadOnlyCollection<string> sites) => PersonFactor(PersonScope.Site, measure, sites);
        string[] names = [.. weeks.All.Select(entry => entry.Site).Distinct().Order(Levels.Order)];
        var left = leaveOut.ToHashSet(StringComparer.Ordinal);
        var measured = new[]
        {
            Measure(TestMeasure.Refuted, names, strata.Count, tally.Cells.HasConfirmatory ? null : NoConfirmatory,
                [.. weeks.All.Where(entry => !left.Contains(entry.Lot)).Select(entry => Part(entry, entry.Refuted, entry.Tests, entry.Tests * weights.OfSite(entry.Site)))],
                sites => Persons(PersonMeasure.Refuted, sites)),
            Measure(TestMeasure.Invalid, names, strata.Count, null,
                [.. weeks.All.Select(entry => Part(entry, entry.Unusable, entry.Runs, entry.Runs))], sites => Persons(PersonMeasure.InvalidRuns, sites)),
        };
        return Findings("site", measured, [.. left.Order(Levels.Order)]);
    }

    private static Dictionary<(string, DateOnly), int> Numbers(IEnumerable<(string, DateOnly)> keys)
    {
        var numbers = new Dictionary<(string, DateOnly), int>();
        foreach (var key in keys) numbers.TryAdd(key, numbers.Count);
        return numbers;
    }

    private static PlaceTestFindings Findings(string by, IReadOnlyCollection<(PlaceTestFamily Family, ImmutableArray<PlaceTestRow> Rows)> measured, ImmutableArray<string> leftOut)
    {
        ImmutableArray<PlaceTestRow> rows = [.. measured.SelectMany(one => one.Rows)];
        var findings = new PlaceTestFindings(by, [.. measured.Select(one => one.Family)], rows, leftOut, PlaceTestTables.Table(by, rows), []);
        return findings with { Sentences = PlaceTestSentences.Of(findings) };
    }

    private (PlaceTestFamily Family, ImmutableArray<PlaceTestRow> Rows) Measure(
        TestMeasure measure, string[] names, int strata, string? undefined, IReadOnlyList<StratumPart> parts, Func<IReadOnlyCollection<string>, double?> persons)
    {
        if (undefined is not null) parts = [];
        var judgement = StrataJudge.Judge(parts, strata, measure, confidence, persons);
        var rates = measure == TestMeasure.Refuted || measure == TestMeasure.Invalid ? Rates(parts, judgement, confidence) : null;
        var options = new LotRatioOptions();
        var rows = names.Select(name =>
        {
            var key = name + "|" + measure.Name;
            var none = undefined ?? UndefinedReason.NoInformativeStratum.Describe();
            if (!judgement.Places.TryGetValue(name, out var place))
            {
                return new PlaceTestRow(
                    key, name, measure.Name, measure.Direction, 0, 0, 0, EstimateFinding.Undefined(none), judgement.Dispersion, null, null, none, false, false,
                    EstimateFinding.Undefined(none), null, none);
            }

            var (test, ratio) = (place.Test, place.Ratio);
            var others = EstimateFinding.Of(ratio.ToOthers) with { Method = ratio.ToOthers.Method is null ? null : MethodNames.RatioWithinStrata };
            var excess = place.Found && (measure == TestMeasure.Refuted || measure == TestMeasure.Invalid);
            var blind = place.Found && ((measure == TestMeasure.Cases && ratio.ToOthers.Upper < 1) || (measure == TestMeasure.FailedControls && ratio.ToOthers.Lower > 1));
            var (rate, above, reason) = rates is null ? (EstimateFinding.Undefined("rates are drawn together for refuted positives and unusable runs only"), null, "rates are drawn together for refuted positives and unusable runs only") : rates[name];
            return new PlaceTestRow(
                key, name, measure.Name, measure.Direction, test.InformativeStrata, test.Observed, test.Expected, others, judgement.Dispersion,
                place.PHolm is null ? null : measure.Upper ? test.AtLeastAsMany : test.AtMostAsMany, place.PHolm, test.Reason?.Describe(),
                excess && ratio.Material, blind, rate, above, reason);
        });
        return (
            new PlaceTestFamily(
                measure.Name, judgement.Compared, names.Length, StrataJudge.ErrorRate, judgement.Dispersion,
                judgement.Dispersion > 1 ? judgement.FromPersons ? "persons" : "strata" : null, options.MaterialFrom),
            [.. rows]);
    }

    /// <summary>
    /// The rate of each place at the program's mix of sites (of sites: of lots): its events over those that the rates beside it expect, times the program's rate,
    /// as if that were so many trials, drawn together by a beta-binomial distribution. The rates beside it are those of places that were not found.
    /// </summary>
    private static Dictionary<string, (EstimateFinding Rate, double? Above, string? Reason)> Rates(
        IReadOnlyList<StratumPart> parts, StrataJudge.Judgement judgement, double confidence)
    {
        var good = parts.Where(part => judgement.Places.TryGetValue(part.Place, out var place) && !place.Found).ToList();
        var (events, trials) = (good.Sum(part => part.Events), good.Sum(part => part.Trials));
        if (events == 0) (events, trials) = (parts.Sum(part => part.Events), parts.Sum(part => part.Trials));
        var typical = (double)events / Math.Max(1, trials);
        var beside = good.GroupBy(part => part.Beside, StringComparer.Ordinal).ToDictionary(
            group => group.Key,
            group => (group.Sum(part => part.Events) + RatePrior) / (group.Sum(part => part.Trials) + (RatePrior / typical)),
            StringComparer.Ordinal);
        var places = parts.Where(part => part.Trials > 0 && typical > 0).GroupBy(part => part.Place, StringComparer.Ordinal).OrderBy(place => place.Key, Levels.Order).ToList();
        LotTally[] tallies = [.. places.Select(place =>
        {
            var seen = place.Sum(part => part.Events);
            return new LotTally(seen, Math.Max(seen, (long)Math.Round(place.Sum(part => part.Trials * beside.GetValueOrDefault(part.Beside, typical)) / typical)));
        })];
        var posteriors = EmpiricalBayes.Of(tallies, BetaBinomial.MaximumLikelihood(tallies), 2, confidence);
        var found = places.Select((place, index) => (place.Key, Posterior: posteriors[index])).ToDictionary(
            pair => pair.Key,
            pair =>
            {
                var rate = EstimateFinding.Of(pair.Posterior.Rate);
                return (rate with { Method = rate.Method is null ? null : MethodNames.EmpiricalBayes }, pair.Posterior.ChanceAbove, rate.EstimateUndefined);
            },
            StringComparer.Ordinal);
        var none = UndefinedReason.NoEvents.Describe();
        foreach (var name in judgement.Places.Keys) found.TryAdd(name, (EstimateFinding.Undefined(none), null, none));
        return found;
    }

    /// <summary>How many times that of independent runs the variance of the events of one place is because people are tested again and again, over all places.</summary>
    private double? PersonFactor(PersonScope scope, PersonMeasure measure, IReadOnlyCollection<string> places)
    {
        double seen = 0, chance = 0;
        foreach (var place in places)
        {
            if (sums.Cell(scope, measure, place) is not { Trials: > 0 } cell) continue;
            var rate = (double)cell.Events / cell.Trials;
            seen += cell.EventsSquared - (2 * rate * cell.TrialsTimesEvents) + (rate * rate * cell.TrialsSquared);
            chance += cell.Trials * rate * (1 - rate);
        }

        return chance > 0 ? seen / chance : null;
    }
}
