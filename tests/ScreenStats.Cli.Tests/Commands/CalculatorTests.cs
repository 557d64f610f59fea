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
        { "predict-interval", ["predict", "--sensitivity", "0.73[0.65,0.80]", "--specificity", "0.997[0.994,0.999]", "--prevalence", "0.01", "--repeat", "2", "--rule", "any"] },
        { "predict-confirmed", ["predict", "--sensitivity", "61/97", "--specificity", "2391/2400", "--prevalence", "0.004", "--per", "1000", "--share", "0.9", "--repeat", "2", "--confirmatory-sensitivity", "95/100", "--confirmatory-specificity", "0.999", "--curve"] },
        { "predict-all-json", ["predict", "--sensitivity", "0.73[0.65,0.80]", "--specificity", "2391/2400", "--prevalence", "0.01", "--repeat", "2", "--confirmatory-sensitivity", "0.95", "--confirmatory-specificity", "0.995", "--json"] },
        { "predict-nothing", ["predict", "--sensitivity", "0/0", "--specificity", "0.99", "--prevalence", "0.1", "--repeat", "2"] },
        { "predict-undefined", ["predict", "--sensitivity", "0", "--specificity", "1", "--prevalence", "0"] },
        { "predict-json", ["predict", "--sensitivity", "61/97", "--specificity", "1", "--prevalence", "0.004", "--json"] },
        { "prevalence", ["prevalence", "50/3330", "--sensitivity", "103/122", "--specificity", "399/401"] },
        { "prevalence-below", ["prevalence", "1/3330", "--sensitivity", "0.8", "--specificity", "0.99"] },
        { "prevalence-interval", ["prevalence", "50/3330", "--sensitivity", "0.84[0.77,0.90]", "--specificity", "0.995[0.982,0.999]", "--exact-interval", "blaker", "--prior-prevalence", "1,50", "--confidence", "0.9"] },
        { "prevalence-nothing", ["prevalence", "0/0", "--sensitivity", "0.8", "--specificity", "0.99"] },
        { "prevalence-undefined-json", ["prevalence", "50/3330", "--sensitivity", "5/10", "--specificity", "5/10", "--json"] },
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

        json.RootElement.GetProperty("positivePredictiveValue").GetProperty("estimate").GetDouble().Should().BeApproximately(value, 5e-11);
    }

    // Closed form: (50/3330 + 399/401 - 1) / (103/122 + 399/401 - 1), by Rogan and Gladen 1978.
    [Fact]
    public void Prevalence_is_corrected_by_the_closed_form()
    {
        using var json = JsonDocument.Parse(
            Runner.Of("prevalence", "50/3330", "--sensitivity", "103/122", "--specificity", "399/401", "--json").Output);

        var expected = ((50.0 / 3330) + (399.0 / 401) - 1) / ((103.0 / 122) + (399.0 / 401) - 1);
        json.RootElement.GetProperty("corrected")[0].GetProperty("estimate").GetDouble().Should().BeApproximately(expected, 1e-14);
    }

    // Finite mixture of beta distributions in scipy 1.10.1, for the data of Gelman and Carpenter 2020 (reference table prevalence-posteriors).
    [Fact]
    public void Prevalence_gives_the_exact_posterior_under_the_names_of_its_figures()
    {
        using var json = JsonDocument.Parse(
            Runner.Of("prevalence", "50/3330", "--sensitivity", "103/122", "--specificity", "399/401", "--json").Output);

        var bayes = json.RootElement.GetProperty("corrected").EnumerateArray().Single(one => one.GetProperty("method").GetString() == "bayes");
        foreach (var (name, value) in new[]
        {
            ("mean", 0.01037127), ("median", 0.01058129), ("lower", 0.00132588), ("upper", 0.01890437), ("shortestLower", 0.00084928), ("shortestUpper", 0.01833326),
        })
            bayes.GetProperty(name).GetDouble().Should().BeApproximately(value, 6e-9, name);
    }

    // COVAG study, Front Med 2022;9:774550, abstract: 10,000 people, 500 of them infected, 38 false positives and 124 false negatives.
    [Fact]
    public void Predict_gives_the_counts_per_ten_thousand_of_the_published_example()
    {
        using var json = JsonDocument.Parse(
            Runner.Of("predict", "--sensitivity", "0.752", "--specificity", "0.996", "--prevalence", "0.05", "--json").Output);

        json.RootElement.GetProperty("per").GetInt64().Should().Be(10_000);
        json.RootElement.GetProperty("falsePositives").GetDouble().Should().BeApproximately(38, 1e-9);
        json.RootElement.GetProperty("falseNegatives").GetDouble().Should().BeApproximately(124, 1e-9);
        json.RootElement.GetProperty("truePositives").GetDouble().Should().BeApproximately(376, 1e-9);
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
    [InlineData("predict", "--sensitivity", "0.8[0.7,0.9", "--specificity", "0.98", "--prevalence", "0.1")]
    [InlineData("predict", "--sensitivity", "0.8[0.9,0.95]", "--specificity", "0.98", "--prevalence", "0.1")]
    [InlineData("predict", "--sensitivity", "0.8", "--specificity", "0.98", "--prevalence", "0.1", "--repeat", "1")]
    [InlineData("predict", "--sensitivity", "0.8", "--specificity", "0.98", "--prevalence", "0.1", "--rule", "any")]
    [InlineData("predict", "--sensitivity", "0.8", "--specificity", "0.98", "--prevalence", "0.1", "--repeat", "2", "--rule", "both")]
    [InlineData("predict", "--sensitivity", "0.8", "--specificity", "0.98", "--prevalence", "0.1", "--confirmatory-sensitivity", "0.9")]
    [InlineData("predict", "--sensitivity", "0.8", "--specificity", "0.98", "--prevalence", "0.1", "--share", "1")]
    [InlineData("predict", "--sensitivity", "0.8", "--specificity", "0.98", "--prevalence", "0.1", "--per", "0")]
    [InlineData("prevalence", "50/3330", "--sensitivity", "0.8", "--specificity", "0.98", "--prior-prevalence", "1;50")]
    [InlineData("prevalence", "50/3330", "--sensitivity", "0.8", "--specificity", "0.98", "--prior-prevalence", "0,1")]
    [InlineData("prevalence", "50/3330", "--sensitivity", "0.8", "--specificity", "0.98", "--exact-interval", "wald")]
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
