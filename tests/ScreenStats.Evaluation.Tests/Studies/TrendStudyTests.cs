using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Trends;
using ScreenStats.Evaluation.Trends.Changes;
using ScreenStats.Evaluation.Trends.Growth;
using ScreenStats.Evaluation.Trends.Series;
using ScreenStats.Testing.Programs;

namespace ScreenStats.Evaluation.Tests.Studies;

/// <summary>
/// How often a trend is told to rise or to fall where nothing changes, and how often where it does. 20 programs of each kind in every run, 200 by hand,
/// committed in tests/reference/studies/trend-study.csv.
/// </summary>
/// <remarks>
/// Thirty weeks, four sites. "steady": every site has one rate. "people": runs of one person are correlated by 0.1, sites by 0.003. "outbreaks": each week of each site
/// has a rate of its own (standard deviation 0.5 on the logit). "wander": the whole program's logit is pulled back to one mean (standard deviation 0.3, each week 0.5 of the one
/// before), which no line can tell from a trend over eight weeks. "rise": 5 % more each week. "peak": 10 % more each week for 18 weeks, then 15 % less.
/// </remarks>
public sealed class TrendStudyTests(ITestOutputHelper output)
{
    private const int Few = 20;
    private const int All = 200;
    private const int Weeks = 30;
    private static readonly StudyFile File = new("trend-study.csv", "kind,programs,told,count,of,share");

    [Theory]
    [InlineData("steady")]
    [InlineData("people")]
    [InlineData("outbreaks")]
    [InlineData("wander")]
    [InlineData("rise")]
    [InlineData("peak")]
    public void What_is_told_of_a_trend_is_seldom_wrong(string kind)
    {
        var programs = StudyFile.IsFull ? All : Few;
        var told = new string[programs][];
        Parallel.For(0, programs, number => told[number] = [.. Told(kind, number)]);
        var lines = new List<string>();
        string[] all = ["recent-8 rises", "recent-8 falls", "recent-4 rises", "recent-4 falls", "whole rises", "whole falls", "whole holds", "change found", "change holds"];
        foreach (var some in StudyFile.IsFull ? [Few, All] : new[] { Few })
        {
            foreach (var one in all)
            {
                var count = told.Take(some).Count(words => words.Contains(one));
                lines.Add(StudyFile.Line(kind, some, one, count, some, Math.Round((double)count / some, 4)));
                output.WriteLine(lines[^1]);
            }
        }

        if (StudyFile.IsFull) File.Write(kind, lines);
        else File.Lines(kind).Where(line => line.Contains($",{Few},", StringComparison.Ordinal) && line.Split(',')[1] == "20").Should().Equal(lines.Order(StringComparer.Ordinal), "the study is seeded: set SCREENSTATS_FULL_STUDIES to 1 to write it anew where the change is meant");
        double Share(string one) => told.Count(words => words.Contains(one)) / (double)programs;
        if (kind is "steady" or "people" or "outbreaks")
        {
            var chance = 4 * Math.Sqrt(0.025 * 0.975 / programs);
            foreach (var one in new[] { "recent-8 rises", "recent-8 falls", "whole rises", "whole falls" }) Share(one).Should().BeLessThan(0.04 + chance, one);
            Share("change found").Should().BeLessThan(0.07 + chance);
        }
    }

    private static IEnumerable<string> Told(string kind, int number)
    {
        var tally = Drawn(kind, number);
        var cube = TrendCube.Of(tally, _ => true)!;
        var basis = new SeriesBasis(TrendMeasure.Positivity, TrendBasis.All, true, cube);
        var end = new DataEnd(cube, new ProgramSettings());
        var deflation = Deflation.Of(basis, tally, end).Factor;
        var weeks = FittedSeries.Of(TrendSeries.Of(cube, TrendMeasure.Positivity, ReportPeriod.Week, end), deflation);
        var days = FittedSeries.Of(TrendSeries.Of(cube, TrendMeasure.Positivity, ReportPeriod.Day, end), deflation);
        GrowthRow Straight(FittedSeries stretch) => GrowthFits.Straight(basis, Grouping.Program, "", stretch, GrowthSegment.WholeSpan, 0.95);
        var whole = Straight(weeks);
        foreach (var (name, row) in new[] { ("recent-8", Straight(weeks.Last(56))), ("recent-4", Straight(days.Last(28))), ("whole", whole) })
        {
            if (row.Direction != GrowthDirection.CannotTell) yield return name + (row.Direction == GrowthDirection.Rises ? " rises" : " falls");
        }

        var truth = kind == "rise" ? 0.05 : 0;
        if (whole.GrowthPerWeek.Lower <= truth && truth <= whole.GrowthPerWeek.Upper) yield return "whole holds";
        if (FoundChanges.Choose(weeks, 0.95)?.Fit is not { Number: > 0 } fit) yield break;
        yield return "change found";
        var row0 = FoundChanges.Rows(basis, weeks, FoundChanges.Choose(weeks, 0.95)!).First();
        if (fit.Number == 1 && row0.OnLower <= ProgramDraw.FirstDay.AddDays(18 * 7) && ProgramDraw.FirstDay.AddDays(18 * 7) <= row0.OnUpper) yield return "change holds";
    }

