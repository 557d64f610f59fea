using System.Collections.Concurrent;
using ScreenStats.Statistics.Cadence.Answers;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Courses.ViralLoads;

namespace ScreenStats.Statistics.Tests.Cadence.Courses;

public sealed class ViralLoadYieldTests
{
    /// <summary>The simulation error of the table itself.</summary>
    private const double ErrorOfTheTable = 0.0013;

    /// <summary>The published model's parameters (from memory), as the reference file states them.</summary>
    internal static readonly ViralLoadCourses Published = ViralLoadExample.Respiratory(detectionLimit: 5);

    [Fact]
    public void Every_row_of_the_reference_table_is_met_within_four_standard_errors()
    {
        var rows = ReferenceTable.Load("viral-load-courses").ToList();
        var results = new ConcurrentDictionary<string, SimulatedOutcome>();
        foreach (var same in rows.GroupBy(row => (row.Text("limit"), row.Text("delay"), row.Text("infectiousness"), row.Text("growth_limit"))))
        {
            var first = same.First();
            var courses = Published with
            {
                DetectionLimit = first.Number("limit"),
                Infectiousness = Enum.Parse<InfectiousnessFunction>(first.Text("infectiousness")),
                GrowthLimit = Enum.Parse<GrowthLimit>(first.Text("growth_limit")),
            };
            var settings = new ViralLoadSettings { People = courses.Infectiousness == InfectiousnessFunction.Proportional ? 500_000 : 100_000, Seed = 20261125 };
            var outcomes = ViralLoadYield.Simulate(
                courses, [.. same.Select(row => ScreeningSchedule.Every(row.Number("every")))], new ScreeningRules { DelayDays = first.Number("delay") }, settings);
            foreach (var (row, outcome) in same.Zip(outcomes)) results[row.Id] = outcome;
        }

        Mismatches.ShouldBeNone(rows, row =>
        {
            var result = results[row.Id];
            return
            [
                Away(row, "removed", result.Outcome.FractionRemoved.Value!.Value, result.RemovedError!.Value),
                Away(row, "by_screening", result.Outcome.FractionRemovedByScreening.Value!.Value, result.RemovedByScreeningError!.Value),
                Away(row, "by_symptoms", result.Outcome.FractionRemovedBySymptoms.Value!.Value, result.RemovedBySymptomsError!.Value),
            ];
        });
    }

