using System.Collections;
using System.Reflection;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Cadence;

public class CadenceExtremesTests
{
    private static readonly CadenceSettings WithoutIncidence = CadenceSketch.Exact with { Incidence = null };

    [Fact]
    public void A_program_without_the_section_gets_what_its_data_give_and_is_told_what_more_would_allow()
    {
        var findings = Sound(CadenceSketch.Program().Cadence());
        findings.Value("weekly", CadenceMeasure.Screens).Should().BeApproximately(40 * 91 / 7.0, 1e-9);
        findings.Value("weekly", CadenceMeasure.FalseAlarms).Should().BeGreaterThan(0);
        findings.Undefined("weekly", CadenceMeasure.Detection).Should().Be("the course of an infection is not stated");
        findings.Undefined("weekly", CadenceMeasure.InfectiousDaysRemoved).Should().Be("the course of an infection is not stated");
        findings.Assumption("incidence").Value.Should().BeNull();
        findings.Assumption("found-per-person-day").Value.Should().BeGreaterThan(0);
        findings.Leading!.Option.Should().Be("weekly", "that is what was done");
        findings.Missing.Should().Contain(text => text.StartsWith("course")).And.Contain(text => text.StartsWith("worthwhile"));
        findings.Choices.Should().BeEmpty();
        findings.Swings.Should().BeEmpty();
        findings.Text().Should().Contain("is not known: the course of an infection is not stated");
    }

    [Fact]
    public void An_empty_program_says_so()
    {
        var findings = Sound(new ProgramSketch().Tally().Cadence(CadenceSketch.Ranged with { People = null }));
        findings.Sentences.Single().Text.Should().StartWith("Nobody was tested");
        findings.Undefined("weekly", CadenceMeasure.Screens).Should().Be("nobody was tested");
        Sound(new ProgramSketch().Tally().Cadence());
    }

    [Fact]
    public void People_who_are_tested_once_leave_no_person_days_at_risk()
    {
        var findings = Sound(CadenceSketch.Program(screens: 1).Cadence(WithoutIncidence));
        findings.Assumption("incidence").Source.Should().Contain("nobody was tested twice");
        findings.Options.Should().NotContain(option => option.IsAsDone);
        findings.Undefined("weekly", CadenceMeasure.InfectiousDaysRemoved).Should().Contain("nobody was tested twice");
        findings.Value("weekly", CadenceMeasure.Detection).Should().BeGreaterThan(0);
        Sound(CadenceSketch.Program(screens: 1).Cadence(CadenceSketch.Ranged));
    }

    [Fact]
    public void Without_a_confirmatory_export_nothing_is_said_of_infections_that_nobody_counted()
    {
        var tally = CadenceSketch.Program(confirmed: 0, refuted: 0, unsettled: 5, confirmatory: false);
        var findings = Sound(tally.Cadence(WithoutIncidence with { Specificity = null }));
        findings.Assumption("incidence").Source.Should().Contain("no confirmatory export");
        findings.Undefined("weekly", CadenceMeasure.FalseAlarms).Should().Be("the specificity of a screen is not known");
        findings.Undefined("weekly", CadenceMeasure.PredictiveValue).Should().NotBeNull();
        findings.Value("weekly", CadenceMeasure.Detection).Should().BeGreaterThan(0);
        Sound(tally.Cadence(CadenceSketch.Ranged)).Value("weekly", CadenceMeasure.InfectiousDaysRemoved).Should().BeGreaterThan(0);
    }

