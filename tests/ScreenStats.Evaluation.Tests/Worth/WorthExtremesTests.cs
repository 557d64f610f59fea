using System.Collections;
using System.Reflection;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Counting.Programs.Costs;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Tests.Cadence;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Evaluation.Worth;

namespace ScreenStats.Evaluation.Tests.Worth;

public class WorthExtremesTests
{
    public static TheoryData<string> Programs => ["nothing", "nobody", "one worker", "a million", "no case", "no confirmatory", "tested once", "no course", "sensitivity 0", "specificity 1", "specificity 0", "long delay", "only none", "without none", "wide", "free", "huge", "by confirmation", "bounds", "half priced"];

    [Theory]
    [MemberData(nameof(Programs))]
    public void No_program_gives_a_figure_that_is_no_number(string program)
    {
        var (costs, cadence) = (WorthSketch.Ranged with { LargestPool = 10 }, WorthSketch.RangedCadence);
        var tally = CadenceSketch.Program();
        Sound(program switch
        {
            "nothing" => new ProgramSketch().Tally().Worth(new CostSettings(), new CadenceSettings()),
            "nobody" => new ProgramSketch().Tally().Worth(costs, cadence with { People = null }),
            "one worker" => CadenceSketch.Program(people: 1, confirmed: 1, refuted: 0).Worth(costs, cadence with { People = null, Incidence = null }),
            "a million" => tally.Worth(costs, cadence with { People = 1_000_000 }),
            "no case" => CadenceSketch.Program(confirmed: 0, refuted: 2).Worth(costs, cadence with { Incidence = null }),
            "no confirmatory" => CadenceSketch.Program(confirmed: 0, refuted: 0, unsettled: 4, confirmatory: false).Worth(costs, cadence with { Incidence = null, Specificity = null }),
            "tested once" => CadenceSketch.Program(screens: 1).Worth(costs, cadence with { Incidence = null }),
            "no course" => tally.Worth(costs, new CadenceSettings()),
            "sensitivity 0" => tally.Worth(costs, cadence with { Sensitivity = new StatedAccuracy(0, null, null, null, null) }),
            "specificity 1" => tally.Worth(costs, cadence with { Specificity = new StatedAccuracy(1, null, null, null, null) }),
            "specificity 0" => tally.Worth(costs, cadence with { Specificity = new StatedAccuracy(0, null, null, null, null) }),
            "long delay" => tally.Worth(costs, cadence with { DelayDays = new StatedRange(30) }),
            "only none" => tally.Worth(costs, cadence with { Options = CadenceWords.Usual[..1], Planned = null }),
            "without none" => tally.Worth(costs, cadence with { Options = CadenceWords.Usual[3..] }),
            "wide" => tally.Worth(costs with { Kit = new StatedRange(0, 0, 1e6), Illness = new StatedRange(1, 0, 1e9) }, cadence with { BroughtIn = new StatedRange(0.5, 0, 1), Participation = new StatedRange(0.5, 0, 1) }),
            "free" => tally.Worth(new CostSettings { Screen = new StatedRange(0), ConfirmatoryTest = new StatedRange(0), IsolationDay = new StatedRange(0), WorkingDay = new StatedRange(0), InfectionAverted = new StatedRange(0) }, cadence),
            "huge" => tally.Worth(costs with { InfectionAverted = new StatedRange(1e12), Screen = new StatedRange(1e12), Kit = null, OperatorMinutes = null, OperatorHour = null, Supervision = null, Waste = null }, cadence),
            "by confirmation" => tally.Worth(costs, cadence with { IsolateOn = IsolateOn.Confirmation, ConfirmatoryDelayDays = new StatedRange(2, 1, 4) }),
            "bounds" => tally.Worth(costs, cadence with { BroughtIn = null }),
            _ => tally.Worth(costs with { IsolationDay = null, Currency = null, PriceYear = null }, cadence),
        });
    }

