using CsCheck;
using ScreenStats.Evaluation.Disclosure.Counts;

namespace ScreenStats.Evaluation.Tests.Disclosure;

public class ComplementarySuppressionTests
{
    // The test table for complementary suppression of the project's reference notes (section 8): worked by hand there; counts 1 to 4 are hidden.
    private static readonly (string Row, long Positive, long Negative, long Invalid)[] Worked = [("A", 12, 188, 5), ("B", 3, 97, 12), ("C", 20, 150, 15), ("D", 15, 240, 18)];

    [Fact]
    public void The_worked_table_hides_the_rectangle_with_the_least_information()
    {
        var model = Model(Worked);

        var plan = SuppressionPlanner.Protect(model, 5);

        plan.Unprotected.Should().BeEmpty();
        model.Variables.Where(variable => variable.Hidden).Select(variable => $"{variable.Unit.Level}-{variable.Measure}")
            .Should().BeEquivalentTo("B-positive", "B-invalid", "A-positive", "A-invalid");
        model.Variables.Where(variable => variable.Hidden).Sum(variable => variable.Value).Should().Be(32);
    }

    [Fact]
    public void The_worked_table_leaves_the_ranges_that_were_worked_by_hand()
    {
        var model = Model(Worked);
        SuppressionPlanner.Protect(model, 5);
        var audit = new RangeAudit(model);

        Range(audit, model, "B", "positive").Should().Be(new CountRange(0, 15));
        Range(audit, model, "A", "positive").Should().Be(new CountRange(0, 15));
        Range(audit, model, "B", "invalid").Should().Be(new CountRange(0, 15));
        Range(audit, model, "A", "invalid").Should().Be(new CountRange(2, 17));
    }

    [Fact]
    public void The_small_count_alone_is_recoverable()
    {
        var model = Model(Worked);
        model.Find(new CountUnit("site", "B", ""), "positive")!.Hidden = true;

        new RangeAudit(model).IsKnown(model.Find(new CountUnit("site", "B", ""), "positive")!).Should().BeTrue();
    }

    [Fact]
    public void Random_tables_with_margins_leave_every_small_count_a_range_across_the_threshold()
    {
        var gen = Gen.Select(Gen.Int[2, 6], Gen.Int[2, 4], Gen.Int[2, 11]).SelectMany((levels, measures, threshold) =>
            Gen.Select(Gen.Frequency((3, Gen.Long[0, 12]), (2, Gen.Long[0, 300])).Array[levels * measures], Gen.Const((levels, measures, threshold))));
        gen.Sample((cells, shape) =>
        {
            var (levels, measures, threshold) = shape;
            var model = new CountModel();
            var program = Enumerable.Range(0, measures).Select(m => model.Add(CountUnit.Program, $"m{m}", Enumerable.Range(0, levels).Sum(l => cells[(l * measures) + m]))).ToArray();
            var grid = new CountVariable[levels, measures];
            for (var l = 0; l < levels; l++)
            {
                var unit = new CountUnit("site", $"{l}", "");
                var total = model.Add(unit, "total", Enumerable.Range(0, measures).Sum(m => cells[(l * measures) + m]));
                for (var m = 0; m < measures; m++) grid[l, m] = model.Add(unit, $"m{m}", cells[(l * measures) + m]);
                model.Relate(total, Enumerable.Range(0, measures).Select(m => grid[l, m]));
            }

            for (var m = 0; m < measures; m++) model.Relate(program[m], Enumerable.Range(0, levels).Select(l => grid[l, m]));
            model.Relate(model.Add(CountUnit.Program, "total", cells.Sum()), program);
            foreach (var variable in model.Variables) variable.Published = true;

            var plan = SuppressionPlanner.Protect(model, threshold);

            plan.Unprotected.Should().BeEmpty();
            var audit = new RangeAudit(model);
            plan.Witnesses.Values.All(audit.Holds).Should().BeTrue();
            foreach (var small in model.Variables.Where(variable => variable.Value > 0 && variable.Value < threshold))
            {
                var range = audit.Range(small)!.Value;
                range.Lower.Should().BeLessThanOrEqualTo(small.Value);
                (range.Upper ?? long.MaxValue).Should().BeGreaterThanOrEqualTo(threshold);
            }
        }, iter: 300);
    }

    private static CountRange? Range(RangeAudit audit, CountModel model, string row, string column) => audit.Range(model.Find(new CountUnit("site", row, ""), column)!);

    private static CountModel Model((string Row, long Positive, long Negative, long Invalid)[] rows)
    {
        var model = new CountModel();
        CountVariable Shown(CountUnit unit, string measure, long value)
        {
            var variable = model.Add(unit, measure, value);
            variable.Published = true;
            return variable;
        }

        var columns = new List<CountVariable>[] { [], [], [] };
        foreach (var (row, positive, negative, invalid) in rows)
        {
            var unit = new CountUnit("site", row, "");
            CountVariable[] cells = [Shown(unit, "positive", positive), Shown(unit, "negative", negative), Shown(unit, "invalid", invalid)];
            for (var index = 0; index < 3; index++) columns[index].Add(cells[index]);
            model.Relate(Shown(unit, "runs", positive + negative + invalid), cells);
        }

        CountVariable[] totals = [.. columns.Select((column, index) => Shown(CountUnit.Program, $"total {index}", column.Sum(cell => cell.Value)))];
        for (var index = 0; index < 3; index++) model.Relate(totals[index], columns[index]);
        model.Relate(Shown(CountUnit.Program, "runs", totals.Sum(total => total.Value)), totals);
        return model;
    }
}
