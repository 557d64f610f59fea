using ScreenStats.Statistics.Monitoring.Charts;
using ScreenStats.Statistics.Monitoring.Runs;
using ScreenStats.Statistics.Tests.Monitoring.Charts;

namespace ScreenStats.Statistics.Tests.Monitoring.Runs;

public sealed class RunRuleLengthTests
{
    /// <summary>Each choice of rules but the empty one.</summary>
    public static TheoryData<int> Combinations => [.. Enumerable.Range(1, 15)];

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("run-rule-lengths"), row =>
    {
        RunRule[] rules = [.. row.Text("rules").Split(' ').Select(name => RunRules.All.Single(rule => rule.Name() == name))];
        var length = row.Has("trials")
            ? RunRuleLength.Proportion(rules, row.Count("trials"), row.Number("centre"), row.Number("rate"), ChartRows.Or(row, "tail", 0.00135))
            : RunRuleLength.Normal(rules, row.Number("shift"));
        return [row.Mismatch("length", length.Value)];
    });

    [Fact]
    public void Each_further_rule_shortens_the_run_and_a_shift_either_way_is_the_same() => Gen.Select(Gen.Int[1, 14], Gen.Int[0, 3], Gen.Double[-3, 3]).Sample((set, more, shift) =>
    {
        var length = RunRuleLength.Normal(Chosen(set), shift).Value!.Value;
        return RunRuleLength.Normal(Chosen(set | (1 << more)), shift).Value <= length * (1 + 1e-9)
            && Math.Abs(RunRuleLength.Normal(Chosen(set), -shift).Value!.Value - length) <= 1e-9 * length;
    }, iter: 40);

    [Theory]
    [MemberData(nameof(Combinations))]
    public void A_seeded_simulation_on_charts_agrees_within_three_standard_errors(int set)
    {
        // The points are judged as those of a chart are: the chain and the evaluation must mean the same rules.
        const int Runs = 600;
        const double Shift = 0.5;
        var random = new Random(20260300 + set);
        var rules = Chosen(set);
        double sum = 0, squares = 0;
        for (var run = 0; run < Runs; run++)
        {
            // What a chart holds for normal points; the rules look back over eight points at most.
            var points = new List<ChartPoint>();
            var length = 0;
            do
            {
                var z = Shift + Normal(random);
                if (points.Count == 8) points.RemoveAt(0);
                points.Add(new ChartPoint(length) { Value = z, Lower = -3, Upper = 3, Score = z, Side = z > 0 ? ChartSide.Above : ChartSide.Below });
                length++;
            }
            while (RuleEvaluation.Judge(points, [.. rules])[^1].Signals.Length == 0);
            sum += length;
            squares += (double)length * length;
        }

        var mean = sum / Runs;
        var error = Math.Sqrt(((squares / Runs) - (mean * mean)) / Runs);
        Math.Abs(RunRuleLength.Normal(rules, Shift).Value!.Value - mean).Should().BeLessThan(3 * error);
    }

    [Fact]
    public void On_a_chart_of_proportions_with_exact_limits_the_chain_agrees_with_a_seeded_simulation_of_charts()
    {
        const int Runs = 400;
        const int Longest = 4000;
        var random = new Random(20260316);
        double sum = 0, squares = 0;
        for (var run = 0; run < Runs; run++)
        {
            var points = new List<Subgroup>();
            int? first = null;
            for (var size = 50; first is null && size <= Longest; size *= 3)
            {
                while (points.Count < size) points.Add(new Subgroup(Binomial(random, 30, 0.08), 30));
                var chart = ProportionChart.Exact(points, 0.04, rules: RunRules.All);
                if (chart.Signals.Length > 0) first = chart.Signals[0].Index + 1;
            }

            sum += first!.Value;
            squares += (double)first.Value * first.Value;
        }

        var mean = sum / Runs;
        var error = Math.Sqrt(((squares / Runs) - (mean * mean)) / Runs);
        Math.Abs(RunRuleLength.Proportion(RunRules.All, 30, 0.04, 0.08).Value!.Value - mean).Should().BeLessThan(3 * error);
    }

    [Fact]
    public void With_exact_limits_no_rule_gives_more_false_alarms_than_it_does_for_normal_points() =>
        Gen.Select(Gen.Int[1, 15], Gen.Long[1, 5000], Gen.Double[0.0005, 0.9995]).Sample((set, n, p) =>
            RunRuleLength.Proportion(Chosen(set), n, p, p).Value is not { } length || length >= RunRuleLength.Normal(Chosen(set)).Value * (1 - 1e-2), iter: 40);

    [Fact]
    public void Outside_limits_alone_is_the_plain_run_length() =>
        RunRuleLength.Proportion([RunRule.OutsideLimits], 50, 0.11, 0.2).Value.Should().BeApproximately(ShewhartRunLength.Proportion(50, 0.11, 0.2).Value!.Value, 1e-9);

    [Fact]
    public void What_can_never_signal_is_undefined_and_no_rule_is_refused()
    {
        RunRuleLength.Proportion([RunRule.OutsideLimits], 1, 0.5, 0.5).Reason.Should().Be(UndefinedReason.NeverSignals);
        RunRuleLength.Proportion(RunRules.All, 20, 0.001, 0).Reason.Should().Be(UndefinedReason.NeverSignals);
        new Action(() => RunRuleLength.Normal([])).Should().Throw<ArgumentException>();
        new Action(() => RunRuleLength.Normal(RunRules.All, double.NaN)).Should().Throw<ArgumentOutOfRangeException>();
        new Action(() => RunRuleLength.Proportion(RunRules.All, 9, 1, 0.5)).Should().Throw<ArgumentOutOfRangeException>();
        new Action(() => RunRuleLength.Normal([(RunRule)7])).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static RunRule[] Chosen(int set) => [.. RunRules.All.Where(rule => (set >> (int)rule & 1) == 1)];

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static long Binomial(Random random, int n, double p)
    {
        long x = 0;
        for (var i = 0; i < n; i++) x += random.NextDouble() < p ? 1 : 0;
        return x;
    }
}
