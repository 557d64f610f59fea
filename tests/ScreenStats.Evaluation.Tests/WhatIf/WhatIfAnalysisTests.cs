using System.Text.Json;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Evaluation.Tests.Cadence;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Evaluation.WhatIf;

namespace ScreenStats.Evaluation.Tests.WhatIf;

public class WhatIfAnalysisTests
{
    private static readonly Tally Audited =
        new ProgramSketch().Runs(Outcome.Negative, 900, FollowUp.Agreed).Runs(Outcome.Negative, 9, FollowUp.Missed).Runs(Outcome.Positive, 90, FollowUp.Confirmed).Runs(Outcome.Positive, 10, FollowUp.Refuted).Tally();

    [Fact]
    public void Controls_start_at_figures_of_the_data_with_their_limits_and_say_so()
    {
        var findings = Evaluator.Evaluate(Audited, ExamplePrograms.Full);
        var start = findings.WhatIf.Positive.Starts.First(one => one.Measure == "sensitivity");

        start.FromData.Should().BeTrue();
        (start.Value, start.Lower, start.Upper).Should().Be((findings.Accuracy.Sensitivity.Estimate!.Value, findings.Accuracy.Sensitivity.Lower, findings.Accuracy.Sensitivity.Upper));
        start.At.Should().BeApproximately(start.Value, 0.0005, "as the control shows it");
        start.Source.Should().StartWith("these data: ");
        findings.WhatIf.Positive.AtStart.Sensitivity.Should().Be(start.At);
        findings.WhatIf.Positive.Starts.Where(one => one.Name == "Kit two").Select(one => (one.Measure, one.Value, one.Lower)).Should().Equal(
            ("prevalence", 0.004, 0.002), ("sensitivity", 0.8, null), ("specificity", 0.97, null));
    }

    [Fact]
    public void Without_data_they_start_at_what_is_stated_and_without_that_at_round_values_that_are_called_so()
    {
        var stated = Evaluator.Evaluate(new ProgramSketch().Tally(), ExamplePrograms.Full).WhatIf.Positive.Starts;
        stated.Take(3).Select(one => one.Value).Should().Equal(0.004, 61 / 97.0, 2391 / 2400.0);
        stated.Should().AllSatisfy(one => one.FromData.Should().BeFalse());

        var nothing = Evaluator.Evaluate(new ProgramSketch().Tally(), new ProgramSettings()).WhatIf.Positive.Starts;
        nothing.Select(one => (one.Measure, one.At)).Should().Equal(("prevalence", 0.005), ("sensitivity", 0.8), ("specificity", 0.995), ("days-between-screens", 7));
        nothing.Should().AllSatisfy(one => one.Source.Should().StartWith("a round value"));
    }

    [Fact]
    public void A_figure_outside_the_ends_of_its_control_starts_at_the_nearest_end_and_says_so()
    {
        var perfect = ExamplePrograms.Full with
        {
            Screens = [new ScreenSettings { Name = "Perfect", Sensitivity = new StatedAccuracy(0.1, null, null, null, null), Specificity = new StatedAccuracy(1, null, null, null, null) }],
            Prevalence = new PrevalenceSettings(0.7, null, null, "guess"),
        };
        var starts = Evaluator.Evaluate(new ProgramSketch().Tally(), perfect).WhatIf.Positive.Starts.Take(3).ToArray();
        starts.Select(one => one.At).Should().Equal(0.5, 0.2, 0.9999);
        starts.Should().AllSatisfy(one => one.Source.Should().EndWith("the control starts at its nearest end"));
    }

    [Fact]
    public void Where_small_counts_are_hidden_nothing_comes_from_the_data_whichever_way_it_is_asked_for()
    {
        var cadence = CadenceSketch.Ranged with { Participation = null, Planned = new() { Name = "weekly", EveryDays = 7 } };
        var open = new ProgramSettings { Cadence = cadence };
        var hiding = open with { Report = open.Report with { SuppressBelow = 5 } };
        WhatIfFindings Early(Tally tally) => Evaluator.Evaluate(tally, hiding).WhatIf;
        WhatIfFindings Late(Tally tally) => DisclosureControl.Apply(Evaluator.Evaluate(tally, open) with { Settings = hiding }).WhatIf;
        string Text(WhatIfFindings findings) => JsonSerializer.Serialize(findings.Positive) + JsonSerializer.Serialize(findings.Interval);

        var seldom = CadenceSketch.Program(everyDays: 9, confirmed: 3);
        var often = CadenceSketch.Program(everyDays: 4, refuted: 9);
        Text(Late(seldom)).Should().Be(Text(Early(seldom))).And.Be(Text(Early(often)));
        Early(often).OnlyStated.Should().BeTrue();
        Early(often).Interval.Participation.Should().Be(1, "what was done is not told");
        Text(Evaluator.Evaluate(seldom, open).WhatIf).Should().NotBe(Text(Evaluator.Evaluate(often, open).WhatIf), "else nothing is tested here");
    }

    [Fact]
    public void An_interval_gives_what_the_same_option_of_how_often_to_screen_gives()
    {
        var findings = Evaluator.Evaluate(CadenceSketch.Program(), new ProgramSettings { Cadence = CadenceSketch.Ranged });
        var weekly = findings.WhatIf.Interval.Grids.ToDictionary(grid => grid.Id, grid => grid, StringComparer.Ordinal);
        double Option(Evaluation.Cadence.Rows.CadenceMeasure measure) => findings.Cadence.Outcome("weekly", measure)!.Figure.Estimate!.Value;

        weekly["detection"].At(7, 0.6).Should().BeApproximately(Option(Evaluation.Cadence.Rows.CadenceMeasure.Detection), 1e-6);
        weekly["caught"].At(7, 0.6).Should().BeApproximately(Option(Evaluation.Cadence.Rows.CadenceMeasure.CaughtBeforeSpread), 1e-6);
    }

    [Fact]
    public void Other_courses_have_grids_over_days_alone_and_without_a_course_it_says_what_is_missing()
    {
        var byDay = CadenceSketch.Exact with { Course = new CourseSettings { Kind = CourseKind.ByDay, Days = [new(1, 0, 0), new(3, 0.6, 1), new(8, 0.7, 1), new(12, 0, 0)] } };
        var interval = Evaluator.Evaluate(CadenceSketch.Program(), new ProgramSettings { Cadence = byDay }).WhatIf.Interval;
        interval.Grids.Single(grid => grid.Id == "detection").Axes.Select(axis => axis.Id).Should().Equal("days-between-screens");
        interval.AtStart!.Sensitivity.Should().BeNull();
        interval.AtStart.SensitivityUndefined.Should().NotBeNull();

        var none = Evaluator.Evaluate(CadenceSketch.Program(), new ProgramSettings()).WhatIf.Interval;
        none.Grids.Should().BeEmpty();
        none.OutcomeTable.RowCount.Should().Be(0);
        none.Sentences.Should().ContainSingle().Which.Text.Should().Contain("states no course of the infection");
    }

    [Fact]
    public void Courses_of_viral_loads_have_their_figures_too()
    {
        var loads = CadenceSketch.Exact with { Course = new CourseSettings { Kind = CourseKind.ViralLoad, DetectionLimit = new StatedRange(5) } };
        var detection = Evaluator.Evaluate(CadenceSketch.Program(), new ProgramSettings { Cadence = loads }).WhatIf.Interval.Grids.Single(grid => grid.Id == "detection");
        detection.Values.Should().HaveCount(28);
        detection.Values[0].Should().BeGreaterThan(detection.Values[27]);
    }
}