    private static Tally Drawn(string kind, int number)
    {
        var random = new RandomNumbers(64_112_500UL + (ulong)number);
        if (kind == "people")
        {
            return Tally.FromCells(ProgramDraw.Of(
                new DrawnPlan { Lots = 3, Runs = 30_000, Sites = 4, Weeks = Weeks, PersonCorrelation = 0.1, SiteCorrelation = 0.003 }, 64_112_500_000UL + (ulong)number).Cells);
        }

        var (rate, level) = (random.Logarithmic(0.003, 0.02), 0.0);
        var own = Enumerable.Range(0, 4).Select(_ => 0.3 * Normal(random)).ToArray();
        var cells = new List<ScreenCell>();
        for (var week = 0; week < Weeks; week++)
        {
            level = (0.5 * level) + (0.3 * Math.Sqrt(0.75) * Normal(random));
            for (var site = 0; site < 4; site++)
            {
                var logit = Math.Log(rate / (1 - rate)) + own[site] + kind switch
                {
                    "outbreaks" => 0.5 * Normal(random),
                    "wander" => level,
                    "rise" => week * Math.Log(1.05),
                    "peak" => (Math.Min(week, 18) * Math.Log(1.10)) + (Math.Max(0, week - 18) * Math.Log(0.85)),
                    _ => 0,
                };
                var chance = 1 / (1 + Math.Exp(-logit));
                for (var day = 0; day < 5; day++)
                {
                    var (trials, events) = (random.Whole(30, 70), 0L);
                    for (var run = 0; run < trials; run++) events += random.Next() < chance ? 1 : 0;
                    var date = ProgramDraw.FirstDay.AddDays((7 * week) + day);
                    void Add(Outcome outcome, long runs)
                    {
                        if (runs > 0) cells.Add(new ScreenCell("Site " + (char)('A' + site), "L", date, Specimen.NotRecorded, CollectedBy.NotRecorded, outcome, outcome == Outcome.Positive ? FollowUp.Unverified : FollowUp.None, runs));
                    }

                    Add(Outcome.Positive, events);
                    Add(Outcome.Negative, trials - events);
                }
            }
        }

        return Tally.FromCells(new TallyCells
        {
            Screens = [.. cells],
            Operators = [.. cells.Select(cell => new OperatorCell(Levels.None, cell.Site, cell.Day, cell.Outcome, cell.FollowUp, cell.Runs))],
            Notable = [.. cells.Where(cell => cell.Outcome == Outcome.Positive).SelectMany(cell => Enumerable.Repeat(
                new NotableRun(cell.Day.ToDateTime(default), true, cell.Site, cell.Lot, Levels.None, Levels.None, Specimen.NotRecorded, CollectedBy.NotRecorded, cell.Outcome, cell.FollowUp, null, null), (int)cell.Runs))],
            Persons = [Sum(PersonMeasure.Positivity, cells, events: true), Sum(PersonMeasure.InvalidRuns, cells, events: false), Sum(PersonMeasure.Refuted, cells, events: false)],
            Participation = [new ParticipationCell(1, cells.Sum(cell => cell.Runs))],
        });
    }

    // Every run is another person's.
    private static PersonCell Sum(PersonMeasure measure, List<ScreenCell> cells, bool events)
    {
        var (n, x) = (cells.Sum(cell => cell.Runs), events ? cells.Where(cell => cell.Outcome == Outcome.Positive).Sum(cell => cell.Runs) : 0);
        return new PersonCell(PersonScope.Program, "", null, measure, n, x, n, x, n, x, x);
    }

    private static double Normal(RandomNumbers random) => Math.Sqrt(-2 * Math.Log(1 - random.Next())) * Math.Cos(2 * Math.PI * random.Next());
}