    [Fact]
    public void Courses_drawn_elsewhere_with_other_figures_agree_within_four_standard_errors_of_both() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("viral-load-yields"), row =>
        {
            var rules = new ScreeningRules { DelayDays = row.Number("delay"), MissCorrelation = row.Number("correlation") };
            var schedule = ScreeningSchedule.Repeating(row.Number("period"), [.. row.Numbers("at")]) with
            {
                Participation = row.Number("participation"),
                NeverTakePart = row.Number("never"),
            };
            var result = ViralLoadYield.Simulate(Courses(row), [schedule], rules, new ViralLoadSettings { People = 20_000, Seed = 7 })[0];
            return
            [
                Apart("detected", result.Outcome.DetectionProbability, result.DetectionError),
                Apart("screens", result.Outcome.ScreensTaken, result.ScreensError),
                Apart("removed", result.Outcome.FractionRemoved.Value!.Value, result.RemovedError!.Value),
                Apart("by_symptoms", result.Outcome.FractionRemovedBySymptoms.Value!.Value, result.RemovedBySymptomsError!.Value),
                Apart("by_screening", result.Outcome.FractionRemovedByScreening.Value!.Value, result.RemovedByScreeningError!.Value),
                Apart("before", result.Outcome.CaughtBeforeInfectious.Value!.Value, result.CaughtBeforeInfectiousError!.Value),
            ];

            string? Apart(string column, double value, double error)
            {
                var grid = double.Parse(row.Tolerance.Split(':')[1], System.Globalization.CultureInfo.InvariantCulture);
                var allowed = (4 * Math.Sqrt((error * error) + Math.Pow(row.Number(column + "_error"), 2))) + grid;
                return Math.Abs(value - row.Number(column)) <= allowed
                    ? null
                    : FormattableString.Invariant($"{row.Id}: {column} should be {row.Number(column)} within {allowed:0.00000}, is {value:0.00000}");
            }
        });

    [Fact]
    public void Stated_phases_give_what_the_whole_phase_gives_for_every_schedule_and_function()
    {
        ScreeningSchedule[] schedules =
        [
            ScreeningSchedule.Every(1), ScreeningSchedule.Every(3.5) with { Participation = 0.8, NeverTakePart = 0.1 }, ScreeningSchedule.Every(30), ScreeningSchedule.Never,
            ScreeningSchedule.OnWeekdays([DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Friday]), ScreeningSchedule.Repeating(9, [0.2, 3, 4.5, 8]),
            ScreeningSchedule.Observed([new(2, 30), new(3, 10), new(7, 5), new(40, 1)]),
        ];
        foreach (var function in Enum.GetValues<InfectiousnessFunction>())
        {
            foreach (var (sensitivity, rho) in ((double, double)[])[(1, 0), (0.7, 0), (0.7, 0.5)])
            {
                var courses = Published with { Infectiousness = function, SensitivityAboveLimit = sensitivity };
                var rules = new ScreeningRules { DelayDays = 0.6, MissCorrelation = rho };
                var whole = ViralLoadYield.Simulate(courses, schedules, rules, new ViralLoadSettings { People = 300, Seed = 3 });
                var phases = ViralLoadYield.Simulate(courses, schedules, rules, new ViralLoadSettings { People = 300, Phases = 1000, Seed = 3 });
                foreach (var (exact, tried, schedule) in whole.Zip(phases, schedules))
                {
                    // Places in observed gaps draw their gaps, 300,000 in all; the others differ by how coarse a thousand places are.
                    var within = schedule.Gaps.IsEmpty ? 1e-3 : 5e-3;
                    tried.Outcome.DetectionProbability.Should().BeApproximately(exact.Outcome.DetectionProbability, within);
                    tried.Outcome.ScreensTaken.Should().BeApproximately(exact.Outcome.ScreensTaken, 3 * within);
                    tried.Outcome.FractionRemoved.Value.Should().BeApproximately(exact.Outcome.FractionRemoved.Value!.Value, within);
                    tried.Outcome.FractionRemovedBySymptoms.Value.Should().BeApproximately(exact.Outcome.FractionRemovedBySymptoms.Value!.Value, 1e-14);
                    tried.Outcome.FractionRemovedByScreening.Value.Should().BeApproximately(exact.Outcome.FractionRemovedByScreening.Value!.Value, within);
                    tried.Outcome.CaughtBeforeInfectious.Value.Should().BeApproximately(exact.Outcome.CaughtBeforeInfectious.Value!.Value, within);
                    tried.Outcome.FoundBeforeOnset.Value.Should().BeApproximately(exact.Outcome.FoundBeforeOnset.Value!.Value, within);
                }
            }
        }
    }

    [Theory]
    [InlineData(null)]
    [InlineData(50)]
    public void The_same_seed_gives_the_same_bytes_on_any_number_of_threads(int? phases)
    {
        ScreeningSchedule[] schedules = [ScreeningSchedule.Every(2), ScreeningSchedule.OnWeekdays([DayOfWeek.Monday, DayOfWeek.Thursday]), ScreeningSchedule.Observed([new(1, 3), new(6, 2)])];
        var courses = Published with { SensitivityAboveLimit = 0.8 };
        var rules = new ScreeningRules { DelayDays = 0.5, MissCorrelation = 0.3 };
        string All(int threads, ulong seed) => string.Join('\n', ViralLoadYield.Simulate(
            courses, schedules, rules, new ViralLoadSettings { People = 5_000, Phases = phases, Seed = seed, Threads = threads }).Select(result => FormattableString.Invariant(
            $"{result.Outcome.FractionRemoved.Value:R} {result.RemovedError:R} {result.Outcome.DetectionProbability:R} {result.Outcome.ScreensTaken:R} {result.Outcome.InfectiousDays:R} {result.Outcome.CaughtBeforeInfectious.Value:R}")));
        var one = All(1, 11);
        All(2, 11).Should().Be(one);
        All(7, 11).Should().Be(one);
        All(2, 12).Should().NotBe(one);
    }

    [Fact]
    public void The_standard_error_is_that_of_many_repetitions()
    {
        var results = Enumerable.Range(0, 200).Select(seed => ViralLoadYield.Simulate(
            Published, [ScreeningSchedule.Every(7)], new ScreeningRules { DelayDays = 1 }, new ViralLoadSettings { People = 1000, Seed = (ulong)(seed + 100) })[0]).ToList();
        var fractions = results.Select(result => result.Outcome.FractionRemoved.Value!.Value).ToList();
        var spread = Math.Sqrt(fractions.Sum(one => Math.Pow(one - fractions.Average(), 2)) / 199);

        // Of 200 repetitions a standard deviation is known to one part in 20; four of these.
        results.Average(result => result.RemovedError!.Value).Should().BeApproximately(spread, 0.2 * spread);
    }

    [Fact]
    public void Extremes_give_right_or_undefined_figures_and_never_what_is_no_number()
    {
        ScreeningSchedule[] schedules =
        [
            ScreeningSchedule.Never, ScreeningSchedule.Every(ScreeningSchedule.ShortestInterval), ScreeningSchedule.Every(1e9), ScreeningSchedule.Every(2) with { Participation = 0 },
            ScreeningSchedule.Every(2) with { NeverTakePart = 1 }, ScreeningSchedule.Observed([new(36_525, 2)]),
        ];
        ViralLoadCourses[] all =
        [
            Published, Published with { SensitivityAboveLimit = 0 }, Published with { DetectionLimit = 20 }, Published with { InfectiousLevel = 20 }, Published with { SymptomShare = 0 },
            Published with { SymptomShare = 1, SymptomsAfterPeakDays = new UniformRange(0, 0) }, Published with { Infectiousness = InfectiousnessFunction.Proportional, PeakLevel = new UniformRange(90, 100) },
            Published with { GrowthShape = 0.01 }, Published with { DetectionLimit = 1e-3, InfectiousLevel = 1e-3 },
        ];
        foreach (var courses in all)
        {
            foreach (var phases in (int?[])[null, 5])
            {
                foreach (var rules in (ScreeningRules[])[new(), new() { DelayDays = 1e9 }, new() { MissCorrelation = 0.999 }])
                {
                    var results = ViralLoadYield.Simulate(courses, schedules, rules, new ViralLoadSettings { People = 40, Phases = phases });
                    foreach (var result in results)
                    {
                        double?[] figures = [result.Outcome.DetectionProbability, result.Outcome.FractionRemoved.Value, result.Outcome.FractionRemovedByScreening.Value, result.Outcome.CaughtBeforeInfectious.Value];
                        figures.Should().OnlyContain(figure => figure == null || (figure >= 0 && figure <= 1));
                        double.IsFinite(result.Outcome.ScreensTaken + result.Outcome.InfectiousDaysRemoved + result.DetectionError + (result.RemovedError ?? 0)).Should().BeTrue();
                        (result.Outcome.FractionRemoved.Reason == UndefinedReason.NoInfectiousTime).Should().Be(courses.InfectiousLevel == 20);
                        (result.Outcome.FoundBeforeOnset.Reason == UndefinedReason.NoSymptoms).Should().Be(courses.SymptomShare == 0);
                    }

                    foreach (var idle in (int[])[0, 3, 4]) results[idle].Outcome.DetectionProbability.Should().Be(0);
                }
            }
        }
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var rules = new ScreeningRules();
        var calls = new (ViralLoadCourses Courses, string Name)[]
        {
            (Published with { StartLevel = 0 }, "StartLevel"), (Published with { EndLevel = double.NaN }, "EndLevel"), (Published with { DetectionLimit = -1 }, "DetectionLimit"), (Published with { InfectiousLevel = 0 }, "InfectiousLevel"),
            (Published with { ShortestGrowthDays = 0 }, "ShortestGrowthDays"), (Published with { LongestGrowthDays = 0.4 }, "LongestGrowthDays"), (Published with { GrowthShape = 0 }, "GrowthShape"), (Published with { GrowthScaleDays = -1 }, "GrowthScaleDays"),
            (Published with { PeakLevel = new UniformRange(6, 9) }, "PeakLevel"), (Published with { ClearanceDays = new UniformRange(0, 3) }, "ClearanceDays"), (Published with { StartDay = new UniformRange(-1, 3) }, "StartDay"),
            (Published with { SymptomsAfterPeakDays = new UniformRange(-1, 3) }, "SymptomsAfterPeakDays"), (Published with { SymptomShare = 2 }, "SymptomShare"), (Published with { SymptomIsolationShare = -1 }, "SymptomIsolationShare"),
            (Published with { SensitivityAboveLimit = 2 }, "SensitivityAboveLimit"), (Published with { GrowthLimit = (GrowthLimit)9 }, "GrowthLimit"), (Published with { Infectiousness = (InfectiousnessFunction)9 }, "Infectiousness"),
        };
        foreach (var (courses, name) in calls)
        {
            FluentActions.Invoking(() => ViralLoadYield.Simulate(courses, [ScreeningSchedule.Every(2)], rules, new ViralLoadSettings()))
                .Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
        }

        foreach (var (settings, name) in ((ViralLoadSettings, string)[])[(new() { People = 1 }, "People"), (new() { Phases = 0 }, "Phases"), (new() { Threads = 0 }, "Threads")])
        {
            FluentActions.Invoking(() => ViralLoadYield.Simulate(Published, [], rules, settings)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
        }

        FluentActions.Invoking(() => new UniformRange(2, 1)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("upper");
        FluentActions.Invoking(() => new UniformRange(double.NaN, 1)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("lower");
    }

    private static ViralLoadCourses Courses(ReferenceRow row)
    {
        UniformRange Range(string column) => new(row.Numbers(column)[0], row.Numbers(column)[1]);
        return new ViralLoadCourses
        {
            StartDay = Range("start"),
            StartLevel = row.Number("start_level"),
            ShortestGrowthDays = row.Number("shortest"),
            GrowthShape = row.Number("shape"),
            GrowthScaleDays = row.Number("scale"),
            LongestGrowthDays = row.Number("longest"),
            GrowthLimit = Enum.Parse<GrowthLimit>(row.Text("growth_limit")),
            PeakLevel = Range("peak"),
            ClearanceDays = Range("clearance"),
            EndLevel = row.Number("end_level"),
            SymptomShare = row.Number("symptom_share"),
            SymptomsAfterPeakDays = Range("symptoms_after"),
            SymptomIsolationShare = row.Number("isolation"),
            DetectionLimit = row.Number("limit"),
            SensitivityAboveLimit = row.Number("sensitivity"),
            Infectiousness = Enum.Parse<InfectiousnessFunction>(row.Text("infectiousness")),
            InfectiousLevel = row.Number("infectious_level"),
        };
    }

    private static string? Away(ReferenceRow row, string column, double value, double error)
    {
        if (!row.Has(column)) return null;
        var printed = double.Parse(row.Tolerance.Split(':')[1], System.Globalization.CultureInfo.InvariantCulture);
        var away = Math.Abs(value - row.Number(column));
        var allowed = (4 * error) + ErrorOfTheTable + printed;
        return away <= allowed ? null : FormattableString.Invariant($"{row.Id}: {column} should be {row.Number(column)} within {allowed:0.00000}, is {value:0.00000} (error {error:0.00000})");
    }
}
