using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Statistics.Monitoring.Charts;
using ScreenStats.Statistics.Monitoring.Scans;
using ScreenStats.Statistics.Proportions;
using ScreenStats.Testing.Programs;

namespace ScreenStats.Evaluation.Tests.Studies;

/// <summary>
/// How often a weekly chart of a program in control shows a point outside its limits, and whether the chance that the scan for bursts gives is one. 40
/// programs in every run, 2,000 by hand, committed in tests/reference/studies/chart-study.csv.
/// </summary>
public sealed class ChartStudyTests(ITestOutputHelper output)
{
    private const int Few = 40;
    private const int All = 2_000;

    private static readonly StudyFile File = new("chart-study.csv", "study,programs,measure,count,of,share,upper_95");

    private static int Programs => StudyFile.IsFull ? All : Few;

    /// <summary>
    /// Weekly unusable runs. "steady": people and weeks are alike; each side of the exact limits has a chance of 0.00135 a point at most. "people": runs of one
    /// person are correlated by 0.1; "weeks": each week has a rate of its own (correlation 0.01), where the widened chart is for.
    /// </summary>
    [Theory]
    [InlineData("steady")]
    [InlineData("people")]
    [InlineData("weeks")]
    public void Points_of_a_chart_in_control_lie_outside_as_rarely_as_it_says(string study)
    {
        var counts = new Dictionary<(int Programs, string Measure), (int Count, int Of)>();
        void Add(int number, string measure, int count, int of)
        {
            foreach (var programs in (int[])[Few, All])
            {
                if (programs == Few ? number >= Few : !StudyFile.IsFull) continue;
                var (before, all) = counts.GetValueOrDefault((programs, measure));
                counts[(programs, measure)] = (before + count, all + of);
            }
        }

        Parallel.For(0, Programs, number =>
        {
            var points = Points(study, number);
            var exact = ProportionChart.Exact(points);
            var three = ProportionChart.ThreeSigma(points);
            var check = Overdispersion.Check(points);
            var widened = OverdispersedChart.Of(points);
            lock (counts)
            {
                Add(number, "points outside exact limits", exact.Signals.Length, points.Length);
                Add(number, "charts with a point outside exact limits", exact.Signals.IsEmpty ? 0 : 1, 1);
                Add(number, "points outside three-sigma limits", three.Signals.Length, points.Length);
                Add(number, "points outside widened limits", widened.Signals.Length, points.Length);
                Add(number, "charts on which the widened limits are demanded", check.Demanded ? 1 : 0, 1);
                Add(number, "points outside the limits in force", (check.Demanded ? widened : exact).Signals.Length, points.Length);
            }
        });
        Settle(study, counts);
        double Share(string measure) => (double)counts[(Programs, measure)].Count / counts[(Programs, measure)].Of;
        if (study == "steady") Share("points outside exact limits").Should().BeLessThan(0.0027 + (3 * Math.Sqrt(0.0027 / counts[(Programs, "points outside exact limits")].Of)));
        if (study == "weeks") Share("points outside the limits in force").Should().BeLessThan(Share("points outside exact limits"));
    }

