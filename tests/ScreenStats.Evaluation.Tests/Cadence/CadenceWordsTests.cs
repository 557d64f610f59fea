using System.Collections.Immutable;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Answers;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Cadence.Words;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Cadence;

public class CadenceWordsTests
{
    private static readonly CadenceFindings Ranged = CadenceSketch.Program().Cadence(CadenceSketch.Ranged);

    [Theory]
    [InlineData(0.95, 0.05, "The option to choose is \"weekly\", in 95.0 % of the draws", "The option to choose is \"weekly\", in 95.0 % of the draws: ")]
    [InlineData(0.8, 0.2, "The option to choose is \"weekly\", in 80.0 % of the draws", "The option to choose is \"weekly\", in 80.0 % of the draws: ")]
    [InlineData(0.65, 0.35, "The option to choose is likely \"weekly\" (65.0 % of the draws over all that is uncertain; \"daily\" 35.0 %)", "The option to choose is likely \"weekly\", in 65.0 % of the draws: ")]
    [InlineData(0.5, 0.4, "The option to choose is likely \"weekly\"", "The option to choose is likely \"weekly\", in 50.0 % of the draws: ")]
    [InlineData(0.42, 0.4, "No option stands out: by the central figures \"weekly\" comes first (42.0 % of the draws over all that is uncertain), hardly before \"daily\" (40.0 %).", "No option stands out: \"weekly\" comes first (42.0 % of the draws), hardly before \"daily\"; ")]
    [InlineData(0.3, 0.6, "No option stands out: by the central figures \"weekly\" comes first (30.0 % of the draws over all that is uncertain), but \"daily\" does in more of the draws (60.0 %).", "No option stands out: \"weekly\" comes first (30.0 % of the draws), but \"daily\" in more (60.0 %); ")]
    public void How_sure_the_choice_is_stands_in_the_first_sentence_in_three_bands(double own, double other, string words, string brief)
    {
        var findings = Chosen("weekly", ("weekly", own), ("daily", other));
        findings.Sentences[0].Text.Should().StartWith(words);
        findings.Sentences[1].Text.Should().Contain("\"weekly\" removes");
        Opening(findings).InOneSentence.Should().StartWith(brief).And.MatchRegex(@"with infection as assumed it removes \S+ infectious days outside isolation in \S+ days \(95 % interval \S+ to \S+\) for").And.NotContain("more screening adds less");
    }

    [Theory]
    [InlineData(0.95, "No way of screening pays by the rule of the program file")]
    [InlineData(0.6, "Likely no way of screening pays")]
    [InlineData(0.4, "No option stands out: by the central figures no way of screening pays")]
    public void No_screening_has_the_same_bands(double own, string words) =>
        Chosen("none", ("none", own), ("weekly", 1 - own)).Sentences[0].Text.Should().StartWith(words).And.Contain("of the draws");

    [Fact]
    public void On_a_tie_the_less_frequent_option_is_named()
    {
        // A price at which one more step pays by next to nothing.
        var step = Ranged.Steps.First(one => one.Leads && one.From == "weekly");
        var (screens, gain) = (step.MoreScreens.Estimate!.Value, step.Gain.Estimate!.Value);
        CadenceFindings At(double part) => CadenceSketch.Program().Cadence(CadenceSketch.Ranged with { Worthwhile = 1_000 * part * gain / screens });
        var tied = At(0.999);
        tied.Leading!.Option.Should().Be(step.To);
        tied.Sentences[0].Text.Should().StartWith("No option stands out").And.EndWith("on such a tie take the less frequent, \"weekly\".");
        At(0.6).Sentences[0].Text.Should().NotContain("tie");
    }

    [Fact]
    public void Infectious_days_are_those_outside_isolation_with_days_off_and_hold_those_of_infections_averted()
    {
        var leading = Ranged.Leading!;
        Ranged.Text().Should().Contain("infectious days outside isolation, days off included").And.NotContain("days at work");
        double Of(string option, CadenceMeasure measure) => Ranged.Value(option, measure);
        var (removed, share, averted) = (Of(leading.Option, CadenceMeasure.InfectiousDaysRemoved), Of(leading.Option, CadenceMeasure.ShareRemoved), Of(leading.Option, CadenceMeasure.DaysOfAverted));
        averted.Should().BeGreaterThan(0).And.BeLessThan(removed);
        // Every infection has as many infectious days without screening: those averted have their part of them.
        var all = CadenceSketch.Program().Cadence(CadenceSketch.Ranged with { BroughtIn = new StatedRange(1) });
        all.Value(leading.Option, CadenceMeasure.DaysOfAverted).Should().BeApproximately(0, 1e-9);
        var each = all.Value("daily", CadenceMeasure.InfectiousDaysRemoved) / all.Value("daily", CadenceMeasure.ShareRemoved) * all.Value("daily", CadenceMeasure.Detection) / all.Value("daily", CadenceMeasure.TruePositives);
        averted.Should().BeApproximately(Of(leading.Option, CadenceMeasure.InfectionsAverted) * each, 1e-6 * averted);
        removed.Should().BeLessThan(removed / share);
        Ranged.Text().Should().Contain("to which " + Rounding.Print(Cell.Number(averted), Unit.Ratio) + " of those days belong");
    }