    [Fact]
    public void Without_a_case_the_incidence_is_zero_with_an_upper_limit()
    {
        var findings = Sound(CadenceSketch.Program(confirmed: 0, refuted: 2).Cadence(WithoutIncidence with { Worthwhile = 1 }));
        findings.Inputs.Incidence.Should().Match<EstimateFinding>(incidence => incidence.Estimate == 0 && incidence.Lower == 0 && incidence.Upper > 0);
        findings.Value("daily", CadenceMeasure.InfectiousDaysRemoved).Should().Be(0);
        findings.Outcome("daily", CadenceMeasure.InfectiousDaysRemoved)!.Figure.Upper.Should().BeGreaterThan(0);
        findings.Value("daily", CadenceMeasure.ShareRemoved).Should().BeInRange(0.5, 1, "of an infection, were there one");
        findings.Value("daily", CadenceMeasure.PredictiveValue).Should().Be(0);
        findings.Options.Single(option => option.IsChosen).IsNone.Should().BeTrue();
        findings.Text().Should().ContainEquivalentOf("no way of screening pays");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void A_sensitivity_of_none_or_all_is_a_sensitivity(double sensitivity)
    {
        var stated = new StatedAccuracy(sensitivity, null, null, null, null);
        var findings = Sound(CadenceSketch.Program().Cadence(CadenceSketch.Ranged with { Sensitivity = stated }));
        findings.Value("daily", CadenceMeasure.Detection).Should().BeInRange(0, 1);
        if (sensitivity == 0) findings.Value("daily", CadenceMeasure.InfectiousDaysRemoved).Should().BeApproximately(0, 1e-9);
        else findings.Value("daily", CadenceMeasure.InfectiousDaysRemoved).Should().BeGreaterThan(0);

        // With none, cases cannot have been found by these screens: no incidence can be.
        var fromData = Sound(CadenceSketch.Program().Cadence(WithoutIncidence with { Sensitivity = stated }));
        if (sensitivity == 0) fromData.Undefined("daily", CadenceMeasure.InfectiousDaysRemoved).Should().Contain("could have found");
        else fromData.Value("daily", CadenceMeasure.InfectiousDaysRemoved).Should().BeGreaterThan(0);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void A_specificity_of_none_or_all_is_a_specificity(double specificity)
    {
        var findings = Sound(CadenceSketch.Program().Cadence(CadenceSketch.Ranged with { Specificity = new StatedAccuracy(specificity, null, null, null, null) }));
        findings.Value("weekly", CadenceMeasure.FalseAlarms).Should().BeApproximately((1 - specificity) * findings.Value("weekly", CadenceMeasure.Screens), 1e-9);
        findings.Value("weekly", CadenceMeasure.AnyFalseAlarm).Should().Be(specificity == 1 ? 0 : 1);
        if (specificity == 1) findings.Value("weekly", CadenceMeasure.PredictiveValue).Should().Be(1);
    }

    [Fact]
    public void An_interval_longer_than_the_infection_finds_in_proportion()
    {
        var brief = CadenceSketch.Exact with { Course = CadenceSketch.Windows with { DetectableTo = new StatedRange(5), InfectiousTo = new StatedRange(5) } };
        var findings = Sound(CadenceSketch.Program().Cadence(brief));
        findings.Value("monthly", CadenceMeasure.Detection).Should().BeApproximately(0.6 * 3 / (365.0 / 12), 1e-9);
        findings.Value("fortnightly", CadenceMeasure.Detection).Should().BeApproximately(0.6 * 3 / 14, 1e-9);
        Sound(CadenceSketch.Program().Cadence(brief with { Options = [new() { Name = "none" }, new() { Name = "every ten years", EveryDays = 3660 }] }));
    }

    [Fact]
    public void A_delay_longer_than_the_window_removes_nothing()
    {
        var findings = Sound(CadenceSketch.Program().Cadence(CadenceSketch.Exact with { DelayDays = new StatedRange(30), Worthwhile = 1 }));
        findings.Value("daily", CadenceMeasure.InfectiousDaysRemoved).Should().BeApproximately(0, 1e-9);
        findings.Value("daily", CadenceMeasure.Detection).Should().BeGreaterThan(0.9);
        findings.Options.Single(option => option.IsChosen).IsNone.Should().BeTrue();
    }

    [Fact]
    public void One_worker_infects_nobody_inside()
    {
        var findings = Sound(CadenceSketch.Program(people: 1, confirmed: 0, refuted: 0).Cadence(CadenceSketch.Ranged with { People = null }));
        findings.People.Should().Be(1);
        findings.Value("daily", CadenceMeasure.InfectionsAverted).Should().BeApproximately(0, 1e-9);
        findings.Value("daily", CadenceMeasure.OutbreaksAvoided).Should().Be(0);
        Sound(CadenceSketch.Program(people: 1, confirmed: 1, refuted: 0).Cadence(CadenceSketch.Ranged with { Incidence = null, People = null }));
        Sound(CadenceSketch.Program(people: 1, confirmed: 0, refuted: 0).Cadence());
    }

    [Fact]
    public void A_million_workers_are_a_thousand_times_a_thousand()
    {
        var tally = CadenceSketch.Program();
        var (few, many) = (Sound(tally.Cadence(CadenceSketch.Ranged with { People = 1_000 })), Sound(tally.Cadence(CadenceSketch.Ranged with { People = 1_000_000 })));
        foreach (var measure in new[] { CadenceMeasure.Screens, CadenceMeasure.FalseAlarms, CadenceMeasure.InfectiousDaysRemoved, CadenceMeasure.TruePositives })
            many.Value("daily", measure).Should().BeApproximately(1000 * few.Value("daily", measure), 1e-6 * many.Value("daily", measure) + 1e-6, measure.ToString());
        many.Value("daily", CadenceMeasure.Detection).Should().Be(few.Value("daily", CadenceMeasure.Detection));
    }

    [Fact]
    public void More_infections_than_people_is_not_possible()
    {
        var findings = Sound(CadenceSketch.Program().Cadence(CadenceSketch.Ranged with { Incidence = new StatedRange(0.5), Reproduction = new StatedRange(50) }));
        findings.Value("daily", CadenceMeasure.TruePositives).Should().BeLessThan(200);
        findings.Value("daily", CadenceMeasure.InfectiousDaysRemoved).Should().BeLessThan(200 * 6);
    }

    [Fact]
    public void Only_none_only_one_option_and_only_ones_without_none_can_be_compared()
    {
        var tally = CadenceSketch.Program();
        foreach (var options in new[] { CadenceWords.Usual[..1], CadenceWords.Usual[3..4], CadenceWords.Usual[4..] })
            Sound(tally.Cadence(CadenceSketch.Ranged with { Options = options })).Steps.Count(step => step.Leads).Should().Be(options.Length - 1);
    }

    [Fact]
    public void Ranges_from_end_to_end_give_figures_all_the_same()
    {
        var wide = CadenceSketch.Ranged with
        {
            Sensitivity = new StatedAccuracy(0.5, null, null, 0, 1),
            RepeatedMisses = new StatedRange(0.5, 0, 0.99),
            BroughtIn = new StatedRange(0.5, 0, 1),
            DelayDays = new StatedRange(1, 0, 300),
            Participation = new StatedRange(0.5, 0, 1),
            Incidence = null,
            Dispersion = new StatedRange(0.1, 0.001, 100),
            Course = CadenceSketch.Windows with
            {
                DetectableFrom = new StatedRange(2, 0, 11), DetectableTo = new StatedRange(12, 2, 40), InfectiousFrom = new StatedRange(3, 0, 8), InfectiousTo = new StatedRange(9, 4, 30),
                Symptoms = new SymptomSettings { Share = new StatedRange(1, 0, 1), OnsetDays = new StatedRange(2, 0.01, 40), Spread = new StatedRange(0.5, 0, 2), Isolate = new StatedRange(1, 0.5, 1) },
            },
        };
        Sound(CadenceSketch.Program().Cadence(wide));
        Sound(CadenceSketch.Program().Cadence(wide with { Course = wide.Course! with { DetectableTo = new StatedRange(100, 50, 400) } }));
    }

    [Fact]
    public void With_small_counts_hidden_no_figure_of_it_leaves()
    {
        var settings = new ProgramSettings { Cadence = CadenceSketch.Ranged with { Incidence = null, People = null }, Report = new ReportSettings { SuppressBelow = 5 } };
        var findings = ScreenStats.Evaluation.Disclosure.DisclosureControl.Apply(Evaluator.Evaluate(CadenceSketch.Program(), settings));
        findings.Disclosure!.TablesLeftOut.Should().Contain(["cadence", "cadence-steps", "cadence-choice", "cadence-incidence", "cadence-assumptions", "cadence-sensitivity", "cadence-adherence"]);
        foreach (var figure in findings.Cadence.Sentences.SelectMany(sentence => sentence.Figures).Where(figure => figure.Value.Kind is CellKind.Count or CellKind.Number))
            findings.Disclosure.Shows(figure.Id).Should().BeFalse(figure.Id);
    }

    /// <summary>No figure is infinite or no number, limits hold their figure, shares are shares, and what is undefined says why.</summary>
    private static CadenceFindings Sound(CadenceFindings findings)
    {
        Walk(findings, "cadence", 0);
        foreach (var outcome in findings.Outcomes)
        {
            var figure = outcome.Figure;
            (figure.Estimate is null).Should().Be(figure.EstimateUndefined is not null, outcome.Key);
            if (figure.Estimate is not { } value) continue;
            if (figure.Lower is { } lower) value.Should().BeInRange(lower, figure.Upper!.Value, outcome.Key);
            if (outcome.Measure is CadenceMeasure.Detection or CadenceMeasure.CaughtBeforeSpread or CadenceMeasure.AnyFalseAlarm or CadenceMeasure.PredictiveValue)
                value.Should().BeInRange(0, 1, outcome.Key);
        }

        foreach (var table in findings.Tables)
        {
            for (var row = 0; row < table.RowCount; row++)
            {
                for (var column = 0; column < table.Columns.Length; column++) Rounding.Print(table.CellAt(row, column), table.Columns[column].Unit).Should().NotContainAny("NaN", "∞");
            }
        }

        findings.Sentences.Should().NotBeEmpty();
        foreach (var sentence in findings.Sentences) sentence.Text.Should().NotContainAny("NaN", "∞", "undefined").And.EndWith(".");
        return findings;
    }

    private static void Walk(object? value, string path, int depth)
    {
        if (value is null or string || depth > 6) return;
        if (value is double number) double.IsFinite(number).Should().BeTrue(path);
        else if (value is IEnumerable items) foreach (var item in items) Walk(item, path + "[]", depth + 1);
        else if (value.GetType().Namespace?.StartsWith("ScreenStats.Evaluation", StringComparison.Ordinal) == true && !value.GetType().IsEnum)
            foreach (var property in value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.GetIndexParameters().Length == 0 && !property.Name.EndsWith("Table", StringComparison.Ordinal) && property.Name is not ("Tables" or "Sentences")))
                Walk(property.GetValue(value), path + "." + property.Name, depth + 1);
    }
}
