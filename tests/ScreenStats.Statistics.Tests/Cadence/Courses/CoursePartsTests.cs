using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Courses.Quadrature;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Tests.Cadence.Courses;

public sealed class CoursePartsTests
{
    [Fact]
    public void The_normal_distribution_from_the_table_is_within_a_millionth_of_a_millionth()
    {
        for (var z = -9.0; z <= 9; z += 0.0037)
        {
            // 1/2 + density times z + z^3/3 + z^5/(3 5) + ...: all terms have one sign.
            var (term, sum) = (z, z);
            for (var odd = 3; Math.Abs(term) > 1e-17 * Math.Abs(sum); odd += 2) sum += term *= z * z / odd;
            NormalTable.Below(z).Should().BeApproximately(0.5 + (Math.Exp(-0.5 * z * z) / Math.Sqrt(2 * Math.PI) * sum), 1e-12);
        }

        NormalTable.Below(double.NegativeInfinity).Should().Be(0);
        NormalTable.Below(double.PositiveInfinity).Should().Be(1);
    }

    [Fact]
    public void What_is_passed_on_by_people_without_symptoms_is_the_integral_of_it()
    {
        var spread = AgeCurve.Linear([1, 2, 5, 5, 9, 14], [0, 3, 2, 1, 1, 0], keepAllZero: false, scale: false);
        foreach (var symptoms in (SymptomOnset[])[new(0.7, 5, 0.4, 0.9), new(1, 3, 1.5, 1), new(1, 6, 0.05, 1), new(0.5, 6, 0, 1)])
        {
            var tail = new SpreadTail(spread, symptoms);
            var law = new OnsetLaw(symptoms);
            double Kept(double age) => spread.Value(age) * (1 - (symptoms.Share * symptoms.IsolationShare * law.Share(age)));
            foreach (var from in (double[])[0.2, 1.4, 3.3, 5, 5.5, 8.9, 12, 20])
            {
                double[] marks = [from, .. spread.Ages.Where(age => age > from), .. new[] { 5.0, 5.8, 6, 6.2, 7 }.Where(age => age > from), 20];
                var sum = 0.0;
                foreach (var (low, high) in marks.Order().Zip(marks.Order().Skip(1)))
                {
                    // Simpson's rule, just inside of the jumps at both ends.
                    const int Steps = 4000;
                    var (begin, width) = (low + 1e-12, (high - low - 2e-12) / Steps);
                    for (var step = 0; width > 0 && step <= Steps; step++) sum += Kept(begin + (step * width)) * width / 3 * (step is 0 or Steps ? 1 : step % 2 == 0 ? 2 : 4);
                }

                var score = law.Score(from);
                tail.From(spread.Piece(from), from, score, law.Share(from, score)).Should().BeApproximately(sum, 1e-9);
            }

            tail.From(-1, 0, 0, 0).Should().Be(tail.Total);
        }
    }

    [Fact]
    public void People_of_all_effects_together_have_the_chance_of_the_course() =>
        Gen.Select(Gen.Double[0, 1], Gen.OneOf(Gen.Double[0, 1], Gen.Double[0.9, 0.99999])).Sample((chance, correlation) =>
        {
            var people = new PersonChances(correlation);
            people.Weights.Zip(people.Of(chance)).Sum(pair => pair.First * pair.Second).Should().BeApproximately(chance, 1e-7);
        });

    [Fact]
    public void Two_screens_of_a_person_agree_as_the_correlation_says()
    {
        // At one half, both positive with chance 1/4 + arcsin(correlation)/(2 pi): Sheppard 1899 (from memory).
        foreach (var correlation in (double[])[0, 0.1, 0.5, 0.9, 0.999])
        {
            var people = new PersonChances(correlation);
            people.Weights.Zip(people.Of(0.5)).Sum(pair => pair.First * pair.Second * pair.Second)
                .Should().BeApproximately(0.25 + (Math.Asin(correlation) / (2 * Math.PI)), 1e-7);
        }
    }

    [Fact]
    public void Chances_of_many_misses_are_as_close_as_is_stated()
    {
        foreach (var correlation in (double[])[0.05, 0.3, 0.5, 0.7, 0.9, 0.99])
        {
            var people = new PersonChances(correlation);
            foreach (var chance in (double[])[0.01, 0.1, 0.5, 0.9, 0.99])
            {
                var middle = Math.Sign(chance - 0.5) * (chance == 0.5 ? 0 : Quantile.NormalTail(Math.Min(chance, 1 - chance)));
                foreach (var screens in (int[])[1, 3, 10, 30])
                {
                    var (sum, step) = (0.0, 0.05 * Math.Sqrt(1 - correlation));
                    for (var z = -8.0; z <= 8; z += step)
                    {
                        var missed = 1 - NormalTable.Below((middle + (Math.Sqrt(correlation) * z)) / Math.Sqrt(1 - correlation));
                        sum += Math.Exp(-0.5 * z * z) / Math.Sqrt(2 * Math.PI) * step * Math.Pow(missed, screens);
                    }

                    people.Weights.Zip(people.Of(chance)).Sum(pair => pair.First * Math.Pow(1 - pair.Second, screens)).Should().BeApproximately(sum, correlation <= 0.3 ? 1e-8 : 3e-7);
                }
            }
        }
    }

    [Fact]
    public void Chances_of_a_curve_keep_it_whole_through_jumps_and_ends()
    {
        var course = InfectionCourse.ByDay([new(0, 0, 0), new(2, 0, 0), new(2, 0.4, 0), new(4, 0.8, 2), new(6, 0.2, 4), new(6, 0, 0), new(9, 0, 0)]);
        (course.DetectableFrom, course.DetectableTo, course.InfectiousFrom, course.InfectiousTo).Should().Be((2, 6, 2, 6));
        course.DetectionChance(1.99).Should().Be(0);
        course.DetectionChance(2).Should().Be(0.4);
        course.DetectionChance(3).Should().BeApproximately(0.6, 1e-15);
        course.DetectionChance(6).Should().Be(0);
        course.Infectiousness(5).Should().BeApproximately(0.75, 1e-15);
        course.InfectiousDays.Should().BeApproximately((2 + 6) / 4.0, 1e-15);
        course.NotIsolatedBySymptoms(5).Should().Be(1);
        (course with { Symptoms = new SymptomOnset(0.5, 5, 0.3, 0.4) }).NotIsolatedBySymptoms(5).Should().BeApproximately(0.9, 1e-12);
    }
}
