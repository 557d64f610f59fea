using CsCheck;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Positivity;

/// <summary>Positivity and the invalid-run rate: the same breakdowns, counted once.</summary>
public class RateTests
{
    private static readonly Grouping[] Partitions =
        [Grouping.Site, Grouping.Lot, Grouping.Operator, Grouping.Specimen, Grouping.Collection, Grouping.Period, Grouping.SiteAndPeriod];

    [Fact]
    public void Every_breakdown_counts_by_the_words_of_the_design()
    {
        var findings = Evaluator.Evaluate(Example().Tally(), new ProgramSettings());

        (findings.Positivity.Program.Events, findings.Positivity.Program.Trials).Should().Be((2, 6));
        (findings.InvalidRuns.Program.Events, findings.InvalidRuns.Program.Trials).Should().Be((3, 9));
        (findings.InvalidRuns.Inconclusive, findings.InvalidRuns.Invalid).Should().Be((1, 2));
        findings.Positivity.Sites.Select(row => (row.Level, row.Positives, row.Tests)).Should().Equal(("North", 1, 4), ("South", 1, 2));
        findings.Positivity.Lots.Select(row => (row.Level, row.Positives, row.Tests)).Should().Equal((Levels.None, 0, 1), ("L-1", 2, 5));
        findings.Positivity.Operators.Select(row => (row.Level, row.Tests)).Should().Equal((Levels.None, 5), ("op-7", 1));
        findings.Positivity.Specimens.Select(row => (row.Level, row.Tests)).Should().Equal((Levels.None, 5), ("nasal", 1));
        findings.Positivity.Collections.Should().BeEmpty("nothing is recorded of who collected");
        findings.Positivity.Periods.Select(row => (row.PeriodStart, row.Positives, row.Tests)).Should().Equal(
            (new DateOnly(2026, 1, 5), 1L, 4L), (new DateOnly(2026, 1, 12), 1L, 2L));
        findings.InvalidRuns.Sites.Select(row => (row.Level, row.Inconclusive, row.Invalid, row.Runs)).Should().Equal(("North", 1, 0, 5), ("South", 0, 2, 4));
    }

    [Fact]
    public void A_breakdown_is_a_table_of_its_own_rows_with_the_columns_of_the_design_first()
    {
        var findings = Evaluator.Evaluate(Example().Tally(), new ProgramSettings());

        var table = findings.Positivity.By(Grouping.Site);
        table.Select(row => row.Level).Should().Equal("North", "South");
        table.Columns.Take(13).Select(column => column.Name).Should().Equal(
            "by", "level", "period_start", "tests", "positives", "estimate", "lower", "upper", "method", "confidence", "widened_lower", "widened_upper", "design_effect");
        findings.InvalidRuns.By(Grouping.Period).Columns.Take(11).Select(column => column.Name).Should().Equal(
            "by", "level", "period_start", "runs", "inconclusive", "invalid", "estimate", "lower", "upper", "method", "confidence");
        var all = findings.Positivity.Tables.Single();
        (all.CellAt(0, 0).AsText, all.CellAt(0, 1).Kind, all.CellAt(0, 2).Kind).Should().Be(("program", CellKind.Empty, CellKind.Empty));
    }

    [Theory]
    [InlineData(ReportPeriod.Day, "2026-01-06,2026-01-08,2026-01-13,2026-02-03")]
    [InlineData(ReportPeriod.Week, "2026-01-05,2026-01-12,2026-02-02")]
    [InlineData(ReportPeriod.Month, "2026-01-01,2026-02-01")]
    public void Periods_start_where_the_program_file_says(ReportPeriod period, string starts)
    {
        var builder = new TallyCellsBuilder { Period = period };
        foreach (var day in new[] { 1, 3, 8, 29 }) builder.Add("p", Outcome.Negative, day: day);

        var rows = Evaluator.Evaluate(builder.Tally(), new ProgramSettings()).Positivity.Periods;

        string.Join(',', rows.Select(row => row.Key)).Should().Be(starts);
    }

    [Fact]
    public void The_highest_period_is_not_one_with_few_counts_where_there_is_another()
    {
        var sketch = new ProgramSketch().Runs(Outcome.Negative, 1000).Runs(Outcome.Positive, 10, FollowUp.Unverified)
            .Runs(Outcome.Negative, 1000, day: 7).Runs(Outcome.Positive, 20, FollowUp.Unverified, day: 7)
            .Runs(Outcome.Negative, 1, day: 14).Runs(Outcome.Positive, 1, FollowUp.Unverified, day: 14);

        Evaluator.Evaluate(sketch.Tally(), new ProgramSettings()).Positivity.Sentences[^1].Text
            .Should().StartWith("It was highest in the period from 2026-01-12: 20 of 1,020 valid tests");
    }

