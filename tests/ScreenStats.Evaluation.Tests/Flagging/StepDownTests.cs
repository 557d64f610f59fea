using System.Globalization;
using System.Numerics;
using CsCheck;
using ScreenStats.Evaluation.Flagging;
using ScreenStats.Testing;

namespace ScreenStats.Evaluation.Tests.Flagging;

public class StepDownTests
{
    public static TheoryData<string> ReferenceIds => [.. ReferenceTable.Load("flags").Select(row => row.Id)];

    [Theory]
    [MemberData(nameof(ReferenceIds))]
    public void P_values_flags_and_rounds_equal_those_computed_in_R(string id)
    {
        var row = ReferenceTable.Load("flags").Single(row => row.Id == id);
        var candidates = Candidates(row.Numbers("trials"), row.Numbers("events"));

        var judged = StepDown.Judge(candidates, _ => "");

        for (var index = 0; index < candidates.Count; index++)
        {
            var test = judged[candidates[index].Name];
            row.Within(row.Numbers("p")[index], test.P!.Value).Should().BeTrue($"p of {index} is {test.P}");
            row.Within(row.Numbers("p_holm")[index], test.PHolm!.Value).Should().BeTrue($"adjusted p of {index} is {test.PHolm}");
            test.Flagged.Should().Be(row.Numbers("flagged")[index] == 1);
            test.Round.Should().Be((int)row.Numbers("round")[index]);
        }
    }

    [Fact]
    public void Any_small_pool_is_judged_as_by_counting_every_way_to_draw_in_whole_numbers() =>
        Gen.Select(Gen.Int[0, 60], Gen.Double[0, 1], (n, share) => ((long)n, (long)Math.Round(n * share * share * share)))
            .Array[1, 6]
            .Sample(pool =>
            {
                var candidates = Candidates(pool.Select(part => (double)part.Item1), pool.Select(part => (double)part.Item2));
                var judged = StepDown.Judge(candidates, _ => "none");
                var exact = ByCounting(candidates);
                candidates.Where(candidate => candidate.Trials == 0 && judged[candidate.Name].P is not null).Should().BeEmpty();
                foreach (var (name, (p, flagged)) in exact)
                {
                    judged[name].P!.Value.Should().BeApproximately(p, 1e-9 * Math.Max(p, 1e-3));
                    judged[name].Flagged.Should().Be(flagged);
                }
            }, iter: 300);

    [Fact]
    public void The_order_in_which_they_are_given_changes_nothing()
    {
        var candidates = Candidates([5000, 5000, 5000, 5000, 5000], [2, 400, 3, 20, 1]);

        StepDown.Judge(Enumerable.Reverse(candidates), _ => "").Should().BeEquivalentTo(StepDown.Judge(candidates, _ => ""));
    }

    [Fact]
    public void Of_equal_ones_the_first_by_ordinal_name_goes_first()
    {
        FlagCandidate[] candidates = [new("b", 1000, 15), new("B", 1000, 15), new("a", 1000, 0), new("c", 1000, 0), new("d", 1000, 0)];

        var judged = StepDown.Judge(candidates, _ => "");

        (judged["B"].Round, judged["b"].Round).Should().Be((1, 2), "B comes before b by code point");
    }

    [Fact]
    public void A_second_bad_one_that_the_first_hides_is_found_in_the_second_round()
    {
        var candidates = Candidates([5000, 5000, 5000, 5000, 5000], [2, 400, 3, 20, 1]);

        var judged = StepDown.Judge(candidates, _ => "");

        judged.Where(entry => entry.Value.Flagged).Select(entry => (entry.Key, entry.Value.Round)).Should().BeEquivalentTo([("L001", 1), ("L003", 2)]);
        judged["L003"].PoolEvents.Should().Be(26, "the first bad one left the pool with its events");
    }

    [Fact]
    public void Without_events_or_with_one_candidate_nothing_is_flagged()
    {
        StepDown.Judge(Candidates([10, 20], [0, 0]), _ => "").Values.Should().OnlyContain(test => test.P == 1 && !test.Flagged);
        StepDown.Judge(Candidates([10], [10]), _ => "").Values.Should().OnlyContain(test => test.P == 1 && !test.Flagged);
        StepDown.Judge([], _ => "").Should().BeEmpty();
    }

