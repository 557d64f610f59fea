using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Rules;
using ScreenStats.Evaluation.Disclosure.Tables;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Disclosure;

public class DisclosureControlTests
{
    public static TheoryData<string> Programs => [.. ExamplePrograms.All.Select(program => program.Name)];

    [Theory]
    [MemberData(nameof(Programs))]
    public void Without_a_threshold_nothing_changes(string name)
    {
        var findings = ExamplePrograms.Evaluated(name);

        DisclosureControl.Apply(findings).Should().BeSameAs(findings);
        findings.Disclosure.Should().BeNull();
    }

    [Theory]
    [MemberData(nameof(Programs))]
    public void Every_column_of_a_released_table_says_what_it_stands_for(string name)
    {
        foreach (var table in ExamplePrograms.Evaluated(name).Tables)
        {
            if (TableRules.Of(table.Id) is not { } rule) continue;
            for (var row = 0; row < table.RowCount; row++)
            {
                var columns = rule.Columns(Row.Of(table, row));
                table.Columns.Where(column => !columns.ContainsKey(column.Name)).Select(column => $"{table.Id}.{column.Name}").Should().BeEmpty();
            }
        }
    }

    [Theory]
    [MemberData(nameof(Programs))]
    public void No_small_count_stands_in_a_table_or_a_sentence(string name)
    {
        var findings = ExamplePrograms.Evaluated(name);
        foreach (var threshold in (int[])[2, 5, 11, 40])
        {
            var released = DisclosureControl.Apply(findings with { Settings = Settings(findings.Settings, threshold) });

            foreach (var table in released.Tables)
            {
                for (var row = 0; row < table.RowCount; row++)
                {
                    for (var column = 0; column < table.Columns.Length; column++)
                    {
                        // Runs of one person are the name of a line, not a count of people.
                        if (table.Columns[column].Unit == Unit.Count && (table.Id, table.Columns[column].Name) is not ("participation", "value") && table.CellAt(row, column) is { Kind: CellKind.Count } cell)
                            (cell.AsCount == 0 || cell.AsCount >= threshold).Should().BeTrue($"{table.Id}.{table.Columns[column].Name} shows {cell.AsCount} with {threshold}");
                    }
                }
            }

            foreach (var figure in released.Sentences.SelectMany(sentence => sentence.Figures).Where(figure => figure.Value.Kind == CellKind.Count && figure.Id is not ("yield.episodeDays" or "accuracy.stratumCount" or "kits.deviceCount" or "comparison.levelCount" or "whatIf.interval.days")))
                (figure.Value.AsCount == 0 || figure.Value.AsCount >= threshold).Should().BeTrue($"{figure.Id} says {figure.Value.AsCount} with {threshold}");
        }
    }

    [Fact]
    public void A_large_program_still_shows_its_large_counts_and_its_flag()
    {
        var findings = Evaluator.Evaluate(ExamplePrograms.FaultyLotAndClumsySite().Tally(), Settings(new ProgramSettings(), 5));

        var released = DisclosureControl.Apply(findings);

        released.Disclosure!.NotProtected.Should().Be(0);
        released.Disclosure.Shows(findings.Positivity.Program, "Estimate").Should().BeTrue();
        released.Answers.Questions.SelectMany(answer => answer.Sentences).Should().NotBeEmpty();
        released.Answers.NextSteps.Select(step => step.Id).Should().Contain(findings.Answers.NextSteps[0].Id);
    }

    [Fact]
    public void Limits_in_coarse_steps_hold_the_exact_ones_and_are_not_them()
    {
        var findings = Evaluator.Evaluate(ExamplePrograms.FaultyLotAndClumsySite().Tally(), Settings(new ProgramSettings(), 5));
        var released = DisclosureControl.Apply(findings).Disclosure!;
        var (shown, tried) = (0, 0);
        foreach (var share in new[] { findings.Positivity.Program, findings.InvalidRuns.Program, findings.PredictiveValue.Observed })
        {
            tried++;
            if (released.Coarse(share, "WidenedLower") is not { } lower || released.Coarse(share, "WidenedUpper") is not { } upper) continue;
            shown++;
            lower.Should().BeLessThanOrEqualTo(share.WidenedLower!.Value + 1e-12);
            upper.Should().BeGreaterThanOrEqualTo(share.WidenedUpper!.Value - 1e-12);
            lower.Should().NotBe(share.WidenedLower.Value);
            released.Shows(share, "WidenedLower").Should().BeFalse();
        }

        shown.Should().BeGreaterThan(0);
        released.Coarse(findings.Positivity.Sites[0].Share, "WidenedLower").Should().BeNull("limits of a site would tell of its weeks");
    }

