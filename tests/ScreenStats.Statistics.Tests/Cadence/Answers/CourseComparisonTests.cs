using CsCheck;
using ScreenStats.Statistics.Cadence.Answers;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Intervals;
using ScreenStats.Statistics.Cadence.Spread;

namespace ScreenStats.Statistics.Tests.Cadence.Answers;

public sealed class CourseComparisonTests
{
    private static readonly WindowModel Windows = new(new Interval(3, 10), new Interval(2, 8));

    [Fact]
    public void Windows_and_regular_screens_give_the_closed_form() => Gen.Select(Gen.Double[0, 5], Gen.Double[0.5, 12], Gen.Double[0, 5], Gen.Double[0.5, 12], Gen.Double[0.25, 30], Gen.Double[0, 1], Gen.Double[0, 4]).Sample(
        (from, length, start, spell, every, sensitivity, delay) =>
        {
            var (detectable, infectious) = (new Interval(from, from + length), new Interval(start, start + spell));
            var closed = CadenceComparison.Of(
                new CadenceQuestion
                {
                    DetectableFrom = detectable.Lower, DetectableTo = detectable.Upper, Infectious = infectious, DelayDays = delay,
                    Sensitivity = sensitivity, Specificity = 0.998, Incidence = 0.0005, People = 400,
                },
                [every])[0];
            var course = CourseComparison.Of(
                new CourseQuestion
                {
                    Model = new WindowModel(detectable, infectious), Rules = new ScreeningRules { DelayDays = delay },
                    Sensitivity = sensitivity, Specificity = 0.998, Incidence = 0.0005, People = 400,
                },
                [ScreeningSchedule.Every(every)])[0].Figures;
            foreach (var (one, other) in Pairs(closed, course)) other.Value!.Value.Should().BeApproximately(one.Value!.Value, 1e-9 * Math.Max(1, Math.Abs(one.Value.Value)));
            course.EveryDays.Should().BeApproximately(every, 1e-12 * every);
            course.ScreensPerPersonYear.Should().BeApproximately(closed.ScreensPerPersonYear, 1e-9 * closed.ScreensPerPersonYear);
        }, iter: 300);

    [Fact]
    public void What_is_not_known_leaves_its_figures_undefined_with_the_reason()
    {
        var answer = CourseComparison.Of(
            new CourseQuestion { Model = new WindowModel(new Interval(3, 10), null), Spread = new SpreadQuestion { Reproduction = 2 } }, [ScreeningSchedule.Every(7)])[0];

        answer.Outcome.Should().BeNull();
        answer.Figures.DetectionProbability.Reason.Should().Be(UndefinedReason.SensitivityUnknown);
        answer.Figures.FractionRemoved.Reason.Should().Be(UndefinedReason.InfectiousTimeUnknown);
        answer.Figures.InfectiousDaysRemoved.Reason.Should().Be(UndefinedReason.InfectiousTimeUnknown);
        answer.Figures.FalsePositivesPerPersonYear.Reason.Should().Be(UndefinedReason.SpecificityUnknown);
        answer.Figures.TruePositivesPerYear.Reason.Should().Be(UndefinedReason.PeopleUnknown);
        answer.Figures.PositivePredictiveValue.Reason.Should().Be(UndefinedReason.SensitivityUnknown);
        answer.Spread!.Reproduction.Reason.Should().Be(UndefinedReason.InfectiousTimeUnknown);
    }

    [Fact]
    public void Taking_part_in_half_of_the_screens_halves_their_number_and_not_what_they_find()
    {
        var question = new CourseQuestion { Model = Windows, Sensitivity = 0.6, Specificity = 0.999 };
        var all = CourseComparison.Of(question, [ScreeningSchedule.Every(2)])[0];
        var half = CourseComparison.Of(question, [ScreeningSchedule.Every(2) with { Participation = 0.5 }])[0];

        half.Figures.ScreensPerPersonYear.Should().BeApproximately(all.Figures.ScreensPerPersonYear / 2, 1e-9);
        half.Figures.EveryDays.Should().Be(all.Figures.EveryDays);
        half.Figures.DetectionProbability.Value.Should().BeInRange(all.Figures.DetectionProbability.Value!.Value / 2, all.Figures.DetectionProbability.Value.Value);
    }

    [Fact]
    public void Spread_falls_with_what_is_removed_beyond_symptoms()
    {
        var symptoms = new SymptomOnset(0.5, 4, 0.3, 1);
        var question = new CourseQuestion
        {
            Model = new WindowModel(new Interval(2, 12), new Interval(3, 9), symptoms), Sensitivity = 0.7, Incidence = 0.0005, People = 200,
            Spread = new SpreadQuestion { Reproduction = 1.6, Dispersion = 0.3, BroughtIn = 0.8 },
        };
        var none = CourseComparison.WithoutScreening(question)!;
        var answers = CourseComparison.Of(question, [ScreeningSchedule.Every(14), ScreeningSchedule.Every(7), ScreeningSchedule.Every(1)]);

        none.Reproduction.Value.Should().BeApproximately(1.6, 1e-12);
        none.Outbreak.Value.Should().BeApproximately(SiteOutbreak.AtLeast(new OffspringProcess(1.6, 0.3), 200, 5), 1e-12);
        foreach (var one in answers)
        {
            var outcome = one.Outcome!;
            var expected = 1.6 * (1 - outcome.FractionRemoved.Value!.Value) / (1 - outcome.FractionRemovedBySymptoms.Value!.Value);
            one.Spread!.Reproduction.Value.Should().BeApproximately(expected, 1e-12);
        }

        Falls(answers.Prepend(null).Select(one => (one?.Spread ?? none).Outbreak));
        Falls(answers.Prepend(null).Select(one => (one?.Spread ?? none).Infections));
        Falls(answers.Prepend(null).Select(one => (one?.Spread ?? none).InfectionsInside));
        none.Extinction.Value.Should().BeLessThan(1);
        answers[^1].Spread!.Extinction.Value.Should().Be(1);
    }