    [Fact]
    public void The_parts_of_every_breakdown_add_up_to_the_program_for_any_runs() => Programs.Sample(runs =>
    {
        var findings = Evaluator.Evaluate(Build(runs, site => site).Tally(), new ProgramSettings());
        foreach (var grouping in Partitions)
        {
            var positivity = findings.Positivity.By(grouping);
            if (positivity.Count > 0)
            {
                positivity.Sum(row => row.Tests).Should().Be(findings.Positivity.Program.Trials);
                positivity.Sum(row => row.Positives).Should().Be(findings.Positivity.Program.Events);
            }

            var invalid = findings.InvalidRuns.By(grouping);
            if (invalid.Count > 0)
            {
                invalid.Sum(row => row.Runs).Should().Be(runs.Length);
                invalid.Should().OnlyContain(row => row.Inconclusive + row.Invalid == row.Share.Events);
            }
        }

        foreach (var row in findings.Positivity.By(Grouping.SiteAndPeriod).Where(row => row.Tests > 0))
        {
            row.Share.WidenedLower.Should().BeLessThanOrEqualTo(row.Share.Lower!.Value);
            row.Share.WidenedUpper.Should().BeGreaterThanOrEqualTo(row.Share.Upper!.Value);
        }
    }, iter: 60, threads: 1);

    [Fact]
    public void Other_site_names_change_no_number() => Programs.Sample(runs =>
    {
        var before = Evaluator.Evaluate(Build(runs, site => site).Tally(), new ProgramSettings());
        var after = Evaluator.Evaluate(Build(runs, Renamed).Tally(), new ProgramSettings());

        after.Positivity.Program.Should().Be(before.Positivity.Program);
        after.InvalidRuns.Program.Should().Be(before.InvalidRuns.Program);
        foreach (var site in before.Positivity.Sites) after.Positivity.Sites.Single(row => row.Level == Renamed(site.Level)).Share.Should().Be(site.Share);
        after.Positivity.Lots.Should().Equal(before.Positivity.Lots);
        after.Persons.Program.Should().Be(before.Persons.Program);
        foreach (var site in before.Sites) after.Sites.Single(row => row.Site == Renamed(site.Site)).Runs.Should().Be(site.Runs);
    }, iter: 60, threads: 1);

    private static readonly Gen<(int Person, int Site, int Lot, int Day, int Outcome)[]> Programs = Gen.Select(
        Gen.Int[0, 12], Gen.Int[0, 3], Gen.Int[0, 2], Gen.Int[0, 40], Gen.Int[0, 9], (person, site, lot, day, outcome) => (person, site, lot, day, outcome)).Array[1, 80];

    private static TallyCellsBuilder Build((int Person, int Site, int Lot, int Day, int Outcome)[] runs, Func<string, string> name)
    {
        var builder = new TallyCellsBuilder();
        foreach (var run in runs)
        {
            var outcome = run.Outcome switch { < 6 => Outcome.Negative, 6 or 7 => Outcome.Positive, 8 => Outcome.Inconclusive, _ => Outcome.Invalid };
            var followUp = outcome is Outcome.Positive or Outcome.Inconclusive ? (run.Person % 2 == 0 ? FollowUp.Confirmed : FollowUp.Refuted) : FollowUp.None;
            builder.Add($"p{run.Person}", outcome, followUp, name($"site-{run.Site}"), run.Lot == 0 ? Levels.None : $"L-{run.Lot}", run.Day);
        }

        return builder;
    }

    private static string Renamed(string site) => (9 - site[^1] + '0') + "·" + site;

    private static TallyCellsBuilder Example() => new TallyCellsBuilder()
        .Add("a", Outcome.Negative)
        .Add("b", Outcome.Positive, FollowUp.Confirmed)
        .Add("c", Outcome.Negative, lot: Levels.None)
        .Add("d", Outcome.Inconclusive, FollowUp.Refuted)
        .Add("a", Outcome.Negative, day: 7, by: "op-7", specimen: Specimen.Nasal)
        .Add("e", Outcome.Negative, site: "South", day: 6)
        .Add("f", Outcome.Positive, FollowUp.Refuted, "South", day: 7)
        .Add("e", Outcome.Invalid, site: "South", day: 7)
        .Add("e", Outcome.Invalid, site: "South", day: 8);
}