    [Fact]
    public void With_small_counts_hidden_no_figure_of_it_leaves()
    {
        var settings = new ProgramSettings
        {
            Cadence = WorthSketch.RangedCadence with { Incidence = null, People = null }, Costs = WorthSketch.Ranged with { Rules = [new FrequencyRuleSettings(null, CadenceWords.Usual[0])] },
            Policy = new PolicySettings { IsolationDays = 7 }, Report = new ReportSettings { SuppressBelow = 5 },
        };
        var findings = Evaluation.Disclosure.DisclosureControl.Apply(Evaluator.Evaluate(CadenceSketch.Program(), settings));
        findings.Disclosure!.TablesLeftOut.Should().Contain(findings.Worth.Tables.Select(table => table.Id));
        findings.Worth.Tables.Should().HaveCount(12);
        foreach (var figure in findings.Worth.Sentences.SelectMany(sentence => sentence.Figures).Where(figure => figure.Value.Kind is CellKind.Count or CellKind.Number))
            findings.Disclosure.Shows(figure.Id).Should().BeFalse(figure.Id);
        foreach (var property in new[] { "verdict", "paysShare", "value", "people", "draws", "currency" }) findings.Disclosure.Shows("worth." + property).Should().BeFalse(property);
        var answer = findings.Answers.Questions.Single(question => question.Id == "is-screening-worth-it");
        answer.Text.Should().NotMatchRegex("[0-9]{2,}");
    }

    [Fact]
    public void The_answer_opens_with_the_verdict_and_leaves_the_choice_to_people()
    {
        var findings = Evaluator.Evaluate(CadenceSketch.Program(), new ProgramSettings { Cadence = WorthSketch.RangedCadence, Costs = WorthSketch.Ranged, Policy = new PolicySettings { IsolationDays = 7 } });
        var answer = findings.Answers.Questions.Single(question => question.Id == "is-screening-worth-it");
        var pays = Evaluator.Evaluate(CadenceSketch.Program(), new ProgramSettings { Cadence = WorthSketch.RangedCadence, Costs = WorthSketch.Ranged with { InfectionAverted = new StatedRange(30_000, 5_000, 90_000) }, Policy = new PolicySettings { IsolationDays = 7 } })
            .Answers.Questions.Single(question => question.Id == "is-screening-worth-it");
        pays.InOneSentence.Should().MatchRegex(@"pays while more than \S+ in 1,000 people are infected each week", "the condition comes first").And.MatchRegex(@"(it was \S+|\S+ is stated) \(95 % interval")
            .And.Contain("of the draws", "and never without how sure that is");
        answer.Text.Should().StartWith(findings.Worth.Verdict).And.Contain("of the draws");
        answer.Condition.Should().Contain("local rules").And.Contain("does not rule out infection");
    }

    private static void Sound(WorthFindings findings)
    {
        Walk(findings, "worth", 0);
        foreach (var row in findings.Options)
        {
            foreach (var figure in new[] { row.Spending, row.Cost, row.Effect, row.NetBenefit })
            {
                (figure.Estimate is null).Should().Be(figure.EstimateUndefined is not null, row.Key);
                if (figure.Estimate is { } value && figure.Lower is { } lower) value.Should().BeInRange(lower, figure.Upper!.Value, row.Key);
            }
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
    }

    private static void Walk(object? value, string path, int depth)
    {
        if (value is null or string || depth > 6) return;
        if (value is double number) double.IsFinite(number).Should().BeTrue(path);
        else if (value is IEnumerable items) foreach (var item in items) Walk(item, path + "[]", depth + 1);
        else if (value.GetType().Namespace?.StartsWith("ScreenStats.Evaluation", StringComparison.Ordinal) == true && !value.GetType().IsEnum)
            foreach (var property in value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.GetIndexParameters().Length == 0 && !property.Name.EndsWith("Table", StringComparison.Ordinal) && !property.Name.EndsWith("Sentences", StringComparison.Ordinal) && property.Name != "Tables"))
                Walk(property.GetValue(value), path + "." + property.Name, depth + 1);
    }
}