    [Fact]
    public void One_without_trials_is_not_tested_and_does_not_count_among_those_compared()
    {
        var with = StepDown.Judge([.. Candidates([5000, 5200, 4800], [4, 20, 5]), new FlagCandidate("empty", 0, 0)], _ => "no run");
        var without = StepDown.Judge(Candidates([5000, 5200, 4800], [4, 20, 5]), _ => "no run");

        (with["empty"].P, with["empty"].PUndefined, with["empty"].Round).Should().Be((null, "no run", 0));
        with["L001"].Should().Be(without["L001"]);
    }

    /// <summary>
    /// Under the null every run is as likely as every other to be an event: fixed events are dealt at random over unequal lots.
    /// Seed 20260105; System.Random; the limit is the threshold plus three standard errors of the simulated share.
    /// </summary>
    [Theory]
    [InlineData(60, 6, 3000)]
    [InlineData(400, 25, 1000)]
    public void Where_nothing_is_wrong_a_judgement_flags_anything_at_most_one_time_in_a_hundred(int events, int lots, int simulations)
    {
        var random = new Random(20260105);
        var trials = Enumerable.Range(0, lots).Select(lot => 50L + (lot * lot * 13L)).ToArray();
        var ends = trials.Select((_, lot) => trials.Take(lot + 1).Sum()).ToArray();
        var flaggedJudgements = 0;
        for (var simulation = 0; simulation < simulations; simulation++)
        {
            var drawn = new HashSet<long>();
            while (drawn.Count < events) drawn.Add(random.NextInt64(ends[^1]));
            var counts = new double[lots];
            foreach (var run in drawn) counts[Array.FindIndex(ends, end => run < end)]++;
            if (StepDown.Judge(Candidates(trials.Select(n => (double)n), counts), _ => "").Values.Any(test => test.Flagged)) flaggedJudgements++;
        }

        var limit = StepDown.Threshold + (3 * Math.Sqrt(StepDown.Threshold * (1 - StepDown.Threshold) / simulations));
        ((double)flaggedJudgements / simulations).Should().BeLessThan(limit);
    }

    private static List<FlagCandidate> Candidates(IEnumerable<double> trials, IEnumerable<double> events) =>
        [.. trials.Zip(events).Select((pair, index) => new FlagCandidate($"L{index.ToString("000", CultureInfo.InvariantCulture)}", (long)pair.First, (long)pair.Second))];

    /// <summary>The design's words in whole numbers: ways to deal the pool's events, as fractions of big integers.</summary>
    private static Dictionary<string, (double P, bool Flagged)> ByCounting(IEnumerable<FlagCandidate> candidates)
    {
        var result = new Dictionary<string, (double, bool)>();
        var pool = candidates.Where(candidate => candidate.Trials > 0).ToList();
        while (pool.Count > 0)
        {
            var (all, events) = (pool.Sum(c => c.Trials), pool.Sum(c => c.Events));
            var ways = pool.Select(c => Enumerable.Range(0, (int)c.Trials + 1).Where(k => k >= c.Events && k <= events)
                .Aggregate(BigInteger.Zero, (sum, k) => sum + (Choose(c.Trials, k) * Choose(all - c.Trials, events - k)))).ToList();
            var total = Choose(all, events);
            var best = Enumerable.Range(0, pool.Count).OrderBy(index => ways[index]).ThenBy(index => pool[index].Name, StringComparer.Ordinal).First();
            var flag = ways[best] * pool.Count * 100 < total;
            foreach (var index in Enumerable.Range(0, pool.Count).Where(index => !flag || index == best))
                result[pool[index].Name] = (Math.Exp(BigInteger.Log(ways[index]) - BigInteger.Log(total)), flag);
            if (!flag) break;
            pool.RemoveAt(best);
        }

        return result;
    }

    private static BigInteger Choose(long n, long k)
    {
        if (k < 0 || k > n) return 0;
        var result = BigInteger.One;
        for (var i = 1L; i <= k; i++) result = result * (n - k + i) / i;
        return result;
    }
}
