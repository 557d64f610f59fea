using ScreenStats.Statistics.Monitoring.Sequential.SequentialTest;

namespace ScreenStats.Statistics.Tests.Monitoring.Sequential;

public sealed class SequentialRatioTestTests
{
    private static readonly Gen<SequentialPlan> Plans = Gen.Select(Gen.Double[0.002, 0.3], Gen.Double[1.5, 3], Gen.Double[0.01, 0.2], Gen.Double[0.01, 0.2])
        .Select((claimed, ratio, alpha, beta) => new SequentialPlan(claimed, claimed * ratio, alpha, beta));

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("sequential-ratio-tests"), row =>
    {
        var plan = new SequentialPlan(row.Number("claimed"), row.Number("unacceptable"), row.Number("false_rejection"), row.Number("false_acceptance"));
        var rate = row.Text("rate") == "slope" ? plan.Slope : row.Number("rate");
        var exact = SequentialRatioTest.Performance(plan, rate);
        return
        [
            row.Mismatch("h1", plan.AcceptanceIntercept), row.Mismatch("h2", plan.RejectionIntercept), row.Mismatch("slope", plan.Slope),
            row.Mismatch("acceptance", exact.Acceptance), row.Mismatch("rejection", exact.Rejection), row.Mismatch("average_sample_number", exact.AverageSampleNumber),
            row.Mismatch("wald_acceptance", SequentialRatioTest.WaldAcceptance(plan, rate)),
            row.Mismatch("wald_average_sample_number", SequentialRatioTest.WaldAverageSampleNumber(plan, rate)),
        ];
    });

    [Fact]
    public void There_are_at_least_fifty_independent_rows() =>
        ReferenceTable.Load("sequential-ratio-tests").Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50);

    // Montgomery's plan (from memory): first acceptance after 44; the second: 24. Two events are the fewest that reject in both.
    [Theory]
    [InlineData(0.06, 44)]
    [InlineData(0.10, 24)]
    public void The_first_acceptance_and_the_floor_of_rejection_are_the_published_ones(double unacceptable, long first)
    {
        var plan = new SequentialPlan(0.01, unacceptable, 0.05, 0.10);
        plan.FirstAcceptance.Should().Be(first);
        plan.AcceptanceNumber(first).Should().Be(0);
        plan.AcceptanceNumber(first - 1).Should().BeNull();
        plan.RejectionNumber(1).Should().Be(2);
        plan.Decide(0, first).Should().Be(SequentialDecision.Accept);
        plan.Decide(2, 2).Should().Be(SequentialDecision.Reject);
        plan.Decide(1, 2).Should().Be(SequentialDecision.Continue);
    }

    [Fact]
    public void The_chances_add_up_and_the_stated_errors_are_held_together() => Plans.Sample(
        plan =>
        {
            var claimed = SequentialRatioTest.Performance(plan, plan.ClaimedRate);
            var unacceptable = SequentialRatioTest.Performance(plan, plan.UnacceptableRate);
            // Wald 1947, section 3.2: the true errors add up to at most those asked for, and each is at most its own over 1 less the other.
            return Math.Abs(claimed.Acceptance + claimed.Rejection + claimed.Undecided - 1) < 1e-11
                && claimed.Rejection + unacceptable.Acceptance <= plan.FalseRejection + plan.FalseAcceptance + 1e-12
                && claimed.Rejection <= plan.FalseRejection / (1 - plan.FalseAcceptance) + 1e-12
                && unacceptable.Acceptance <= plan.FalseAcceptance / (1 - plan.FalseRejection) + 1e-12;
        },
        iter: 40);

    [Fact]
    public void Walds_chance_of_acceptance_falls_with_the_rate_through_the_stated_errors() => Plans.Sample(plan =>
    {
        var rates = Enumerable.Range(0, 101).Select(i => i / 100.0).ToArray();
        var chances = rates.Select(rate => SequentialRatioTest.WaldAcceptance(plan, rate)).ToArray();
        return chances.All(chance => chance is >= 0 and <= 1) && chances.Zip(chances.Skip(1)).All(pair => pair.Second <= pair.First + 1e-12)
            && Math.Abs(SequentialRatioTest.WaldAcceptance(plan, plan.ClaimedRate) - (1 - plan.FalseRejection)) < 1e-9
            && Math.Abs(SequentialRatioTest.WaldAcceptance(plan, plan.UnacceptableRate) - plan.FalseAcceptance) < 1e-9
            && rates.All(rate => double.IsFinite(SequentialRatioTest.WaldAverageSampleNumber(plan, rate)));
    });

    [Fact]
    public void A_simulated_average_agrees_within_three_standard_errors()
    {
        var plan = new SequentialPlan(0.01, 0.06, 0.05, 0.10);
        var random = new Random(4);
        var outcomes = Enumerable.Range(0, 4000)
            .Select(_ => SequentialRatioTest.Of(plan, [.. Enumerable.Range(0, 3000).Select(_ => random.NextDouble() < 0.01)])).ToArray();
        outcomes.Should().OnlyContain(one => one.Decision != SequentialDecision.Continue);
        Simulated.ShouldAgree([.. outcomes.Select(one => (double)one.Observations)], 63.583491);
        var rejected = outcomes.Count(one => one.Decision == SequentialDecision.Reject) / 4000.0;
        rejected.Should().BeApproximately(0.0285816, 3 * Math.Sqrt(0.0285816 * 0.9714184 / 4000));
    }

    [Fact]
    public void Without_events_a_lot_is_accepted_at_the_first_acceptance_and_a_sum_that_ends_early_says_what_is_undecided()
    {
        var plan = new SequentialPlan(0.0001, 0.0005);
        SequentialRatioTest.Performance(plan, 0).Should().Match<SequentialPerformance>(one =>
            one.Acceptance == 1 && one.Rejection == 0 && one.AverageSampleNumber == plan.FirstAcceptance);
        SequentialRatioTest.Performance(plan, 0.0001, 10).Should().Match<SequentialPerformance>(one => one.LastObservation == 10 && one.Undecided > 0.99);
        SequentialRatioTest.Of(plan, [false, false]).Should().Be(new SequentialOutcome(plan, SequentialDecision.Continue, 2, 0));
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused()
    {
        FluentActions.Invoking(() => new SequentialPlan(0, 0.1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new SequentialPlan(0.1, 0.1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new SequentialPlan(0.1, 0.2, 0, 0.1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new SequentialPlan(0.1, 0.2, 0.5, 0.5)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new SequentialPlan(0.1, 0.2).Decide(3, 2)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => SequentialRatioTest.Performance(new SequentialPlan(0.1, 0.2), 1.1)).Should().Throw<ArgumentOutOfRangeException>();
    }
}
