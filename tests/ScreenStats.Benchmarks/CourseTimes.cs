using System.Diagnostics;
using System.Globalization;
using ScreenStats.Statistics.Cadence.Answers;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Courses.ViralLoads;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Benchmarks;

/// <summary>
/// 100,000 individual courses x 7 schedules x 200 phases against a bare loop over as many exponentials, in turn, in one run and on as many threads;
/// the same integrated over the phase; and one yield by quadrature, in microseconds.
/// </summary>
internal static class CourseTimes
{
    private const int People = 100_000;
    private const int Phases = 200;
    private const int Rounds = 5;

    private static readonly ScreeningSchedule[] Options =
    [
        ScreeningSchedule.Every(1), ScreeningSchedule.Every(2), ScreeningSchedule.Every(3), ScreeningSchedule.Every(3.5), ScreeningSchedule.Every(7),
        ScreeningSchedule.Every(14), ScreeningSchedule.Every(28),
    ];

    private static readonly ViralLoadCourses Courses = ViralLoadExample.Respiratory(detectionLimit: 5);

    public static int Run()
    {
        var rules = new ScreeningRules { DelayDays = 0.5 };
        var (floors, ratios) = (new List<double>(), new Dictionary<string, List<double>>());
        for (var round = 0; round <= Rounds; round++)
        {
            var floor = Seconds(() => Exponentials((long)People * Options.Length * Phases));
            if (round > 0) floors.Add(floor);
            Time("200 phases", Courses, rules, Phases);
            Time("200 phases, sensitivity 0.8, misses repeated", Courses with { SensitivityAboveLimit = 0.8 }, rules with { MissCorrelation = 0.3 }, Phases);
            Time("exact phase", Courses, rules, null);

            void Time(string name, ViralLoadCourses courses, ScreeningRules by, int? phases)
            {
                var taken = Seconds(() => ViralLoadYield.Simulate(courses, Options, by, new ViralLoadSettings { People = People, Phases = phases }));
                if (round == 0) return;
                if (!ratios.TryGetValue(name, out var list)) ratios[name] = list = [];
                list.Add(taken / floor);
            }
        }

        Print($"{People} courses x {Options.Length} schedules; bare loop of {(long)People * Options.Length * Phases} exponentials {Median(floors):0.00} s on {Environment.ProcessorCount} threads");
        foreach (var (name, list) in ratios) Print($"{name}: {Median(list):0.00} times the loop");
        Quadrature();
        return 0;
    }

    /// <summary>All options once, 2,000 times, as the evaluation calls it: microseconds of a call on one thread.</summary>
    private static void Quadrature()
    {
        var windows = InfectionCourse.Windows(new InfectionWindows(2, 12, 3, 10), 0.7);
        var symptoms = new SymptomOnset(0.6, 5, 0.4, 0.8);
        var days = InfectionCourse.ByDay([.. Enumerable.Range(0, 31).Select(day => new CourseDay(day, day is 0 or 30 ? 0 : 0.8 * Math.Exp(-Math.Pow((day - 6) / 6.0, 2)), day < 2 ? 0 : Math.Exp(-Math.Pow((day - 5) / 3.0, 2))))]);
        var observed = ScreeningSchedule.Observed([.. Enumerable.Range(1, 20).Select(gap => new ObservedGap(gap, 100 / gap))]);
        (string, InfectionCourse, ScreeningRules, ScreeningSchedule[])[] cases =
        [
            ("windows", windows, new ScreeningRules { DelayDays = 0.5 }, Options),
            ("windows, symptoms", windows with { Symptoms = symptoms }, new ScreeningRules { DelayDays = 0.5 }, Options),
            ("windows, symptoms, misses repeated", windows with { Symptoms = symptoms }, new ScreeningRules { DelayDays = 0.5, MissCorrelation = 0.4 }, Options),
            ("by day", days, new ScreeningRules { DelayDays = 0.5 }, Options),
            ("by day, misses repeated", days, new ScreeningRules { DelayDays = 0.5, MissCorrelation = 0.4 }, Options),
            ("by day, symptoms", days with { Symptoms = symptoms }, new ScreeningRules { DelayDays = 0.5 }, Options),
            ("by day, symptoms, misses repeated", days with { Symptoms = symptoms }, new ScreeningRules { DelayDays = 0.5, MissCorrelation = 0.4 }, Options),
            ("windows, symptoms, misses repeated, observed gaps", windows with { Symptoms = symptoms }, new ScreeningRules { DelayDays = 0.5, MissCorrelation = 0.4 }, [observed]),
        ];
        foreach (var (name, course, rules, schedules) in cases)
        {
            var calls = 2000 * schedules.Length;
            void All()
            {
                for (var draw = 0; draw < 2000; draw++)
                {
                    foreach (var schedule in schedules) CourseYield.Of(course, schedule, rules);
                }
            }

            Seconds(All);
            Print($"quadrature, {name}: {Seconds(All) / calls * 1e6:0.0} microseconds a call");
        }
    }

    /// <summary>The floor: exponentials of numbers that a compiler cannot foresee, on all threads.</summary>
    private static void Exponentials(long count)
    {
        var sums = new double[Environment.ProcessorCount];
        Parallel.For(0, sums.Length, thread =>
        {
            var (sum, x) = (0.0, thread / 7.0);
            for (var i = thread * count / sums.Length; i < (thread + 1) * count / sums.Length; i++)
            {
                sum += Math.Exp(-x);
                x += 1e-7;
            }

            sums[thread] = sum;
        });
        if (sums.Sum() < 0) Print($"never");
    }

    private static double Seconds(Action work)
    {
        GC.Collect();
        var clock = Stopwatch.StartNew();
        work();
        return clock.Elapsed.TotalSeconds;
    }

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);

    private static void Print(FormattableString line) => Console.Out.WriteLine(line.ToString(CultureInfo.InvariantCulture));
}
