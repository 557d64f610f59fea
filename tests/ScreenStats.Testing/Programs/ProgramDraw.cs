using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Testing.Programs;

/// <summary>
/// Draws a program as cubes, run by run and without files: people who are tested weekly at their site, with lots in use over spans of time, with
/// people and sites that differ, positives that are followed up late or never.
/// </summary>
/// <remarks>
/// <para>
/// A person's chance at a run is (w r + x) / (w + n) after n earlier trials with x events, r the site's rate and w = 1 / correlation - 1: Pólya's urn, so
/// that runs of one person are correlated as the plan says while the mean stays the site's. A faulty lot adds false positives of its own,
/// (factor - 1) times the site's rate, independent of the person.
/// </para>
/// <para>
/// Specimens are reported one to four days after the run; a positive that nobody follows up is unverified five days after it. All is over when the
/// data end.
/// </para>
/// </remarks>
public static class ProgramDraw
{
    /// <summary>The first day of every drawn program, a Monday.</summary>
    public static readonly DateOnly FirstDay = new(2026, 1, 5);

    private const int UnverifiedAfterDays = 5;

    /// <summary>Draws a program.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="seed">The seed; the same plan and seed give the same program.</param>
    /// <exception cref="ArgumentException">No lot can have the fault of the plan.</exception>
    public static DrawnProgram Of(DrawnPlan plan, ulong seed) =>
        TryOf(plan, seed) ?? throw new ArgumentException("No lot of such a plan has the share, or the refuted positives, that the fault asks for.", nameof(plan));

    /// <summary>Draws a program, or null where no lot has the share, or the refuted positives, that the fault of the plan asks for.</summary>
    public static DrawnProgram? TryOf(DrawnPlan plan, ulong seed)
    {
        var random = new RandomNumbers(seed);
        var sites = Names("Site", plan.Sites);
        var lots = Names("L", plan.Lots).Add(Levels.None);
        var people = People(plan, random);
        var falsePositive = Rates(plan.FalsePositiveRate, plan, random);
        var unusable = Rates(plan.UnusableRate, plan, random);
        var followed = sites.Select(_ => plan.FollowThrough.Least + ((plan.FollowThrough.Most - plan.FollowThrough.Least) * random.Next())).ToArray();
        var schedule = new LotSchedule(plan, random);
        var (faulty, share, from, expected) = (-1, 0.0, 0, 0.0);
        if (plan.Fault is { } fault)
        {
            (faulty, share) = Faulty(plan, schedule, people);
            if (Math.Abs(share - fault.Share) > 0.2 * fault.Share) return null;
            from = From(plan, schedule, faulty);
            expected = (fault.Factor - 1) * Expected(plan, schedule, faulty, people, from, site => falsePositive[site] * followed[site]);
            if (expected < fault.LeastRefuted) return null;
        }

        var (caseRate, weight) = (plan.CaseRate, plan.PersonCorrelation > 0 ? (1 / plan.PersonCorrelation) - 1 : double.PositiveInfinity);
        var days = 7 * plan.Weeks;
        var negatives = new long[plan.Sites, plan.Lots + 1, days];
        var others = new List<NotableRun>();
        var settlements = new List<SettlementCell>();
        var totals = new PersonTotals(plan.Sites, plan.Lots + 1);
        for (var site = 0; site < plan.Sites; site++)
        {
            for (var person = 0; person < people[site]; person++)
            {
                var weekday = random.Whole(0, 4);
                double trials = 0, unusables = 0, valid = 0, falsePositives = 0;
                for (var day = weekday; day < days; day += 7)
                {
                    var lot = plan.WithoutLot > 0 && random.Next() < plan.WithoutLot ? plan.Lots : schedule.Lot(site, day, random);
                    var (outcome, isCase) = (Outcome.Negative, false);
                    var at = random.Next();
                    var chance = Chance(unusable[site], weight, unusables, trials++);
                    if (at < chance)
                    {
                        unusables++;
                        outcome = at < 0.4 * chance ? Outcome.Inconclusive : Outcome.Invalid;
                    }
                    else
                    {
                        at = (at - chance) / (1 - chance);
                        chance = Chance(falsePositive[site], weight, falsePositives, valid++);
                        if (at < chance) falsePositives++;
                        var added = lot == faulty && day >= from ? (plan.Fault!.Factor - 1) * falsePositive[site] : 0;
                        isCase = at >= chance + added && at < chance + added + caseRate;
                        if (at < chance + added || isCase) outcome = Outcome.Positive;
                    }

                    if (outcome == Outcome.Negative)
                    {
                        negatives[site, lot, day]++;
                        totals.Count(lot, outcome, FollowUp.None);
                        continue;
                    }

                    var followUp = outcome == Outcome.Invalid ? FollowUp.None
                        : random.Next() >= followed[site] ? FollowUp.Unverified : isCase ? FollowUp.Confirmed : FollowUp.Refuted;
                    totals.Count(lot, outcome, followUp);
                    var minute = FirstDay.AddDays(day).ToDateTime(new TimeOnly(8, 0));
                    int? minutes = followUp is FollowUp.Confirmed or FollowUp.Refuted ? 60 * random.Whole(1, 30) : null;
                    others.Add(new NotableRun(
                        minute, false, sites[site], lots[lot], Levels.None, Levels.None, Specimen.NotRecorded, CollectedBy.NotRecorded, outcome, followUp, minutes, null));
                    if (followUp == FollowUp.None) continue;
                    var known = FirstDay.AddDays(day + (followUp == FollowUp.Unverified ? UnverifiedAfterDays : random.Whole(1, 4)));
                    settlements.Add(new SettlementCell(
                        minute, false, sites[site], lots[lot], Levels.None, Levels.None, Specimen.NotRecorded, CollectedBy.NotRecorded, outcome, known,
                        FollowUp.Pending, null, followUp, minutes, 1));
                }

                totals.Close(site);
            }
        }

        var screens = Screens(negatives, others, sites, lots);
        return new DrawnProgram
        {
            Plan = plan,
            FaultyLot = faulty < 0 ? null : lots[faulty],
            FaultyShare = share,
            ExpectedFaultyRefuted = expected,
            FaultFrom = faulty < 0 ? null : FirstDay.AddDays(from),
            RefutedRates = Enumerable.Range(0, plan.Sites).ToDictionary(site => sites[site], site => falsePositive[site] * followed[site], StringComparer.Ordinal),
            UnusableRates = Enumerable.Range(0, plan.Sites).ToDictionary(site => sites[site], site => unusable[site], StringComparer.Ordinal),
            Cells = new TallyCells
            {
                HasConfirmatory = true,
                ReportingLagHours = 48,
                DataAsOf = FirstDay.AddDays(days + UnverifiedAfterDays).ToDateTime(default),
                Screens = screens,
                Operators = [.. screens.GroupBy(cell => new OperatorCell(Levels.None, cell.Site, cell.Day, cell.Outcome, cell.FollowUp, 0)).Select(cell => cell.Key with { Runs = cell.Sum(one => one.Runs) })],
                Notable = [.. others],
                Settlements = [.. settlements],
                Persons = [.. totals.Cells(sites, lots)],
                Participation = [new ParticipationCell(plan.Weeks, people.Sum())],
                Gaps = [.. Enumerable.Range(0, plan.Sites).Select(site => new GapCell(sites[site], 7, (long)(plan.Weeks - 1) * people[site]))],
            },
        };
    }