    [Fact]
    public void What_is_away_before_it_spreads_is_told_with_limits_and_beside_what_symptoms_do_alone()
    {
        var without = Ranged.Outcome("none", CadenceMeasure.CaughtBeforeSpread)!.Figure.Estimate!.Value;
        without.Should().BeGreaterThan(0);
        Ranged.Sentences[1].Text.Should().MatchRegex(@"% of infections \([0-9.]+ % to [0-9.]+ %\) are away before they can be passed on, [0-9.]+ % without any screening\.$")
            .And.EndWith(", " + Rounding.Print(Cell.Number(without), Unit.Proportion) + " without any screening.");
    }

    [Fact]
    public void Options_that_count_weekends_are_named_where_nobody_was_screened_then()
    {
        const string Words = "count Saturdays and Sundays, on which nobody was screened in the data";
        Weekends(0).Should().Contain("\"twice-weekly\", \"every-second-day\" and \"daily\" " + Words);
        Weekends(0.004).Should().Contain("on which hardly anybody was screened in the data");
        Weekends(0.1).Should().NotContain("Saturdays");
        var weekdays = new CadenceOptionSettings { Name = "every working day", Weekdays = [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday] };
        var kept = CadenceSketch.Program().Cadence(CadenceSketch.Ranged with { Options = [CadenceWords.Usual[0], CadenceWords.Usual[3], weekdays] });
        Again(kept with { Inputs = kept.Inputs with { AtWeekends = 0 } }).Text().Should().NotContain("Saturdays", "a week between screens can keep to working days");
        // The sketch has its runs on one weekday, every week.
        Ranged.Inputs.AtWeekends.Should().BeOneOf(0, 1);

        static string Weekends(double share) => Again(Ranged with { Inputs = Ranged.Inputs with { AtWeekends = share } }).Text();
    }

    [Fact]
    public void All_assumptions_tell_which_options_may_be_the_one_to_choose()
    {
        var seldom = Ranged.Swings[^1] with { OptionAtLower = "monthly", OptionAtUpper = "daily" };
        Ranged.Swings.Length.Should().BeGreaterThan(3);
        Again(Ranged with { Swings = [.. Ranged.Swings[..^1], seldom] }).Text().Should().MatchRegex("the option to choose is one of [^.]*\"monthly\"[^.]*\\.");
    }

    [Fact]
    public void Where_every_site_has_a_plan_of_its_own_no_option_is_the_planned_one()
    {
        var weekly = CadenceWords.Usual[3];
        var stated = CadenceSketch.Exact with { Planned = CadenceWords.Usual[4] };
        CadenceSketch.Program().Cadence(stated).Options.Should().ContainSingle(option => option.IsPlanned);
        CadenceSketch.Program().Cadence(stated with { PlannedAt = [new SitePlanSettings(["elsewhere"], weekly)] }).Options.Should().ContainSingle(option => option.IsPlanned);
        CadenceSketch.Program().Cadence(stated with { PlannedAt = [new SitePlanSettings(["*"], weekly)] }).Options.Should().NotContain(option => option.IsPlanned);
        var other = stated with { Planned = new CadenceOptionSettings { Name = "every 5 days", EveryDays = 5 }, PlannedAt = [new SitePlanSettings(["*"], weekly)] };
        CadenceSketch.Program().Cadence(other).Options.Should().NotContain(option => option.Option == "every 5 days", "it holds nowhere");
    }

    [Fact]
    public void One_person_and_one_day_are_no_people_and_days()
    {
        var text = CadenceSketch.Program().Cadence(CadenceSketch.Ranged with { People = 1, Days = 1 }).Text();
        text.Should().NotContain("1 people").And.NotContain("1 days ");
    }

    [Theory]
    [InlineData(1_566.3, "1,600")]
    [InlineData(94.1, "94")]
    [InlineData(99.7, "100")]
    [InlineData(4.65, "4.7")]
    [InlineData(0.3912, "0.39")]
    [InlineData(0, "0")]
    [InlineData(-268.4, "-270")]
    [InlineData(3, "3")]
    public void A_limit_that_was_drawn_has_two_digits(double value, string words) => Rounding.Print(Cell.Number(value), Unit.DrawnLimit).Should().Be(words);

    [Fact]
    public void A_limit_close_to_its_figure_keeps_its_digits()
    {
        var wide = CadenceFigures.Of("x", new EstimateFinding(268, null, 94.1, 1_566, "m", 0.95), Unit.Ratio);
        wide.Select(figure => Rounding.Print(figure.Value, figure.Unit)).Should().Equal("268", "94", "1,600");
        var narrow = CadenceFigures.Of("x", new EstimateFinding(268, null, 266, 271, "m", 0.95), Unit.Ratio);
        narrow.Select(figure => Rounding.Print(figure.Value, figure.Unit)).Should().Equal("268", "266", "271");
    }

    private static CadenceFindings Chosen(string option, params (string Option, double Share)[] shares)
    {
        // Screens that are worth something by themselves: no less frequent option comes near, so that the shares alone decide.
        var rows = shares.Select(one => new CadenceChoice($"{one.Option}|as-stated", one.Option, CadenceBasis.AsStated, true, one.Share, one.Option == option)).ToImmutableArray();
        return Again(Ranged with { Worthwhile = -1e6, Choices = rows, Options = [.. Ranged.Options.Select(one => one with { IsChosen = one.Option == option, Leads = one.Option == option })] });
    }

    private static CadenceFindings Again(CadenceFindings findings) => findings with { Sentences = CadenceSentences.Of(findings) };

    private static Answer Opening(CadenceFindings findings) => HowOften.Of(findings);
}