    /// <summary>
    /// A program without bursts: lots, sites and days as drawn, refuted positives anywhere with the same chance. Then the chance given must be uniform: at most x
    /// with a chance of x (within the grid of 99 replicates).
    /// </summary>
    [Fact]
    public void The_chance_under_no_burst_is_at_most_x_in_a_share_x_of_programs()
    {
        var chances = new double[Programs];
        Parallel.For(0, Programs, number =>
        {
            var plan = new DrawnPlan { Lots = 4, Runs = 3_000, Sites = 3, Weeks = 8, FalsePositiveRate = 0.008, FollowThrough = (0.8, 0.8) };
            var drawn = ProgramDraw.Of(plan, 51_112_500_000UL + (ulong)number);
            var cells = drawn.Cells.Screens.Where(cell => cell.Outcome is Outcome.Negative or Outcome.Positive).GroupBy(cell => (cell.Lot, cell.Site, cell.Day)).Select(cell => new BurstCell(
                int.Parse(cell.Key.Lot.AsSpan(2), CultureInfo.InvariantCulture), int.Parse(cell.Key.Site.AsSpan(5), CultureInfo.InvariantCulture), cell.Key.Day.DayNumber,
                cell.Sum(one => one.Runs), cell.Where(one => one.FollowUp == FollowUp.Refuted).Sum(one => one.Runs))).ToList();
            chances[number] = BurstScan.Strongest(cells, new BurstScanOptions { Replicates = 99, Seed = (ulong)number }).ChanceUnderNoBurst!.Value;
        });
        var counts = new Dictionary<(int Programs, string Measure), (int Count, int Of)>();
        foreach (var programs in StudyFile.IsFull ? [Few, All] : (int[])[Few])
        {
            foreach (var level in (double[])[0.01, 0.05, 0.1, 0.25, 0.5, 0.75])
                counts[(programs, FormattableString.Invariant($"chance under no burst at most {level}"))] = (chances.Take(programs).Count(chance => chance <= level + 1e-9), programs);
        }

        Settle("burst", counts);
        foreach (var ((programs, measure), (count, of)) in counts)
        {
            var level = double.Parse(measure.AsSpan(measure.LastIndexOf(' ') + 1), CultureInfo.InvariantCulture);
            Math.Abs(((double)count / of) - level).Should().BeLessThan(4 * Math.Sqrt(level * (1 - level) / of), $"{measure}, {programs} programs");
        }
    }

    private static Subgroup[] Points(string study, int number)
    {
        if (study == "weeks")
        {
            var random = new RandomNumbers(61_112_500UL + (ulong)number);
            var (rate, size) = (random.Logarithmic(0.01, 0.05), random.Whole(100, 3_000));
            return [.. Enumerable.Range(0, 30).Select(_ =>
            {
                var (own, trials, events) = (random.Beta(rate, 0.01), random.Whole(size / 2, size), 0);
                for (var run = 0; run < trials; run++) events += random.Next() < own ? 1 : 0;
                return new Subgroup(events, trials);
            })];
        }

        var plan = DrawnPlan.Draw(number + 2, new RandomNumbers(71_112_500UL + (ulong)number)) with { PersonCorrelation = study == "people" ? 0.1 : 0 };
        plan = plan with { Runs = Math.Min(plan.Runs, 20_000) };
        return [.. ProgramDraw.Of(plan, 71_112_500_000UL + (ulong)number).Cells.Screens.GroupBy(cell => ReportPeriods.Monday(cell.Day)).OrderBy(week => week.Key)
            .Select(week => new Subgroup(week.Where(cell => cell.Outcome is Outcome.Inconclusive or Outcome.Invalid).Sum(cell => cell.Runs), week.Sum(cell => cell.Runs)))];
    }

    private void Settle(string study, Dictionary<(int Programs, string Measure), (int Count, int Of)> counts)
    {
        var lines = counts.Select(entry => StudyFile.Line(
            study, entry.Key.Programs, entry.Key.Measure, entry.Value.Count, entry.Value.Of, ((double)entry.Value.Count / entry.Value.Of).ToString("0.00000", CultureInfo.InvariantCulture),
            ProportionInterval.ClopperPearson(entry.Value.Count, entry.Value.Of).Upper!.Value.ToString("0.00000", CultureInfo.InvariantCulture))).ToList();
        foreach (var line in lines) output.WriteLine(line);
        File.Settle(study, [.. lines.Concat(StudyFile.IsFull ? [] : File.Lines(study).Where(line => !line.StartsWith(FormattableString.Invariant($"{study},{Few},"), StringComparison.Ordinal))).Order(StringComparer.Ordinal)]);
    }
}
