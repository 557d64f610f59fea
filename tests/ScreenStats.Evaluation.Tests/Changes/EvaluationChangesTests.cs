using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Changes;
using ScreenStats.Evaluation.Changes.Differences;
using ScreenStats.Evaluation.Changes.Rows;
using ScreenStats.Evaluation.Changes.Snapshots;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Evaluation.Tests.Changes;

/// <summary>What has changed between two evaluations: what is compared so that no run stands on both sides.</summary>
public class EvaluationChangesTests
{
    private const int Week = 7;
    private static readonly AnswerWording Wording = new(["D-0719", "D-0722", "1", "2", "10", "Kit 2", "Kit 3"]);

    [Fact]
    public void Spans_that_share_no_day_are_compared_as_they_are()
    {
        var row = Figure(Since(Weeks(0, 3), Weeks(4, 7)), ChangeMeasure.PositivePredictiveValue);

        row.Basis.Should().Be(ChangeBasis.SeparateSpans);
        (row.FromEvents, row.FromTrials, row.ToEvents, row.ToTrials).Should().Be((32, 80, 64, 112));
        var expected = ProportionDifference.Newcombe(64, 112, 32, 80);
        row.Estimate.Should().BeApproximately(expected.Value!.Value, 1e-15);
        row.Lower.Should().BeApproximately(expected.Lower!.Value, 1e-15);
        row.Upper.Should().BeApproximately(expected.Upper!.Value, 1e-15);
    }

    [Fact]
    public void An_evaluation_that_holds_the_earlier_one_is_compared_by_what_was_added()
    {
        var row = Figure(Since(Weeks(0, 3), Weeks(0, 7)), ChangeMeasure.PositivePredictiveValue);

        row.Basis.Should().Be(ChangeBasis.AddedSince);
        (row.EarlierEvents, row.EarlierTrials, row.LaterEvents, row.LaterTrials).Should().Be((32, 80, 96, 192));
        (row.FromEvents, row.FromTrials, row.ToEvents, row.ToTrials).Should().Be((32, 80, 64, 112));
        row.Lower.Should().BeApproximately(ProportionDifference.Newcombe(64, 112, 32, 80).Lower!.Value, 1e-15);
        // Not the limits of the whole values: of two groups that share runs these are not limits at all.
        row.Lower.Should().NotBeApproximately(ProportionDifference.Newcombe(96, 192, 32, 80).Lower!.Value, 1e-3);
    }

    [Fact]
    public void The_same_holds_where_days_before_the_earlier_ones_were_added_too()
    {
        var row = Figure(Since(Weeks(2, 3), Weeks(0, 7)), ChangeMeasure.Positivity);

        row.Basis.Should().Be(ChangeBasis.AddedSince);
        row.ToTrials.Should().Be(row.LaterTrials - row.EarlierTrials);
    }

    [Fact]
    public void Of_spans_that_overlap_the_periods_that_only_one_has_are_compared()
    {
        var changes = Since(Weeks(0, 4), Weeks(3, 7));
        var row = Figure(changes, ChangeMeasure.PositivePredictiveValue);

        changes.Relation.Should().Be(SpanRelation.Overlapping);
        changes.SharedDays.Should().Be(8);
        row.Basis.Should().Be(ChangeBasis.PeriodsNotShared);
        (row.FromEvents, row.FromTrials, row.ToEvents, row.ToTrials).Should().Be((24, 60, 48, 84));
    }

    [Fact]
    public void What_is_not_counted_by_period_has_no_limits_where_spans_overlap_and_the_reason_is_given()
    {
        var changes = Since(Weeks(0, 4), Weeks(3, 7));
        foreach (var row in changes.Figures.Where(row => row.By == Grouping.Site))
        {
            row.Basis.Should().Be(ChangeBasis.WholeValues);
            (row.Lower, row.Upper, row.WidenedLower, row.WidenedUpper).Should().Be((null, null, null, null));
            row.LowerUndefined.Should().Contain("shared");
            row.Estimate.Should().Be(row.LaterEstimate - row.EarlierEstimate);
        }
    }

    [Fact]
    public void Where_a_count_fell_the_periods_after_the_earlier_last_day_take_the_place_of_what_was_added()
    {
        // Nine confirmed positives of the first week turned out to be refuted.
        var later = Weeks(0, 7, (0, -9, +9));
        var changes = Since(Weeks(0, 3), later);
        var row = Figure(changes, ChangeMeasure.PositivePredictiveValue);

        (changes.SharedPeriods, changes.SharedPeriodsFallen, changes.SharedPeriodsRisen).Should().Be((3, 1, 0), "the earlier one ends on the Monday of its last week, which is no whole period");
        row.Basis.Should().Be(ChangeBasis.PeriodsSince);
        (row.FromEvents, row.FromTrials, row.ToEvents, row.ToTrials).Should().Be((32, 80, 64, 112));
        changes.Figures.Single(other => other is { By: Grouping.Site, Measure: ChangeMeasure.RefutedPerValidTest }).Basis.Should().Be(ChangeBasis.WholeValues, "whose counts fell is not known");
        changes.Figures.Single(other => other is { By: Grouping.Site, Measure: ChangeMeasure.InvalidRuns }).Basis.Should().Be(ChangeBasis.AddedSince, "none of these fell");
    }

