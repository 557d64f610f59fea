using System.Collections.Concurrent;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Courses.ViralLoads;

namespace ScreenStats.Statistics.Tests.Cadence.Courses;

public sealed class ViralLoadYieldTests
{
    /// <summary>The simulation error of the table itself.</summary>
    private const double ErrorOfTheTable = 0.0013;

    /// <summary>The published model's parameters (from memory), as the reference file states them.</summary>
    internal static readonly ViralLoadCourses Published = new()
    {
        StartDay = new UniformRange(2.5, 3.5),
        StartLevel = 3,
        ShortestGrowthDays = 0.5,
        GrowthShape = 1.5,
        GrowthScaleDays = 1,
        LongestGrowthDays = 3,
        PeakLevel = new UniformRange(7, 11),
        ClearanceDays = new UniformRange(4, 9),
        EndLevel = 6,
        SymptomShare = 0.35,
        SymptomsAfterPeakDays = new UniformRange(0, 3),
        SymptomIsolationShare = 1,
        DetectionLimit = 5,
        Infectiousness = InfectiousnessFunction.LogAboveThreshold,
        InfectiousLevel = 6,
    };

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

    private static string? Away(ReferenceRow row, string column, double value, double error)
    {
        if (!row.Has(column)) return null;
        var printed = double.Parse(row.Tolerance.Split(':')[1], System.Globalization.CultureInfo.InvariantCulture);
        var away = Math.Abs(value - row.Number(column));
        var allowed = (4 * error) + ErrorOfTheTable + printed;
        return away <= allowed ? null : FormattableString.Invariant($"{row.Id}: {column} should be {row.Number(column)} within {allowed:0.00000}, is {value:0.00000} (error {error:0.00000})");
    }
}
