using System.Collections.Immutable;
using ScreenStats.Evaluation.Changes;
using ScreenStats.Evaluation.Changes.Differences;
using ScreenStats.Evaluation.Changes.Rows;
using ScreenStats.Evaluation.Changes.Snapshots;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Testing.Programs;

namespace ScreenStats.Evaluation.Tests.Studies;

/// <summary>
/// How often the limits of a difference hold no difference where nothing changed, on drawn programs: 6 sites of 40 people, 26 weeks, a run a week. What is
/// compared shares no run, but the same people and sites stand on both sides.
/// </summary>
public sealed class ChangeStudyTests(ITestOutputHelper output)
{
    private const int Draws = 1_000;
    private const int Sites = 6;
    private const int People = 40;
    private const int Weeks = 26;

    // Three standard errors of a share of 95 % over 1,000 draws are 2.1 points. The limits over sites are never inside of the plain ones, and so hold more often than either.
    // Too wide is as wrong as too narrow: the design effect of the whole, which between sites is large, would hold no difference in every draw of the last rows.
    [Theory]
    [InlineData(13, true, 1, 1, 0.95)]
    [InlineData(20, true, 1, 1, 0.95)]
    [InlineData(13, false, 1, 1, 0.95)]
    [InlineData(13, true, 6, 3, 0.95)]
    [InlineData(13, false, 6, 3, 0.95)]
    [InlineData(16, true, 1, 12, 0.95, 0.999)]
    public void Limits_hold_no_difference_about_as_often_as_they_say_where_nothing_changed(int cut, bool nested, double people, double sites, double least, double most = 0.993)
    {
        var (plain, widened) = (0, 0);
        for (var draw = 0; draw < Draws; draw++)
        {
            var row = Draw(new RandomNumbers(90_800UL + (ulong)draw), cut, nested, people, sites);
            row.Basis.Should().Be(nested ? ChangeBasis.AddedSince : ChangeBasis.SeparateSpans);
            row.WidenedMethod.Should().Be("linearised-over-sites");
            row.Lower.Should().NotBeNull();
            row.WidenedLower.Should().NotBeNull().And.BeLessThanOrEqualTo(row.Lower!.Value);
            row.WidenedUpper.Should().NotBeNull().And.BeGreaterThanOrEqualTo(row.Upper!.Value);
            if (row.Lower <= 0 && row.Upper >= 0) plain++;
            if (row.WidenedLower <= 0 && row.WidenedUpper >= 0) widened++;
        }

        output.WriteLine($"cut {cut}, nested {nested}, people {people}, sites {sites}: plain {plain / (double)Draws:0.000}, widened {widened / (double)Draws:0.000}");
        (plain / (double)Draws).Should().BeInRange(people > 1 ? 0.8 : 0.93, 0.99);
        (widened / (double)Draws).Should().BeInRange(least, most);
    }

    // Not where one site of six has most of the events (twelve times the chance): by as many points as that one no other site rises, and six such sites cannot tell (seen in none of 250 draws).
    [Theory]
    [InlineData(13, true, 1, 1, 0.9)]
    [InlineData(13, true, 6, 3, 0.8)]
    [InlineData(16, true, 1, 3, 0.8)]
    [InlineData(13, false, 6, 3, 0.8)]
    public void A_rate_that_doubles_is_seen_in_most_draws_though_sites_and_people_are_unlike_one_another(int cut, bool nested, double people, double sites, double least)
    {
        var seen = Enumerable.Range(0, Draws / 4).Count(draw => Draw(new RandomNumbers(70_400UL + (ulong)draw), cut, nested, people, sites, 2).WidenedLower > 0) * 4.0 / Draws;
        output.WriteLine($"cut {cut}, nested {nested}, people {people}, sites {sites}: seen {seen:0.000}");
        seen.Should().BeGreaterThanOrEqualTo(least);
    }

    // One in five people, and one site of the six, has a chance that many times as high as the others; it stays what it is over all weeks, but for a rise from the cut on.
    private static ChangeRow Draw(RandomNumbers random, int cut, bool nested, double people, double sites, double rise = 1)
    {
        var events = new int[Sites, People, Weeks];
        for (var site = 0; site < Sites; site++)
        {
            for (var person = 0; person < People; person++)
            {
                var chance = 0.03 * (person % 5 == 0 ? people : 1) * (site == 0 ? sites : 1);
                for (var week = 0; week < Weeks; week++) events[site, person, week] = random.Next() < Math.Min(0.9, chance * (week < cut ? 1 : rise)) ? 1 : 0;
            }
        }

        var (start, earlier, later) = (nested ? 0 : cut, Share(events, 0, cut), Share(events, nested ? 0 : cut, Weeks));
        var (before, now) = (Span(0, cut) with { Shares = BySite(events, 0, cut) }, Span(start, Weeks) with { Shares = BySite(events, start, Weeks) });
        return ShareChange.Of(earlier, later, new ComparedSpans(before, now), 0.95, new PairedSites(before, now));
    }

    private static ImmutableArray<SnapshotShare> BySite(int[,,] events, int from, int to) =>
    [
        .. Enumerable.Range(0, Sites).Select(site => new SnapshotShare(
            Grouping.Site, $"Site {site}", ChangeMeasure.Positivity,
            Enumerable.Range(0, People).Sum(person => Enumerable.Range(from, to - from).Sum(week => (long)events[site, person, week])), People * (to - from), null, null)),
    ];

    private static SnapshotShare Share(int[,,] events, int from, int to)
    {
        var (byPerson, bySite, bySiteWeek) = (new List<(long, long)>(), new List<(long, long)>(), new List<(long, long)>());
        for (var site = 0; site < Sites; site++)
        {
            var weeks = new long[to - from];
            for (var person = 0; person < People; person++)
            {
                long own = 0;
                for (var week = from; week < to; week++)
                {
                    own += events[site, person, week];
                    weeks[week - from] += events[site, person, week];
                }

                byPerson.Add((to - from, own));
            }

            bySite.Add((People * (to - from), weeks.Sum()));
            bySiteWeek.AddRange(weeks.Select(count => ((long)People, count)));
        }

        var share = ClusteredProportion.Of(
            bySiteWeek.Sum(cell => cell.Item2), bySiteWeek.Sum(cell => cell.Item1), 0.95,
            (ClusterLevel.Persons, ClusterSums.From(byPerson)), (ClusterLevel.Sites, ClusterSums.From(bySite)), (ClusterLevel.SiteWeeks, ClusterSums.From(bySiteWeek)));
        return new SnapshotShare(Grouping.Program, "", ChangeMeasure.Positivity, share.Events, share.Trials, share.DesignEffect, share.Clusters);
    }

    private static EvaluationSnapshot Span(int from, int to) => new()
    {
        FirstDay = ProgramDraw.FirstDay.AddDays(7 * from),
        LastDay = ProgramDraw.FirstDay.AddDays((7 * to) - 1),
        SuppressBelow = 0,
        Shares = [],
        Figures = [],
        Periods = [],
        Levels = [],
        Settings = [],
        Answers = [],
    };
}