    [Fact]
    public void Where_a_count_of_a_site_fell_there_are_no_limits()
    {
        var changes = Since(Weeks(0, 3, (0, 0, 70)), Weeks(0, 4));
        var row = changes.Figures.Single(other => other is { By: Grouping.Site, Measure: ChangeMeasure.RefutedPerValidTest });

        row.Basis.Should().Be(ChangeBasis.WholeValues);
        row.LowerUndefined.Should().Contain("fell");
    }

    [Fact]
    public void The_same_days_have_differences_and_no_limits()
    {
        var changes = Since(Weeks(0, 3), Weeks(0, 3, (1, 5, 0)));
        var row = Figure(changes, ChangeMeasure.PositivePredictiveValue);

        changes.Relation.Should().Be(SpanRelation.SameDays);
        changes.SharedPeriodsRisen.Should().Be(1);
        row.Basis.Should().Be(ChangeBasis.WholeValues);
        row.Estimate.Should().BeApproximately((37.0 / 85) - (32.0 / 80), 1e-15);
        row.LowerUndefined.Should().Contain("same days");
    }

    [Fact]
    public void Flags_are_new_still_there_closed_or_gone()
    {
        var changes = Since(Flagged("A1", "B2"), Flagged("A1", "C3", "D4"));

        changes.Flags.Where(row => row.By == Grouping.Lot).Select(row => (row.Level, row.Change)).Should().Equal(
            ("C3", FlagChange.NewFlag), ("A1", FlagChange.StillFlagged), ("B2", FlagChange.ClosedFlag), ("D4", FlagChange.New));
        (changes.NewFlags, changes.StillFlagged, changes.ClosedFlags, changes.FlaggedAndGone).Should().Be((1, 1, 1, 0));
        Since(Flagged("A1", "D4"), Flagged("A1", "B2")).Flags.Single(row => row.Level == "D4").Change.Should().Be(FlagChange.Gone);
    }

    [Fact]
    public void The_whole_values_differ_by_the_share_of_the_new_runs_of_what_was_added()
    {
        var row = Figure(Since(Weeks(0, 3), Weeks(0, 7)), ChangeMeasure.Positivity);

        (row.LaterEstimate - row.EarlierEstimate).Should().BeApproximately((double)row.ToTrials!.Value / row.LaterTrials!.Value * row.Estimate!.Value, 1e-15);
    }

    [Fact]
    public void Settings_that_are_not_the_same_are_told()
    {
        var changes = Findings(Weeks(0, 7)).Since(FindingsSnapshot.Of(Evaluator.Evaluate(Weeks(0, 3), new ProgramSettings { Report = new ReportSettings { Confidence = 0.9 } }))).Changes!;

        changes.Settings.Should().ContainSingle().Which.Should().Be(new SettingRow("confidence", "Confidence of the limits", "0.9", "0.95"));
        Figure(changes, ChangeMeasure.Positivity).Confidence.Should().Be(0.95, "limits are drawn from counts, at the confidence of this evaluation");
    }

    [Theory]
    [InlineData("Of 175 runs 69 were: 39.4 % (18.8 % to 64.7 %).", "Of 2,204 runs 5 were: 0.02 % (0 % to 1.5 %).", true)]
    [InlineData("It changed by -6.02 % a week.", "It changed by +12 % a week.", true)]
    [InlineData("Lot A was 3 of 4.", "Lot B was 3 of 4.", false)]
    [InlineData("Lot D-0719 stands out.", "Lot D-0722 stands out.", false)]
    [InlineData("Site 1 stands out.", "Site 2 stands out.", false)]
    [InlineData("The runs of site 10 were 3 of 10.", "The runs of site 10 were 10 of 2.", true)]
    [InlineData("With Kit 2 it was 3 of 4.", "With Kit 3 it was 3 of 4.", false)]
    [InlineData("With Kit 2 it was 2 of 4.", "With Kit 2 it was 3 of 4.", true)]
    [InlineData("Up to 2026-01-05 it was so.", "Up to 2026-11-15 it was so.", true)]
    [InlineData("The option is none.", "The option is weekly.", false)]
    public void An_answer_says_something_else_only_where_its_words_are_other_ones(string before, string now, bool same) =>
        (Wording.Of(before) == Wording.Of(now)).Should().Be(same);

    [Fact]
    public void An_earlier_evaluation_that_ends_later_is_refused()
    {
        var act = () => Since(Weeks(0, 7), Weeks(0, 3));
        act.Should().Throw<NotComparableException>().WithMessage("*up to 2026-02-23*only to 2026-01-26*");
    }

    [Fact]
    public void Another_programs_evaluation_is_refused()
    {
        var act = () => Since(new ProgramSketch().Runs(Outcome.Negative, 50, site: "Elsewhere").Tally(), Weeks(0, 3));
        act.Should().Throw<NotComparableException>().WithMessage("*no site of this program*");
    }

