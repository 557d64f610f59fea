using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Monitoring.Sequential.Evidence;

namespace ScreenStats.Statistics.Tests.Monitoring.Sequential;

public sealed class AnytimeAlarmTests
{
    private static readonly Gen<double> Chance = Gen.OneOf(Gen.Double[0.001, 0.999], Gen.Double[1e-7, 1e-3]);

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("anytime-evidence"), row =>
    {
        var hits = row.Numbers("on_lot");
        var events = row.Numbers("probabilities").Select((p, i) => new EvidenceEvent(p, hits[i] == 1, i)).ToList();
        var path = AnytimeAlarm.Of(events, AlarmThreshold.OfLots(row.Count("lots"), row.Number("level")));
        var alarm = path.Alarm is { } one ? one.Look.ToString(System.Globalization.CultureInfo.InvariantCulture) : "none";
        return
        [
            row.Mismatch("log_evidence", path.LogEvidence), row.Mismatch("log_maximum", path.LogMaximum),
            alarm == row.Text("alarm") ? null : $"{row}: alarm {alarm}, not {row.Text("alarm")}",
        ];
    });

    [Fact]
    public void There_are_at_least_fifty_independent_rows() =>
        ReferenceTable.Load("anytime-evidence").Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50);

    // Every outcome of up to ten events, with its chance under the null.
    [Fact]
    public void The_mean_of_the_evidence_under_the_null_is_one() => Chance.Array[1, 10].Sample(
        chances =>
        {
            double mean = 0;
            for (var outcome = 0; outcome < 1 << chances.Length; outcome++)
            {
                double weight = 1;
                var events = new EvidenceEvent[chances.Length];
                for (var i = 0; i < chances.Length; i++)
                {
                    var hit = (outcome >> i & 1) == 1;
                    weight *= hit ? chances[i] : 1 - chances[i];
                    events[i] = new EvidenceEvent(chances[i], hit);
                }

                mean += weight * Math.Exp(Evidence(events));
            }

            return Math.Abs(mean - 1) < 1e-11;
        },
        iter: 50);

    [Fact]
    public void Whatever_came_before_the_mean_after_the_next_event_is_the_evidence_before_it() =>
        Gen.Select(Gen.Select(Chance, Gen.Bool).Array[0, 30], Chance).Sample((before, chance) =>
        {
            var events = before.Select(pair => new EvidenceEvent(pair.Item1, pair.Item2)).ToArray();
            var now = Evidence(events);
            var hit = Evidence([.. events, new EvidenceEvent(chance, true)]) - now;
            var miss = Evidence([.. events, new EvidenceEvent(chance, false)]) - now;
            return Math.Abs((chance * Math.Exp(hit)) + ((1 - chance) * Math.Exp(miss)) - 1) < 1e-11;
        });

    [Fact]
    public void The_order_of_events_does_not_matter_for_what_they_add_up_to() =>
        Gen.Select(Gen.Select(Chance, Gen.Bool).Array[1, 40], Gen.Int[0, 1000]).Sample((drawn, seed) =>
        {
            var events = drawn.Select(pair => new EvidenceEvent(pair.Item1, pair.Item2, 3)).ToArray();
            var shuffled = events.ToArray();
            new Random(seed).Shuffle(shuffled);
            var threshold = AlarmThreshold.OfLots(3, 0.05);
            var (path, other) = (AnytimeAlarm.Of(events, threshold), AnytimeAlarm.Of(shuffled, threshold));
            return Math.Abs(path.LogEvidence - other.LogEvidence) < 1e-11 && path.Points.Count == 1 && (path.Alarm is null) == (other.Alarm is null);
        });

    // One stratum of one look: the events are draws without replacement. Hoeffding 1963: the mean is at most that of draws with replacement.
    [Fact]
    public void Several_events_of_one_stratum_keep_the_mean_at_or_below_one() =>
        Gen.Select(Gen.Int[1, 30], Gen.Int[1, 30], Gen.Int[1, 8]).Where((own, others, events) => events <= own + others).Sample((own, others, events) =>
        {
            double mean = 0;
            var p = (double)own / (own + others);
            for (var hits = 0; hits <= events; hits++)
            {
                var chance = Hypergeometric.Probability(hits, own + others, own, events);
                mean += chance * Math.Exp(Evidence([.. Enumerable.Range(0, events).Select(i => new EvidenceEvent(p, i < hits))]));
            }

            return mean <= 1 + 1e-12;
        });

    // 5,000 programs without a fault, judged after each of 300 events: the share that ever alarms is at most its level plus three standard errors.
    [Theory]
    [InlineData(0.05, 0.05, 1)]
    [InlineData(0.3, 0.05, 1)]
    [InlineData(0.01, 0.01, 1)]
    public void The_chance_of_ever_alarming_without_a_fault_is_held_at_every_moment(double chance, double level, int lots)
    {
        const int Programs = 5_000;
        var random = new Random(20261125);
        var threshold = AlarmThreshold.OfLots(lots, level);
        var alarms = Enumerable.Range(0, Programs).Count(_ =>
            AnytimeAlarm.Of([.. Enumerable.Range(0, 300).Select(i => new EvidenceEvent(chance, random.NextDouble() < chance, i))], threshold).Alarm is not null);
        ((double)alarms / Programs).Should().BeLessThanOrEqualTo(level + (3 * Math.Sqrt(level * (1 - level) / Programs)));
        alarms.Should().BePositive("a test that never sees an alarm would pass with any threshold");
    }

    [Fact]
    public void Over_all_lots_of_a_program_without_a_fault_the_chance_of_any_alarm_is_held()
    {
        const int Programs = 2_000;
        var random = new Random(5);
        var alarms = 0;
        for (var program = 0; program < Programs; program++)
        {
            var events = Enumerable.Range(0, 150).Select(day =>
            {
                var weights = Enumerable.Range(0, 6).Select(lot => new LotShare(lot, 1 + random.Next(20))).ToArray();
                var at = random.NextDouble() * weights.Sum(share => share.Weight);
                var on = 0;
                while (on < 5 && (at -= weights[on].Weight) >= 0) on++;
                return new StratumEvent(on, weights, day);
            });
            if (AnytimeAlarm.OfLots([.. events], 6, 0.05).Any(path => path.Alarm is not null)) alarms++;
        }

        ((double)alarms / Programs).Should().BeLessThanOrEqualTo(0.05 + (3 * Math.Sqrt(0.05 * 0.95 / Programs)));
        alarms.Should().BePositive();
    }

    [Fact]
    public void A_lot_whose_odds_rise_tenfold_alarms_and_the_rise_is_dated()
    {
        var random = new Random(3);
        var path = AnytimeAlarm.Of(
            [.. Enumerable.Range(0, 200).Select(i => new EvidenceEvent(0.1, random.NextDouble() < (i < 50 ? 0.1 : 10 * 0.1 / 1.9), i))], AlarmThreshold.OfLots(20, 0.01));
        path.Alarm.Should().NotBeNull();
        path.Alarm!.Look.Should().BeInRange(55, 110);
        path.Alarm.RisingSince.Should().BeInRange(45, 56);
        path.Points[path.Alarm.Index].LogEvidence.Should().BeGreaterThanOrEqualTo(path.Threshold.LogEvidence);
        path.Points.Take(path.Alarm.Index).Should().OnlyContain(point => point.LogEvidence < path.Threshold.LogEvidence);
        path.PValue.Should().BeLessThanOrEqualTo(0.01 / 20);
    }

    [Fact]
    public void Events_that_had_to_fall_on_the_lot_or_could_not_drop_out_and_impossible_ones_are_counted()
    {
        var path = AnytimeAlarm.Of(
            [new EvidenceEvent(1, true), new EvidenceEvent(0, false), new EvidenceEvent(0, true), new EvidenceEvent(1, false)], AlarmThreshold.OfLots(1, 0.05));
        (path.LogEvidence, path.PValue, path.Uninformative, path.Impossible, path.Points.Count).Should().Be((0, 1, 2, 2, 0));
    }

    [Fact]
    public void No_event_leaves_the_evidence_at_one() =>
        AnytimeAlarm.Of([], AlarmThreshold.OfLots(3, 0.05)).Should().Match<EvidencePath>(path => path.LogEvidence == 0 && path.PValue == 1 && path.Alarm == null);

    [Fact]
    public void Evidence_beyond_every_number_stays_a_number()
    {
        var path = AnytimeAlarm.Of([.. Enumerable.Repeat(new EvidenceEvent(1e-9, true), 5000)], AlarmThreshold.OfLots(3, 0.05));
        path.LogEvidence.Should().BeApproximately((5000 * Math.Log(64)) - Math.Log(6), 1e-2);
        path.Points[^1].Evidence.Should().Be(double.MaxValue);
        path.PValue.Should().BeInRange(0, 1e-300);
        var down = AnytimeAlarm.Of([.. Enumerable.Repeat(new EvidenceEvent(0.999, false), 5000)], AlarmThreshold.OfLots(3, 0.05));
        double.IsFinite(down.LogEvidence).Should().BeTrue();
        down.PValue.Should().Be(1);
    }

    [Fact]
    public void Lots_of_a_stratum_are_judged_together_and_alone_alike()
    {
        LotShare[] shares = [new(0, 30), new(2, 10)];
        StratumEvent[] events = [new(2, shares, 0), new(2, shares, 0), new(0, shares, 4), new(1, [new LotShare(1, 5)], 5)];
        var paths = AnytimeAlarm.OfLots(events, 3, 0.01);
        paths[2].LogEvidence.Should().Be(Evidence([new(0.25, true), new(0.25, true), new(0.25, false)]));
        paths[0].LogEvidence.Should().Be(Evidence([new(0.75, false), new(0.75, false), new(0.75, true)]));
        (paths[1].LogEvidence, paths[1].Uninformative).Should().Be((0, 1));
        paths[2].Points.Select(point => (point.Look, point.Events, point.OnLot, point.Expected)).Should().Equal((0, 2, 2, 0.5), (4, 3, 2, 0.75));
    }

    [Fact]
    public void The_shares_of_arriving_lots_add_up_to_the_chance_stated() =>
        Enumerable.Range(1, 100_000).Sum(place => 1 / AlarmThreshold.OfArrival(place, 0.01).Evidence).Should().BeApproximately(0.01, 1e-6).And.BeLessThan(0.01);

    [Fact]
    public void Figures_outside_their_domain_are_refused()
    {
        FluentActions.Invoking(() => new EvidenceEvent(-0.1, true)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new EvidenceEvent(double.NaN, true)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new EvidenceEvent(0.1, true, -1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new LotShare(-1, 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new LotShare(0, double.PositiveInfinity)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new StratumEvent(1, [new LotShare(0, 1)])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new StratumEvent(0, [new LotShare(0, 1), new LotShare(0, 2)])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new StratumEvent(0, [new LotShare(0, 0)])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => AlarmThreshold.OfLots(0, 0.01)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => AlarmThreshold.OfLots(3, 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => AnytimeAlarm.Of([new EvidenceEvent(0.1, true, 4), new EvidenceEvent(0.1, true, 3)], AlarmThreshold.OfLots(1, 0.1)))
            .Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => AnytimeAlarm.OfLots([new StratumEvent(7, [new LotShare(7, 1)])], 3, 0.1)).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static double Evidence(IReadOnlyList<EvidenceEvent> events) => AnytimeAlarm.Of(events, AlarmThreshold.OfLots(1, 0.05)).LogEvidence;
}
