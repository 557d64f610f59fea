using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Cadence.Answers;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Intervals;
using ScreenStats.Statistics.Tests.Cadence.Courses;

namespace ScreenStats.Statistics.Tests.Cadence.Answers;

public sealed class UncertainCadenceTests
{
    private static readonly CadenceUncertainty Known = new()
    {
        Sensitivity = AccuracyStatement.FromCounts(61, 97), Specificity = AccuracyStatement.FromInterval(0.998, 0.996, 0.999), Incidence = AccuracyStatement.FromCounts(12, 24_000),
    };

    private static readonly CadenceQuestion Asked = new() { DetectableFrom = 3, DetectableTo = 10, Infectious = new Interval(2, 8), DelayDays = 1, People = 400 };

    private static readonly CourseQuestion Course = new() { Model = new WindowModel(new Interval(3, 10), new Interval(2, 8)), Rules = new ScreeningRules { DelayDays = 1 }, People = 400 };

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("cadence-limits"), row =>
    {
        var known = new CadenceUncertainty
        {
            Sensitivity = AccuracyStatement.FromCounts(row.Count("sensitivity_x"), row.Count("sensitivity_n")),
            Specificity = AccuracyStatement.FromCounts(row.Count("specificity_x"), row.Count("specificity_n")),
            Incidence = AccuracyStatement.FromCounts(row.Count("incidence_x"), row.Count("incidence_n")),
            Draws = 20_000,
        };
        var question = new CadenceQuestion
        {
            DetectableFrom = row.Number("detectable_from"), DetectableTo = row.Number("detectable_to"), DelayDays = row.Number("delay"),
            Infectious = new Interval(row.Number("infectious_from"), row.Number("infectious_to")), People = row.Count("people"),
        };
        var option = UncertainCadence.Of(question, known, [row.Number("every")])[0];
        return
        [
            row.Mismatch("detected_lower", option.DetectionProbability.Lower), row.Mismatch("detected_upper", option.DetectionProbability.Upper),
            row.Mismatch("removed_lower", option.InfectiousDaysRemoved.Lower), row.Mismatch("removed_upper", option.InfectiousDaysRemoved.Upper),
            row.Mismatch("false_each_lower", option.FalsePositivesPerPersonYear.Lower), row.Mismatch("false_each_upper", option.FalsePositivesPerPersonYear.Upper),
            row.Mismatch("true_lower", option.TruePositivesPerYear.Lower), row.Mismatch("true_upper", option.TruePositivesPerYear.Upper),
            row.Mismatch("false_lower", option.FalsePositivesPerYear.Lower), row.Mismatch("false_upper", option.FalsePositivesPerYear.Upper),
            row.Mismatch("predictive_lower", option.PositivePredictiveValue.Lower), row.Mismatch("predictive_upper", option.PositivePredictiveValue.Upper),
        ];
    });

    [Fact]
    public void The_course_and_the_closed_form_give_the_same_figures_and_limits()
    {
        double[] days = [2, 3.5, 7, 30];
        var closed = UncertainCadence.Of(Asked, Known, days);
        var course = UncertainCadence.Of(Course, Known, [.. days.Select(ScreeningSchedule.Every)]);

        for (var place = 0; place < days.Length; place++)
        {
            foreach (var (one, other) in Figures(closed[place]).Zip(Figures(course[place].Figures)))
            {
                other.Value!.Value.Should().BeApproximately(one.Value!.Value, 1e-9 * Math.Max(1, one.Value.Value));
                other.Lower!.Value.Should().BeApproximately(one.Lower!.Value, 1e-6 * Math.Max(1, one.Lower.Value), "outcomes between sensitivities are interpolated");
                other.Upper!.Value.Should().BeApproximately(one.Upper!.Value, 1e-6 * Math.Max(1, one.Upper.Value));
                one.Lower.Value.Should().BeLessThan(one.Value.Value);
                one.Upper.Value.Should().BeGreaterThan(one.Value.Value);
                one.Method.Should().Be(UncertainFigures.Method);
            }
        }
    }

    [Fact]
    public void Only_figures_that_rest_on_an_uncertain_share_have_limits()
    {
        var option = UncertainCadence.Of(Asked, Known with { Sensitivity = AccuracyStatement.Exact(0.6), Incidence = AccuracyStatement.Exact(0.0005) }, [7])[0];

        option.DetectionProbability.Interval.Should().BeNull();
        option.FractionRemoved.Interval.Should().BeNull();
        option.TruePositivesPerYear.Interval.Should().BeNull();
        option.FalsePositivesPerYear.Interval.Should().NotBeNull();
        option.PositivePredictiveValue.Interval.Should().NotBeNull();
        UncertainCadence.Of(Asked, new CadenceUncertainty { Sensitivity = AccuracyStatement.Exact(0.6) }, [7])[0].DetectionProbability.Interval.Should().BeNull();
    }

    [Fact]
    public void Repeated_misses_and_spread_carry_limits_too_and_the_same_seed_gives_the_same()
    {
        var question = Course with { Rules = new ScreeningRules { MissCorrelation = 0.4 }, Spread = new SpreadQuestion { Reproduction = 1.5, Dispersion = 0.4 } };
        var one = UncertainCadence.Of(question, Known, [ScreeningSchedule.Every(3.5), ScreeningSchedule.OnWeekdays([DayOfWeek.Monday, DayOfWeek.Thursday])]);
        var again = UncertainCadence.Of(question, Known, [ScreeningSchedule.Every(3.5)])[0];

        one[0].Spread!.Reproduction.Should().Be(again.Spread!.Reproduction);
        foreach (var answer in one)
        {
            foreach (var figure in (Estimate[])[answer.Spread!.Reproduction, answer.Spread.Outbreak, answer.Spread.Infections, answer.Figures.FractionRemoved])
            {
                figure.Lower!.Value.Should().BeLessThan(figure.Value!.Value);
                figure.Upper!.Value.Should().BeGreaterThan(figure.Value.Value);
            }
        }

        var without = UncertainCadence.WithoutScreening(question, Known)!;
        without.Reproduction.Interval.Should().BeNull("nobody is screened, so no accuracy matters");
        without.Infections.Interval.Should().NotBeNull("the incidence does");
        UncertainCadence.WithoutScreening(Course, Known).Should().BeNull();
    }

    // Larremore et al. 2021 (parameters from memory), computed in the reference file: every 3 days, limit 1e5, same day: 0.806 (screening only 0.796).
    [Fact]
    public void Simulated_viral_loads_give_the_reference_and_limits()
    {
        var model = new ViralLoadModel(ViralLoadYieldTests.Published with { DetectionLimit = 5 });
        var answer = UncertainCadence.Of(new CourseQuestion { Model = model, People = 100 }, Known with { Sensitivity = null, Draws = 200 }, [ScreeningSchedule.Every(3)])[0];
        var error = model.Simulated(answer.Schedule, new ScreeningRules(), null).RemovedError!.Value;
        answer.Figures.FractionRemoved.Value!.Value.Should().BeApproximately(0.806, (4 * error) + 0.0005 + (4 * 0.0013));
        answer.Figures.FractionRemoved.Interval.Should().BeNull("no sensitivity is uncertain");
        answer.Figures.PositivePredictiveValue.Interval.Should().NotBeNull();

        var uncertain = UncertainCadence.Of(new CourseQuestion { Model = model }, Known with { Draws = 200 }, [ScreeningSchedule.Every(3)])[0].Figures.FractionRemoved;
        uncertain.Value!.Value.Should().BeLessThan(answer.Figures.FractionRemoved.Value.Value);
        uncertain.Lower!.Value.Should().BeLessThan(uncertain.Value.Value);
        uncertain.Upper!.Value.Should().BeGreaterThan(uncertain.Value.Value);
        model.InfectiousnessByDay().Sum().Should().BePositive();
    }

    private static IEnumerable<Estimate> Figures(CadenceOption one) =>
    [
        one.DetectionProbability, one.InfectiousDaysRemoved, one.FractionRemoved, one.FalsePositivesPerPersonYear, one.AnyFalsePositivePerYear,
        one.TruePositivesPerYear, one.FalsePositivesPerYear, one.PositivePredictiveValue,
    ];
}