    [Fact]
    public void The_same_data_are_refused()
    {
        var act = () => Since(Weeks(0, 3), Weeks(0, 3));
        act.Should().Throw<NotComparableException>().WithMessage("*same data*");
    }

    [Theory]
    [InlineData(0, 5, "*shows small counts*")]
    [InlineData(4, 5, "*hides counts below 4*those below 5*")]
    [InlineData(5, 5, null)]
    [InlineData(11, 5, null)]
    [InlineData(5, 0, null)]
    [InlineData(0, 0, null)]
    public void Where_this_report_hides_small_counts_the_earlier_one_must_hide_as_many(int before, int now, string? refused)
    {
        var earlier = FindingsSnapshot.Of(Findings(Weeks(0, 3), before));
        var act = () => Findings(Weeks(0, 7), now).Since(earlier);
        if (refused is null) act.Should().NotThrow();
        else act.Should().Throw<NotComparableException>().WithMessage(refused);
    }

    [Fact]
    public void Findings_without_an_earlier_evaluation_have_no_changes_and_no_question_about_them()
    {
        var findings = Findings(Weeks(0, 3));

        findings.Changes.Should().BeNull();
        findings.Answers.Questions.Should().NotContain(answer => answer.Id == "what-has-changed");
        findings.Tables.Should().NotContain(table => table.Id.StartsWith("change", StringComparison.Ordinal));
    }

    [Fact]
    public void The_answer_gives_both_values_the_difference_and_what_became_of_flags()
    {
        var answer = Findings(Weeks(0, 7)).Since(FindingsSnapshot.Of(Findings(Weeks(0, 3)))).Answers.Questions[^1];

        answer.Question.Should().Be("What has changed since 2026-01-26?");
        answer.InOneSentence.Split(' ').Should().HaveCountLessThanOrEqualTo(45);
        answer.InOneSentence.Should().Contain("Confirmed of conclusive positives: 40.0 % before, 50.0 % now; what was added since (64 of 112) differs by +17.1 points");
    }

    [Fact]
    public void Every_figure_of_its_sentences_is_where_its_path_says()
    {
        foreach (var (earlier, later) in new[] { (Weeks(0, 3), Weeks(0, 7)), (Weeks(0, 3), Weeks(4, 7)), (Weeks(0, 4), Weeks(3, 7)), (Flagged("A1", "B2"), Flagged("A1", "C3", "D4")) })
        {
            var findings = Findings(later).Since(FindingsSnapshot.Of(Findings(earlier)));
            foreach (var figure in findings.Changes!.Sentences.Concat(findings.Answers.Questions[^1].Sentences).Append(findings.Answers.Questions[^1].Brief).SelectMany(sentence => sentence.Figures))
                FigureLookup.Find(findings, figure.Id).Should().NotBeNull(figure.Id);
        }
    }

    private static ChangeFindings Since(Tally earlier, Tally later) => Findings(later).Since(FindingsSnapshot.Of(Findings(earlier))).Changes!;

    private static Findings Findings(Tally tally, int threshold = 0) => Evaluator.Evaluate(tally, new ProgramSettings { Report = new ReportSettings { SuppressBelow = threshold } });

    private static ChangeRow Figure(ChangeFindings changes, ChangeMeasure measure) => changes.Figures.Single(row => row.By == Grouping.Program && row.Measure == measure);

    // Mondays of weeks first to last: in weeks 0 to 3 8 of 20 positives are confirmed, later 16 of 28; changed are confirmed and refuted ones of a week.
    private static Tally Weeks(int first, int last, (int Week, int Confirmed, int Refuted)? changed = null)
    {
        var sketch = new ProgramSketch();
        for (var week = first; week <= last; week++)
        {
            var (confirmed, refuted) = week <= 3 ? (8, 12) : (16, 12);
            if (changed is { } one && one.Week == week) (confirmed, refuted) = (Math.Max(0, confirmed + one.Confirmed), Math.Max(0, refuted + one.Refuted));
            sketch.Runs(Outcome.Negative, 400, day: week * Week).Runs(Outcome.Positive, confirmed, FollowUp.Confirmed, day: week * Week)
                .Runs(Outcome.Positive, refuted, FollowUp.Refuted, day: week * Week).Runs(Outcome.Invalid, 4, day: week * Week);
        }

        return sketch.Tally();
    }

    // Every lot named has 1,000 runs at one site in the first week; those in flagged order have many refuted positives.
    private static Tally Flagged(params string[] lots)
    {
        var sketch = new ProgramSketch();
        foreach (var lot in new[] { "A1", "B2", "C3", "E5", "F6", "G7", "H8" }.Concat(lots.Contains("D4") ? ["D4"] : []))
        {
            sketch.Runs(Outcome.Negative, 1_000, lot: lot).Runs(Outcome.Positive, 5, FollowUp.Confirmed, lot: lot)
                .Runs(Outcome.Positive, lots.Contains(lot) && lot != "D4" ? 60 : 2, FollowUp.Refuted, lot: lot);
        }

        return sketch.Runs(Outcome.Negative, 10, day: lots.Contains("C3") ? 1 : 0).Tally();
    }
}