    private static double Chance(double rate, double weight, double events, double trials) =>
        double.IsInfinity(weight) ? rate : ((weight * rate) + events) / (weight + trials);

    private static ImmutableArray<string> Names(string kind, int count) =>
        [.. Enumerable.Range(1, count).Select(number => string.Create(CultureInfo.InvariantCulture, $"{kind}-{number:00}"))];

    private static int[] People(DrawnPlan plan, RandomNumbers random)
    {
        var sizes = Enumerable.Range(0, plan.Sites).Select(_ => random.Logarithmic(0.5, 2)).ToArray();
        var all = (double)plan.Runs / plan.Weeks;
        return [.. sizes.Select(size => Math.Max(1, (int)Math.Round(all * size / sizes.Sum())))];
    }

    private static double[] Rates(double mean, DrawnPlan plan, RandomNumbers random) =>
        [.. Enumerable.Range(0, plan.Sites).Select(_ => Math.Min(0.5, random.Beta(mean, plan.SiteCorrelation)))];

    /// <summary>The lot whose share of all runs is nearest to the one wanted.</summary>
    private static (int Lot, double Share) Faulty(DrawnPlan plan, LotSchedule schedule, int[] people)
    {
        var all = (double)people.Sum() * plan.Weeks;
        return Enumerable.Range(0, plan.Lots)
            .Select(lot => (Lot: lot, Share: Expected(plan, schedule, lot, people, 0, _ => 1) / all)).MinBy(one => Math.Abs(one.Share - plan.Fault!.Share));
    }

    /// <summary>The first day of the fault, by the days on which the lot is in use.</summary>
    private static int From(DrawnPlan plan, LotSchedule schedule, int faulty)
    {
        var inUse = Enumerable.Range(0, 7 * plan.Weeks).Where(day => day % 7 < 5 && Enumerable.Range(0, plan.Sites).Any(site => schedule.Share(site, day, faulty) > 0)).ToList();
        return inUse[(int)(plan.Fault!.From * inUse.Count)];
    }

    /// <summary>Runs of a lot from a day on, each weighted by its site.</summary>
    private static double Expected(DrawnPlan plan, LotSchedule schedule, int lot, int[] people, int first, Func<int, double> weight)
    {
        double sum = 0;
        for (var site = 0; site < plan.Sites; site++)
        {
            for (var day = first; day < 7 * plan.Weeks; day++) sum += day % 7 < 5 ? people[site] / 5.0 * schedule.Share(site, day, lot) * weight(site) : 0;
        }

        return sum;
    }

    private static ImmutableArray<ScreenCell> Screens(long[,,] negatives, List<NotableRun> others, ImmutableArray<string> sites, ImmutableArray<string> lots)
    {
        var screens = ImmutableArray.CreateBuilder<ScreenCell>();
        for (var site = 0; site < sites.Length; site++)
        {
            for (var lot = 0; lot < lots.Length; lot++)
            {
                for (var day = 0; day < negatives.GetLength(2); day++)
                {
                    if (negatives[site, lot, day] > 0)
                    {
                        screens.Add(new ScreenCell(
                            sites[site], lots[lot], FirstDay.AddDays(day), Specimen.NotRecorded, CollectedBy.NotRecorded, Outcome.Negative, FollowUp.None, negatives[site, lot, day]));
                    }
                }
            }
        }

        foreach (var run in others.GroupBy(run => (run.Site, run.Lot, run.Minute, run.Outcome, run.FollowUp)))
        {
            screens.Add(new ScreenCell(
                run.Key.Site, run.Key.Lot, DateOnly.FromDateTime(run.Key.Minute), Specimen.NotRecorded, CollectedBy.NotRecorded, run.Key.Outcome, run.Key.FollowUp, run.LongCount()));
        }

        return screens.DrainToImmutable();
    }
}
