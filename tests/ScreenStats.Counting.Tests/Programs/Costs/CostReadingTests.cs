using System.Collections.Immutable;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Counting.Programs.Costs;

namespace ScreenStats.Counting.Tests.Programs.Costs;

public sealed class CostReadingTests
{
    private const string Whole = """
        {
          "currency": "EUR", "priceYear": 2024, "perspective": "employer", "discountRate": 0.03,
          "kit": { "value": 3.2, "lower": 2.5, "upper": 4, "source": "a list" }, "operatorMinutes": 4, "operatorHour": { "value": 36, "lower": 30, "upper": 41 },
          "supervision": 0.6, "waste": 0, "confirmatoryTest": 58, "isolationDay": 210, "workingDay": { "value": 230, "lower": 180, "upper": 290 },
          "illness": 1400, "outbreak": 18000, "infectionAverted": { "value": 8000, "lower": 4000, "upper": 15000 }, "infectiousDay": 900,
          "pooling": { "most": 10 },
          "rules": [ { "option": "none" }, { "above": 0, "option": "monthly" }, { "above": 0.05, "option": "shift days" }, { "above": 0.1, "option": 2 } ],
          "report": {
            "background": "a", "analysisPlan": "b", "population": "c", "setting": "d", "comparators": "e", "horizon": "f", "discounting": "g",
            "outcomes": "h", "valuation": "i", "resources": "j", "heterogeneity": "k", "distribution": "l", "engagement": "m",
            "engagementEffect": "n", "limitations": "o", "funding": "p", "conflicts": "q"
          },
          "source": "the accounts",
        }
        """;

    [Fact]
    public void A_whole_section_gives_every_setting()
    {
        var costs = Read(Whole, """{ "planned": { "name": "shift days", "weekdays": ["Monday", "Thursday"] } }""");

        costs.Should().BeEquivalentTo(new CostSettings
        {
            Currency = "EUR",
            PriceYear = 2024,
            Perspective = "employer",
            DiscountRate = 0.03,
            Kit = new StatedRange(3.2, 2.5, 4, "a list"),
            OperatorMinutes = new StatedRange(4),
            OperatorHour = new StatedRange(36, 30, 41),
            Supervision = new StatedRange(0.6),
            Waste = new StatedRange(0),
            ConfirmatoryTest = new StatedRange(58),
            IsolationDay = new StatedRange(210),
            WorkingDay = new StatedRange(230, 180, 290),
            Illness = new StatedRange(1400),
            Outbreak = new StatedRange(18000),
            InfectionAverted = new StatedRange(8000, 4000, 15000),
            InfectiousDay = new StatedRange(900),
            LargestPool = 10,
            Rules =
            [
                new(null, new() { Name = "none" }),
                new(0, new() { Name = "monthly", EveryDays = CadenceWords.MonthDays }),
                new(0.05, new() { Name = "shift days", Weekdays = [DayOfWeek.Monday, DayOfWeek.Thursday] }),
                new(0.1, new() { Name = "every-second-day", EveryDays = 2 }),
            ],
            Report = new EvaluationStatements
            {
                Background = "a", AnalysisPlan = "b", Population = "c", Setting = "d", Comparators = "e", Horizon = "f", Discounting = "g", Outcomes = "h",
                Valuation = "i", Resources = "j", Heterogeneity = "k", Distribution = "l", Engagement = "m", EngagementEffect = "n", Limitations = "o",
                Funding = "p", Conflicts = "q",
            },
            Source = "the accounts",
        });
        costs.AnyStated.Should().BeTrue();
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("""{ "costs": {} }""")]
    [InlineData("""{ "costs": null }""")]
    public void Nothing_stated_is_no_price_at_all(string program)
    {
        var costs = ProgramFile.Parse(program).Costs;

        costs.Should().BeEquivalentTo(new CostSettings());
        costs.AnyStated.Should().BeFalse();
        costs.DiscountRate.Should().BeNull();
        costs.Rules.Should().BeEmpty();
        costs.GetType().GetProperties().Where(property => property.PropertyType == typeof(StatedRange)).Should().HaveCount(13)
            .And.OnlyContain(property => property.GetValue(costs) == null);
    }

    [Theory]
    [InlineData("kit")]
    [InlineData("operatorMinutes")]
    [InlineData("operatorHour")]
    [InlineData("supervision")]
    [InlineData("waste")]
    [InlineData("screen")]
    [InlineData("confirmatoryTest")]
    [InlineData("isolationDay")]
    [InlineData("workingDay")]
    [InlineData("illness")]
    [InlineData("outbreak")]
    [InlineData("infectionAverted")]
    [InlineData("infectiousDay")]
    public void Each_amount_alone_is_something_stated_and_may_not_be_negative(string key)
    {
        Read($"{{ \"{key}\": 0 }}").AnyStated.Should().BeTrue();
        Read($"{{ \"{key}\": {{ \"value\": 2, \"lower\": 1, \"upper\": 3 }} }}").AnyStated.Should().BeTrue();
        Problems($"{{ \"{key}\": -1 }}").Should().ContainSingle().Which.Message.Should().StartWith($"costs.{key} must be");
        Problems($"{{ \"{key}\": {{ \"value\": 2, \"lower\": 1, \"upper\": 1e13 }} }}").Should().ContainSingle().Which.Message.Should().StartWith($"costs.{key}.upper must be");
    }

