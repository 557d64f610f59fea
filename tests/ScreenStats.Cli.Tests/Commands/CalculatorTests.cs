using System.Text.Json;
using ScreenStats.Testing;

namespace ScreenStats.Cli.Tests.Commands;

public sealed class CalculatorTests
{
    public static TheoryData<string, string[]> Screens => new()
    {
        { "interval", ["interval", "81/263"] },
        { "interval-all", ["interval", "0/20", "--method", "all", "--confidence", "0.9"] },
        { "interval-undefined", ["interval", "0/0"] },
        { "interval-json", ["interval", "81/263", "--json"] },
        { "interval-undefined-json", ["interval", "0/0", "--json"] },
        { "predict", ["predict", "--sensitivity", "0.8", "--specificity", "0.98", "--prevalence", "0.01"] },
        { "predict-counts", ["predict", "--sensitivity", "61/97", "--specificity", "2391/2400", "--prevalence", "0.004"] },
        { "predict-undefined", ["predict", "--sensitivity", "0", "--specificity", "1", "--prevalence", "0"] },
        { "predict-json", ["predict", "--sensitivity", "61/97", "--specificity", "1", "--prevalence", "0.004", "--json"] },
        { "prevalence", ["prevalence", "50/3330", "--sensitivity", "103/122", "--specificity", "399/401"] },
        { "prevalence-below", ["prevalence", "1/3330", "--sensitivity", "0.8", "--specificity", "0.99"] },
        { "prevalence-undefined", ["prevalence", "50/3330", "--sensitivity", "0.5", "--specificity", "0.5"] },
        { "prevalence-json", ["prevalence", "50/3330", "--sensitivity", "0.8", "--specificity", "0.99", "--json"] },
    };

    [Theory]
    [MemberData(nameof(Screens))]
    public void A_calculator_writes_the_same_text_under_every_culture(string name, string[] args)
    {
        foreach (var culture in (string[])["", "de-DE", "tr-TR"])
        {
            var run = Runner.Under(culture, args);

            run.Errors.Should().BeEmpty();
            run.Code.Should().Be(0);
            Golden.Check($"cli/{name}.txt", run.Output);
        }
    }

    // Newcombe 1998, Table I, methods 3, 4, 5 and 6 for 81/263, quoted in reference/proportions-and-accuracy section 1.1 (read quoted
    // in independent documents); half a unit of the last printed digit.
    [Theory]
    [InlineData("wilson", 0.2553, 0.3662)]
    [InlineData("wilson-continuity", 0.2535, 0.3682)]
    [InlineData("clopper-pearson", 0.2527, 0.3676)]
    [InlineData("mid-p", 0.2544, 0.3658)]
    public void Interval_gives_the_published_limits(string method, double lower, double upper)
    {
        using var json = JsonDocument.Parse(Runner.Of("interval", "81/263", "--method", method, "--json").Output);
        var interval = json.RootElement.GetProperty("intervals")[0];

        interval.GetProperty("method").GetString().Should().Be(method);
        interval.GetProperty("lower").GetDouble().Should().BeApproximately(lower, 5e-5);
        interval.GetProperty("upper").GetDouble().Should().BeApproximately(upper, 5e-5);
    }

    // FDA letter of 3 November 2020 as quoted in the trade press: at specificity 98 % about 80, 30 and 4 of 100 positives are true at a
    // prevalence of 10, 1 and 0.1 %. The sensitivity is not stated there; 0.8 reproduces them as printed.
    [Theory]
    [InlineData("0.1", 0.8163265306)]
    [InlineData("0.01", 0.2877697842)]
    [InlineData("0.001", 0.0384985563)]
    public void Predict_gives_the_predictive_values_of_the_letter_on_false_positives(string prevalence, double value)
    {
        using var json = JsonDocument.Parse(
            Runner.Of("predict", "--sensitivity", "0.8", "--specificity", "0.98", "--prevalence", prevalence, "--json").Output);

        json.RootElement.GetProperty("positivePredictiveValue").GetDouble().Should().BeApproximately(value, 5e-11);
    }

    // Closed form: (50/3330 + 399/401 - 1) / (103/122 + 399/401 - 1), by Rogan and Gladen 1978.
    [Fact]
    public void Prevalence_is_corrected_by_the_closed_form()
    {
        using var json = JsonDocument.Parse(
            Runner.Of("prevalence", "50/3330", "--sensitivity", "103/122", "--specificity", "399/401", "--json").Output);

        var expected = ((50.0 / 3330) + (399.0 / 401) - 1) / ((103.0 / 122) + (399.0 / 401) - 1);
        json.RootElement.GetProperty("prevalence").GetDouble().Should().BeApproximately(expected, 1e-14);
    }

    [Theory]
    [InlineData("interval", "5/3")]
    [InlineData("interval", "-1/10")]
    [InlineData("interval", "1/2", "--method", "wald")]
    [InlineData("interval", "1/2", "--confidence", "95")]
    [InlineData("interval", "1/2", "--confidnce", "0.9")]
    [InlineData("interval", "1/2", "--confidence")]
    [InlineData("interval", "1/2", "--confidence", "0.9", "--confidence", "0.8")]
    [InlineData("interval", "1/2", "3/4")]
    [InlineData("interval", "@figures.txt")]
    [InlineData("interval")]
    [InlineData("predict", "--sensitivity", "0.8", "--specificity", "0.98", "--prevalence", "1.2")]
    [InlineData("predict", "--sensitivity", "0,8", "--specificity", "0.98", "--prevalence", "0.1")]
    [InlineData("predict", "--sensitivity", "80%", "--specificity", "0.98", "--prevalence", "0.1")]
    [InlineData("predict", "--specificity", "0.98", "--prevalence", "0.1")]
    [InlineData("prevalnce", "1/2")]
    [InlineData("--json")]
    [InlineData]
    public void A_line_that_cannot_be_followed_is_a_usage_error_with_one_message(params string[] args)
    {
        foreach (var culture in (string[])["", "de-DE", "tr-TR"])
        {
            var run = Runner.Under(culture, args);

            run.Code.Should().Be(2);
            run.Output.Should().BeEmpty();
            run.Errors.Should().StartWith("screenstats: ").And.Contain("--help").And.NotContain("   at ");
            run.Errors.Split('\n').Should().HaveCount(3);
        }
    }

    [Fact]
    public void Missing_and_unknown_words_are_named()
    {
        Runner.Of("predict", "--specificity", "0.98", "--prevalence", "0.1").Errors.Should().Contain("--sensitivity is missing");
        Runner.Of("prevalnce", "1/2").Errors.Should().Contain("\"prevalence\"");
        Runner.Of("interval", "1/2", "--confidnce", "0.9").Errors.Should().Contain("nearest is --confidence");
        Runner.Of("interval", "1/2", "--confidence").Errors.Should().Contain("--confidence needs a value");
        Runner.Of("interval", "1/2", "--confidence", "0.9", "--confidence", "0.8").Errors.Should().Contain("more than once");
    }
}