    [Fact]
    public void The_share_brought_in_gives_back_the_reproduction_that_made_it()
    {
        var question = new CourseQuestion { Model = new WindowModel(new Interval(2, 12), new Interval(3, 9), new SymptomOnset(0.4, 4, 0.2, 0.9)), Sensitivity = 0.6 };
        var now = ScreeningSchedule.Every(3.5);
        var without = CourseComparison.ReproductionWithout(question, now, 0.7).Value!.Value;
        var answer = CourseComparison.Of(question with { Spread = new SpreadQuestion { Reproduction = without } }, [now])[0];
        answer.Spread!.Reproduction.Value.Should().BeApproximately(0.3, 1e-12);
    }

    [Fact]
    public void A_course_by_day_needs_no_sensitivity()
    {
        var model = new ByDayModel(InfectionCourse.ByDay([new(3, 0.8, 0), new(10, 0.8, 0), new(10, 0, 0)]));
        var answer = CourseComparison.Of(new CourseQuestion { Model = model }, [ScreeningSchedule.Every(7)])[0];
        answer.Figures.DetectionProbability.Value.Should().BeApproximately(0.8, 1e-9);
        answer.Figures.FractionRemoved.Reason.Should().Be(UndefinedReason.NoInfectiousTime);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(1.0)]
    public void Extremes_give_figures_or_reasons_and_never_a_nan(double sensitivity)
    {
        foreach (var specificity in (double?[])[0, 1, 0.998, null])
        {
            foreach (var incidence in (double?[])[0, 1, 0.0005, null])
            {
                foreach (var people in (long?[])[1, 4, 1_000_000, null])
                {
                    foreach (var delay in (double[])[0, 3, 100])
                    {
                        foreach (var reproduction in (double[])[0, 0.5, 1, 30])
                        {
                            var question = new CourseQuestion
                            {
                                Model = Windows with { }, Rules = new ScreeningRules { DelayDays = delay, MissCorrelation = delay == 3 ? 0.999 : 0 },
                                Sensitivity = sensitivity, Specificity = specificity, Incidence = incidence, People = people,
                                Spread = new SpreadQuestion { Reproduction = reproduction, Dispersion = reproduction == 1 ? 0.1 : null, BroughtIn = delay == 3 ? 0 : 1 },
                            };
                            var without = CourseComparison.WithoutScreening(question)!;
                            foreach (var answer in CourseComparison.Of(question, [ScreeningSchedule.Every(1), ScreeningSchedule.Every(365), ScreeningSchedule.OnWeekdays([DayOfWeek.Monday]) with { Participation = 0 }]))
                                Check([.. Figures(answer.Figures), .. Figures(answer.Spread!)]);
                            Check(Figures(without));
                        }
                    }
                }
            }
        }

        static void Check(IEnumerable<Estimate> figures) => figures.Should().OnlyContain(one => one.Value == null ? one.Reason != null : double.IsFinite(one.Value.Value) && one.Value.Value >= 0);
    }

    [Fact]
    public void One_person_alone_infects_nobody_and_a_delay_past_the_end_removes_nothing()
    {
        var question = new CourseQuestion
        {
            Model = Windows, Rules = new ScreeningRules { DelayDays = 60 }, Sensitivity = 1, Incidence = 0.001, People = 1, Spread = new SpreadQuestion { Reproduction = 5 },
        };
        var answer = CourseComparison.Of(question, [ScreeningSchedule.Every(1)])[0];
        answer.Figures.FractionRemoved.Value.Should().Be(0);
        answer.Figures.DetectionProbability.Value.Should().BeApproximately(1, 1e-12);
        answer.Spread!.Outbreak.Value.Should().Be(0);
        answer.Spread.InfectionsInside.Value.Should().Be(0);
        answer.Spread.Infections.Value.Should().BeApproximately(1 - Math.Exp(-0.001 * 91), 1e-9);
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused()
    {
        var question = new CourseQuestion { Model = Windows };
        FluentActions.Invoking(() => CourseComparison.Of(question, [ScreeningSchedule.Never])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => CourseComparison.Of(question with { Sensitivity = 2 }, [])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => CourseComparison.Of(question with { People = 0 }, [])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => CourseComparison.Of(question with { Spread = new SpreadQuestion { Reproduction = -1 } }, [])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => CourseComparison.Of(question with { Spread = new SpreadQuestion { Reproduction = 1, Dispersion = 0 } }, [])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => CourseComparison.Of(question with { Spread = new SpreadQuestion { Reproduction = 1, Days = 0 } }, [])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new WindowModel(new Interval(0, 5000), null)).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static void Falls(IEnumerable<Estimate> figures) => figures.Select(one => one.Value!.Value).Should().BeInDescendingOrder().And.OnlyHaveUniqueItems();

    private static IEnumerable<(Estimate, Estimate)> Pairs(CadenceOption one, CadenceOption other) => Figures(one).Zip(Figures(other));

    private static IEnumerable<Estimate> Figures(CadenceOption one) =>
    [
        one.DetectionProbability, one.InfectiousDaysRemoved, one.FractionRemoved, one.FalsePositivesPerPersonYear, one.AnyFalsePositivePerYear,
        one.TruePositivesPerYear, one.FalsePositivesPerYear, one.PositivePredictiveValue,
    ];

    private static IEnumerable<Estimate> Figures(SpreadAnswer one) => [one.Reproduction, one.Outbreak, one.Extinction, one.Infections, one.InfectionsInside];
}