    [Theory]
    [InlineData("""{ "kits": 3 }""", "costs.kits: unknown key", "\"kit\"")]
    [InlineData("""{ "kit": { "value": 3, "low": 2 } }""", "costs.kit.low: unknown key", "\"lower\"")]
    [InlineData("""{ "pooling": { "most": 5, "least": 2 } }""", "costs.pooling.least: unknown key", "\"most\"")]
    [InlineData("""{ "rules": [ { "option": "weekly", "over": 0.1 } ] }""", "costs.rules[0].over: unknown key", "\"above\"")]
    [InlineData("""{ "report": { "fundin": "x" } }""", "costs.report.fundin: unknown key", "\"funding\"")]
    public void An_unknown_key_names_its_path_and_the_nearest_known_one(string text, string start, string nearest)
    {
        var found = Problems(text).Should().ContainSingle().Subject;
        found.Code.Should().Be(ProgramFile.UnknownKeyCode);
        found.Message.Should().StartWith(start).And.Contain(nearest);
    }

    [Theory]
    [InlineData("[]", "costs must be an object in braces")]
    [InlineData("""{ "currency": 978 }""", "costs.currency must be a text in quotes")]
    [InlineData("""{ "priceYear": 24 }""", "a year of four figures")]
    [InlineData("""{ "priceYear": "2024" }""", "a year of four figures")]
    [InlineData("""{ "perspective": "" }""", "costs.perspective must be a text in quotes")]
    [InlineData("""{ "discountRate": 3 }""", "for 3 percent write 0.03")]
    [InlineData("""{ "kit": "3.20" }""", "an amount of money, 0 or more, such as 4.5, or { \"value\": ..., \"lower\": ..., \"upper\": ... }")]
    [InlineData("""{ "kit": { "value": 3, "lower": 4, "upper": 5 } }""", "costs.kit must be in order: lower, value, upper")]
    [InlineData("""{ "kit": { "value": 3, "lower": 2 } }""", "with neither")]
    [InlineData("""{ "operatorMinutes": 1500 }""", "a number of minutes from 0 to 1440")]
    [InlineData("""{ "screen": 8, "waste": 0.1 }""", "costs.waste must be left out where \"screen\" states the cost of a screen as one figure")]
    [InlineData("""{ "pooling": 10 }""", "costs.pooling must be an object")]
    [InlineData("""{ "pooling": { } }""", "given with \"most\"")]
    [InlineData("""{ "pooling": { "most": 1 } }""", "from 2 to 1000")]
    [InlineData("""{ "rules": { "option": "weekly" } }""", "costs.rules must be a list in brackets")]
    [InlineData("""{ "rules": [ "weekly" ] }""", "costs.rules[0] must be an object")]
    [InlineData("""{ "rules": [ { } ] }""", "given with \"option\"")]
    [InlineData("""{ "rules": [ { "option": "sometimes" } ] }""", "costs.rules[0].option must be one of \"none\"")]
    [InlineData("""{ "rules": [ { "above": 0.1, "option": "weekly" } ] }""", "costs.rules[0].above must be left out: the first line")]
    [InlineData("""{ "rules": [ { "option": "monthly" }, { "option": "weekly" } ] }""", "costs.rules[1] must be given with \"above\"")]
    [InlineData("""{ "rules": [ { "option": "monthly" }, { "above": 5, "option": "weekly" } ] }""", "for 5 percent write 0.05")]
    [InlineData("""{ "rules": [ { "option": "monthly" }, { "above": 1, "option": "weekly" } ] }""", "a positivity below 1")]
    [InlineData("""{ "rules": [ { "option": "monthly" }, { "above": 0.1, "option": "weekly" }, { "above": 0.1, "option": "daily" } ] }""", "costs.rules[2].above must be higher")]
    [InlineData("""{ "rules": [ { "option": "monthly" }, { "above": 0.1, "option": "monthly" } ] }""", "costs.rules[1].option must be more frequent")]
    [InlineData("""{ "report": "none" }""", "costs.report must be an object")]
    [InlineData("""{ "report": { "conflicts": false } }""", "costs.report.conflicts must be a text in quotes")]
    [InlineData("""{ "source": 1 }""", "a text in quotes")]
    public void A_wrong_value_says_what_to_write(string text, string part)
    {
        var found = Problems(text).Should().ContainSingle().Subject;
        found.Code.Should().Be(ProgramFile.WrongValueCode);
        found.Message.Should().Contain(part);
    }

    [Fact]
    public void Everything_wrong_is_told_at_once_in_the_order_of_lines() =>
        Problems("""
            {
              "screen": 8,
              "kit": 3,
              "operatorHour": 30,
              "priceyear": 2024,
              "rules": [ { "option": "never" }, { "option": "weekly" } ]
            }
            """).Should().HaveCount(5).And.BeInAscendingOrder(problem => problem.Line);

    private static CostSettings Read(string costs, string cadence = "{}") => ProgramFile.Parse($"{{ \"cadence\": {cadence}, \"costs\": {costs} }}").Costs;

    private static ImmutableArray<Diagnostic> Problems(string costs) =>
        FluentActions.Invoking(() => Read(costs)).Should().Throw<UnusableDataException>().Which.Diagnostics;
}
