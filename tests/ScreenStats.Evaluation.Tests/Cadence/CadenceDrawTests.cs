using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Rows;

namespace ScreenStats.Evaluation.Tests.Cadence;

public class CadenceDrawTests
{
    [Fact]
    public void Gamma_beta_and_normal_draws_have_their_means_and_variances()
    {
        var stream = new ParameterStream(7, "test");
        const int Count = 200_000;
        foreach (var (mean, variance, draw) in new (double, double, Func<double>)[]
        {
            (0, 1, stream.Normal), (0.5, 1.0 / 12, stream.Uniform), (0.4, 0.4, () => stream.Gamma(0.4)), (7.5, 7.5, () => stream.Gamma(7.5)),
            (2.0 / 7, 2 * 5 / (49.0 * 8), () => stream.Beta(2, 5)),
        })
        {
            var values = Enumerable.Range(0, Count).Select(_ => draw()).ToArray();
            var (m, v) = (values.Average(), values.Sum(value => (value - mean) * (value - mean)) / Count);
            var error = Math.Sqrt(variance / Count);
            m.Should().BeApproximately(mean, 4 * error);
            var fourth = values.Sum(value => Math.Pow(value - mean, 4)) / Count;
            v.Should().BeApproximately(variance, 4 * Math.Sqrt((fourth - (variance * variance)) / Count));
        }
    }

    [Fact]
    public void A_range_leaves_two_and_a_half_percent_beyond_each_end_and_half_on_each_side_of_the_value()
    {
        foreach (var figure in new[] { Uncertain.Share(0.6, 0.2, 0.7), Uncertain.Share(0.9, 0.5, 1), Uncertain.Positive(4, 3.5, 9), Uncertain.Positive(0.2, 0, 0.5), Uncertain.Share(0, 0, 0.3) })
        {
            var stream = new ParameterStream(3, "range");
            var values = Enumerable.Range(0, 100_000).Select(_ => figure.Draw!(stream)).ToArray();
            // Four standard errors of a share of 2.5 % of 100,000: 0.002.
            if (figure.Lower > 0) values.Count(value => value < figure.Lower).Should().BeCloseTo(2_500, 200);
            if (figure.Upper < 1 || figure.Upper > 1) values.Count(value => value > figure.Upper).Should().BeCloseTo(2_500, 200);
            if (figure.Centre > 0) values.Count(value => value < figure.Centre).Should().BeCloseTo(50_000, 640);
            values.Min().Should().BeGreaterThanOrEqualTo(0);
        }

        Uncertain.Share(0.5, null, null).Draw.Should().BeNull();
        Uncertain.Positive(2, 2, 2).Draw.Should().BeNull();
    }

    [Fact]
    public void One_more_assumption_does_not_move_the_draws_of_the_others()
    {
        var few = new Dictionary<Parameter, Uncertain> { [Parameter.Sensitivity] = Uncertain.Share(0.6, 0.4, 0.8) };
        var more = new Dictionary<Parameter, Uncertain>(few) { [Parameter.Delay] = Uncertain.Positive(1, 0.5, 2) };
        var (one, two) = (new ParameterDraws(few, 50, 9, 0.95), new ParameterDraws(more, 50, 9, 0.95));
        for (var index = 0; index < 50; index++) two.At(index)[Parameter.Sensitivity].Should().Be(one.At(index)[Parameter.Sensitivity]);
        new ParameterDraws(few, 50, 10, 0.95).At(0)[Parameter.Sensitivity].Should().NotBe(one.At(0)[Parameter.Sensitivity]);
        one.At(0)[Parameter.Delay].Should().BeNull();
    }

    [Fact]
    public void The_same_seed_gives_the_same_figures_and_another_one_other_limits()
    {
        var tally = CadenceSketch.Program();
        var (one, two) = (tally.Cadence(CadenceSketch.Ranged), tally.Cadence(CadenceSketch.Ranged));
        two.Outcomes.Should().Equal(one.Outcomes);
        two.Steps.Should().Equal(one.Steps);
        two.Swings.Should().Equal(one.Swings);
        two.Choices.Should().Equal(one.Choices);
        var other = tally.Cadence(CadenceSketch.Ranged with { Seed = 2 });
        other.Outcome("weekly", CadenceMeasure.InfectiousDaysRemoved)!.Figure.Estimate.Should().Be(one.Value("weekly", CadenceMeasure.InfectiousDaysRemoved));
        other.Outcome("weekly", CadenceMeasure.InfectiousDaysRemoved)!.Figure.Lower.Should().NotBe(one.Outcome("weekly", CadenceMeasure.InfectiousDaysRemoved)!.Figure.Lower);
        one.Seed.Should().Be(1);
        one.Draws.Should().Be(2000);
    }

    [Fact]
    public void Differences_are_paired_so_that_a_step_is_surer_than_its_two_options()
    {
        var findings = CadenceSketch.Program().Cadence(CadenceSketch.Ranged);
        var step = findings.Steps.Single(one => one.Leads && one.From == "twice-weekly");
        var (from, to) = (findings.Outcome("twice-weekly", CadenceMeasure.InfectiousDaysRemoved)!.Figure, findings.Outcome("every-second-day", CadenceMeasure.InfectiousDaysRemoved)!.Figure);
        step.Gain.Estimate.Should().BeApproximately(to.Estimate!.Value - from.Estimate!.Value, 1e-9);
        to.Lower.Should().BeLessThan(from.Upper!.Value);
        step.Gain.Lower.Should().BeGreaterThan(0);
        (step.Gain.Upper!.Value - step.Gain.Lower!.Value).Should().BeLessThan((to.Upper!.Value - to.Lower!.Value) / 2);
    }

    [Fact]
    public void A_wider_range_makes_wider_limits_and_a_higher_confidence_too()
    {
        var tally = CadenceSketch.Program();
        double Width(CadenceSettings settings, double confidence = 0.95)
        {
            var figure = tally.Cadence(settings, program => program with { Report = program.Report with { Confidence = confidence } }).Outcome("weekly", CadenceMeasure.InfectiousDaysRemoved)!.Figure;
            return figure.Upper!.Value - figure.Lower!.Value;
        }

        var ranged = Width(CadenceSketch.Ranged);
        Width(CadenceSketch.Ranged with { Incidence = new StatedRange(0.0005, 0.0001, 0.002) }).Should().BeGreaterThan(ranged);
        Width(CadenceSketch.Ranged, 0.99).Should().BeGreaterThan(ranged);
    }
}