    [Fact]
    public void Of_a_smallest_group_below_the_threshold_only_that_is_said()
    {
        var risk = DisclosureControl.Apply(Evaluator.Evaluate(new ProgramSketch().Runs(Outcome.Negative, 400).Runs(Outcome.Negative, 3, site: "South").Tally(), Settings(new ProgramSettings(), 5))).Disclosure!.Risk;

        if (risk is not null) (risk.SmallestGroup, risk.LargestRisk, risk.SmallestGroupHidden).Should().Be((null, null, true));
        DisclosureControl.Apply(Evaluator.Evaluate(new ProgramSketch().Runs(Outcome.Negative, 400).Runs(Outcome.Negative, 30, site: "South").Tally(), Settings(new ProgramSettings(), 5))).Disclosure!.Risk!.SmallestGroup.Should().Be(30);
    }

    [Fact]
    public void A_lot_that_only_one_site_uses_is_hidden_with_it()
    {
        var sketch = new ProgramSketch().Runs(Outcome.Negative, 400, lot: "A1").Runs(Outcome.Positive, 3, FollowUp.Refuted, lot: "A1")
            .Runs(Outcome.Negative, 500, site: "South", lot: "B1").Runs(Outcome.Positive, 30, FollowUp.Refuted, "South", "B1")
            .Runs(Outcome.Negative, 600, site: "East", lot: "B2").Runs(Outcome.Positive, 40, FollowUp.Refuted, "East", "B2")
            .Runs(Outcome.Negative, 600, site: "East", lot: "B3").Runs(Outcome.Positive, 20, FollowUp.Refuted, "East", "B3");
        var model = DisclosureControl.Apply(Evaluator.Evaluate(sketch.Tally(), Settings(new ProgramSettings(), 5))).Disclosure!.Model;

        // North and A1 are the same runs, and so are South and B1, East and B2 with B3: what one name hides the other may not tell.
        bool Hidden(string by, string level) => model.Find(new CountUnit(by, level, ""), "positives")!.Hidden;
        Hidden("site", "North").Should().BeTrue();
        Hidden("lot", "A1").Should().BeTrue();
        (Hidden("site", "South") == Hidden("lot", "B1")).Should().BeTrue();
        (Hidden("site", "East") == (Hidden("lot", "B2") || Hidden("lot", "B3"))).Should().BeTrue();
    }

    [Fact]
    public void What_is_highest_of_all_is_not_said_where_it_would_bound_a_hidden_count()
    {
        // 22 of 1,022 highest: of the 407 tests of the first week at most 8 would be positive.
        var sketch = new ProgramSketch().Runs(Outcome.Negative, 400).Runs(Outcome.Positive, 7, FollowUp.Refuted).Runs(Outcome.Negative, 1000, day: 7).Runs(Outcome.Positive, 22, FollowUp.Refuted, day: 7);
        foreach (var day in new[] { 14, 21, 28 }) sketch = sketch.Runs(Outcome.Negative, 1000, day: day).Runs(Outcome.Positive, 15, FollowUp.Refuted, day: day);
        var findings = Evaluator.Evaluate(sketch.Tally(), Settings(new ProgramSettings(), 11));
        findings.Positivity.Sentences.Should().Contain(sentence => sentence.Text.Contains("highest"));

        var released = DisclosureControl.Apply(findings).Disclosure!.Veil(findings.Positivity);
        released.Sentences.Should().NotContain(sentence => sentence.Text.Contains("highest")).And.Contain(sentence => sentence.Text.Contains("74 of 4,474"));
    }

    private static ProgramSettings Settings(ProgramSettings settings, int threshold) => settings with { Report = settings.Report with { SuppressBelow = threshold } };
}
