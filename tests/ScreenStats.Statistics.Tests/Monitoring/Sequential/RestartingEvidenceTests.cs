using ScreenStats.Statistics.Monitoring.Sequential.Evidence;

namespace ScreenStats.Statistics.Tests.Monitoring.Sequential;

public sealed class RestartingEvidenceTests
{
    private static readonly Gen<double> Chance = Gen.OneOf(Gen.Double[0.001, 0.999], Gen.Double[1e-7, 1e-3]);
    private static readonly Gen<IReadOnlyList<double>> Multiples = Gen.Bool.Select(excess => excess ? RestartingEvidence.Excess : RestartingEvidence.Lack);

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("restarting-evidence"), row =>
    {
        var evidence = new RestartingEvidence([.. row.Numbers("multiples")]);
        var (points, chances, events, observations) = (row.Numbers("points"), row.Numbers("probabilities"), row.Numbers("events"), row.Numbers("observations"));
        for (var i = 0; i < points.Count; i++)
        {
            evidence.StartAt((long)points[i]);
            evidence.Add(chances[i], (long)events[i], (long)observations[i]);
        }

        return [row.Mismatch("log_evidence", evidence.LogEvidence)];
    });

    [Fact]
    public void There_are_at_least_fifty_independent_rows() =>
        ReferenceTable.Load("restarting-evidence").Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50);

    // Every outcome of up to ten events, with its chance under the null; starting points as they come.
    [Fact]
    public void The_mean_of_the_evidence_under_the_null_is_one() => Gen.Select(Gen.Select(Chance, Gen.Long[0, 3]).Array[1, 10], Multiples).Sample(
        (events, multiples) =>
        {
            double mean = 0;
            for (var outcome = 0; outcome < 1 << events.Length; outcome++)
            {
                double weight = 1;
                long point = 1;
                var evidence = new RestartingEvidence(multiples);
                for (var i = 0; i < events.Length; i++)
                {
                    var hit = (outcome >> i & 1) == 1;
                    weight *= hit ? events[i].Item1 : 1 - events[i].Item1;
                    evidence.StartAt(point += events[i].Item2);
                    evidence.Add(events[i].Item1, hit ? 1 : 0, 1);
                }

                mean += weight * Math.Exp(evidence.LogEvidence);
            }

            return Math.Abs(mean - 1) < 1e-11;
        },
        iter: 50);

    [Fact]
    public void A_starting_point_by_itself_changes_no_evidence() => Gen.Select(Gen.Select(Chance, Gen.Bool).Array[0, 30], Gen.Long[1, 500]).Sample((before, later) =>
    {
        var evidence = new RestartingEvidence(RestartingEvidence.Excess);
        foreach (var (chance, hit) in before)
        {
            evidence.StartAt(evidence.StartingPoints + 1);
            evidence.Add(chance, hit ? 1 : 0, 1);
        }

        var now = evidence.LogEvidence;
        evidence.StartAt(evidence.StartingPoints + later);
        return Math.Abs(evidence.LogEvidence - now) < 1e-11;
    });

    [Fact]
    public void Observations_may_be_added_one_by_one_or_together() => Gen.Select(Chance, Gen.Int[0, 20], Gen.Int[0, 200]).Sample((chance, events, others) =>
    {
        var together = Started();
        together.Add(chance, events, events + others);
        var single = Started();
        for (var i = 0; i < events + others; i++) single.Add(chance, i < events ? 1 : 0, 1);
        return Math.Abs(together.LogEvidence - single.LogEvidence) < 1e-9;
    });

    // 5,000 programs without a fault, judged after each of 300 events, and with a true chance below the null probability.
    [Theory]
    [InlineData(0.05, 0.05)]
    [InlineData(0.3, 0.3)]
    [InlineData(0.3, 0.25)]
    public void The_chance_of_ever_alarming_without_a_fault_is_held_at_every_moment(double nullProbability, double chance)
    {
        const int Programs = 5_000;
        const double Level = 0.05;
        var random = new Random(20261125);
        var alarms = Enumerable.Range(0, Programs).Count(_ =>
        {
            var evidence = new RestartingEvidence(RestartingEvidence.Excess);
            for (var i = 0; i < 300; i++)
            {
                evidence.StartAt(1 + (i / 5));
                evidence.Add(nullProbability, random.NextDouble() < chance ? 1 : 0, 1);
                if (evidence.LogEvidence >= -Math.Log(Level)) return true;
            }

            return false;
        });
        ((double)alarms / Programs).Should().BeLessThanOrEqualTo(Level + (3 * Math.Sqrt(Level * (1 - Level) / Programs)));
        if (chance == nullProbability) alarms.Should().BePositive("a test that never sees an alarm would pass with any threshold");
    }

    // The weakness it mends: 50 events in order, then tenfold odds.
    [Fact]
    public void A_fault_that_begins_late_is_found_after_far_fewer_events_than_without_starting_points()
    {
        var random = new Random(7);
        double with = 0, without = 0;
        const int Programs = 200;
        for (var program = 0; program < Programs; program++)
        {
            var hits = Enumerable.Range(0, 250).Select(i => random.NextDouble() < (i < 50 ? 0.1 : 1 / 1.9)).ToArray();
            var threshold = AlarmThreshold.OfEvenArrival(1, 0.01);
            without += AnytimeAlarm.Of([.. hits.Select((hit, i) => new EvidenceEvent(0.1, hit, i))], threshold).Alarm!.Events - 50;
            var evidence = new RestartingEvidence(RestartingEvidence.Excess);
            var at = 0;
            for (; evidence.LogEvidence < threshold.LogEvidence; at++)
            {
                evidence.StartAt(1 + (at / 5));
                evidence.Add(0.1, hits[at] ? 1 : 0, 1);
            }

            with += at - 50;
        }

        (without / Programs).Should().BeInRange(29, 37);
        (with / Programs).Should().BeInRange(19, 25);
    }

    [Fact]
    public void The_shares_of_evenly_arriving_lots_add_up_to_the_chance_stated() =>
        Enumerable.Range(1, 1_000_000).Sum(place => 1 / AlarmThreshold.OfEvenArrival(place, 0.01).Evidence).Should().BeApproximately(0.01, 2e-7).And.BeLessThan(0.01);

    [Theory]
    [InlineData(1, 1_100)]
    [InlineData(10, 3_800)]
    [InlineData(60, 48_300)]
    public void Thresholds_of_evenly_arriving_lots_are_as_documented(int place, double threshold) =>
        AlarmThreshold.OfEvenArrival(place, 0.01).Evidence.Should().BeApproximately(threshold, threshold * 1e-12);

    [Fact]
    public void Evidence_beyond_every_number_stays_a_number()
    {
        var evidence = Started();
        evidence.Add(1e-9, 5000, 5000);
        evidence.Evidence.Should().Be(double.MaxValue);
        var down = Started();
        down.Add(0.999, 0, 5_000_000);
        down.LogEvidence.Should().BeApproximately(Math.Log(0.5), 1e-12, "what has not started counts as 1");
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused()
    {
        FluentActions.Invoking(() => new RestartingEvidence([])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new RestartingEvidence([1])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new RestartingEvidence([2, 0.5])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new RestartingEvidence([0])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => Started().Add(0, 0, 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => Started().Add(1, 0, 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => Started().Add(0.1, 2, 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => Started().StartAt(0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new RestartingEvidence([2]).Add(0.1, 0, 1)).Should().Throw<InvalidOperationException>();
        FluentActions.Invoking(() => AlarmThreshold.OfEvenArrival(0, 0.01)).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static RestartingEvidence Started()
    {
        var evidence = new RestartingEvidence(RestartingEvidence.Excess);
        evidence.StartAt(1);
        return evidence;
    }
}
