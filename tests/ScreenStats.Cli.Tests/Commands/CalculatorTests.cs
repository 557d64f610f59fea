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
        { "contrast", ["contrast", "56/70", "48/80"] },
        { "contrast-unbounded", ["contrast", "10/10", "0/20"] },
        { "contrast-undefined", ["contrast", "0/0", "48/80"] },
        { "contrast-json", ["contrast", "56/70", "48/80", "--json"] },
        { "contrast-unbounded-json", ["contrast", "10/10", "0/20", "--measure", "ratio", "--json"] },
        { "contrast-undefined-json", ["contrast", "0/0", "48/80", "--measure", "difference", "--json"] },
        { "contrast-paired", ["contrast", "--paired", "59,6,16,80"] },
        { "contrast-paired-json", ["contrast", "--paired", "59,6,16,80", "--confidence", "0.9", "--json"] },
        { "contrast-paired-undefined", ["contrast", "--paired", "0,0,0,0"] },
        { "agreement", ["agreement", "40,9,6,45"] },
        { "agreement-caution", ["agreement", "80,10,5,5"] },
        { "agreement-weights", ["agreement", "22,2,2,0/5,7,14,0/0,2,36,0/0,1,17,10", "--weights", "quadratic"] },
        { "agreement-json", ["agreement", "80,10,5,5", "--weights", "linear", "--json"] },
        { "agreement-undefined", ["agreement", "0,0,0,0"] },
        { "agreement-undefined-json", ["agreement", "12,0,0,0", "--json"] },
        { "adjust", ["adjust", "0.0001,0.0004,0.0019,0.0095,0.0201"] },
        { "adjust-all", ["adjust", "0.004,0.03,0.2", "--method", "all", "--level", "0.01"] },
        { "adjust-json", ["adjust", "0.004,0.03,0.2", "--method", "hommel", "--json"] },
        { "interval-one-sided", ["interval", "12/4000", "--one-sided", "upper", "--design-effect", "1.8", "--method", "all"] },
        { "interval-one-sided-json", ["interval", "0/20", "--one-sided", "lower", "--design-effect", "2", "--method", "agresti-coull", "--json"] },
        { "clusters", ["clusters", "13/13,12/12,9/9,9/9,8/8,8/8,12/13,11/12,9/10,9/10,8/9,11/13,4/5,5/7,7/10,7/10"] },
        { "clusters-against", ["clusters", "0/40,3/38,1/44,0/39,2/41", "--against", "4/40,9/42,1/37,6/45"] },
        { "clusters-undefined", ["clusters", "0/40,0/38", "--against", "2/30"] },
        { "clusters-json", ["clusters", "0/40,3/38,1/44", "--against", "0/40,0/38", "--json"] },
        { "plan-width", ["plan", "width", "--proportion", "0.01", "--width", "0.005"] },
        { "plan-width-undefined", ["plan", "width", "--proportion", "0.5", "--width", "1e-9"] },
        { "plan-zero-events", ["plan", "zero-events", "--rate", "0.01"] },
        { "plan-audit", ["plan", "audit", "--sensitivity", "0.7", "--specificity", "0.997", "--prevalence", "0.01", "--width", "0.2", "--screens", "60000"] },
        { "plan-audit-undefined", ["plan", "audit", "--sensitivity", "0.7", "--specificity", "0.997", "--prevalence", "0.01", "--width", "0.02", "--screens", "600"] },
        { "plan-lot", ["plan", "lot", "--rate", "0.0005", "--excess", "0.01", "--lots", "20"] },
        { "plan-lot-json", ["plan", "lot", "--rate", "0.001", "--excess", "0.05", "--lots", "5", "--other-runs", "3000", "--json"] },
        { "plan-zero-events-json", ["plan", "zero-events", "--rate", "0.05", "--json"] },
        { "cadence", ["cadence", "--every", "1,2,3.5,7,14", "--sensitivity", "0.6", "--specificity", "0.9995", "--window", "0,7", "--infectious", "0,7", "--incidence", "0.0005", "--people", "1000"] },
        { "cadence-json", ["cadence", "--every", "3.5,7", "--sensitivity", "0.65", "--specificity", "0.997", "--window", "4,11", "--infectious", "3,10", "--delay", "1", "--incidence", "12/24000", "--people", "400", "--json"] },
        { "cadence-undefined", ["cadence", "--every", "7,30", "--sensitivity", "61/97", "--window", "3,13"] },
        { "cadence-undefined-json", ["cadence", "--every", "7", "--sensitivity", "0/0", "--specificity", "1", "--window", "3,13", "--infectious", "5,5", "--incidence", "0", "--people", "1", "--json"] },
        { "predict", ["predict", "--sensitivity", "0.8", "--specificity", "0.98", "--prevalence", "0.01"] },
        { "predict-counts", ["predict", "--sensitivity", "61/97", "--specificity", "2391/2400", "--prevalence", "0.004"] },
        { "predict-interval", ["predict", "--sensitivity", "0.73[0.65,0.80]", "--specificity", "0.997[0.994,0.999]", "--prevalence", "0.01", "--repeat", "2", "--rule", "any"] },
        { "predict-confirmed", ["predict", "--sensitivity", "61/97", "--specificity", "2391/2400", "--prevalence", "0.004", "--per", "1000", "--share", "0.9", "--repeat", "2", "--confirmatory-sensitivity", "95/100", "--confirmatory-specificity", "0.999", "--curve"] },
        { "predict-all-json", ["predict", "--sensitivity", "0.73[0.65,0.80]", "--specificity", "2391/2400", "--prevalence", "0.01", "--repeat", "2", "--confirmatory-sensitivity", "0.95", "--confirmatory-specificity", "0.995", "--json"] },
        { "predict-nothing", ["predict", "--sensitivity", "0/0", "--specificity", "0.99", "--prevalence", "0.1", "--repeat", "2"] },
        { "predict-undefined", ["predict", "--sensitivity", "0", "--specificity", "1", "--prevalence", "0"] },
        { "predict-at-an-end", ["predict", "--sensitivity", "8/10", "--specificity", "100/100", "--prevalence", "0.01"] },
        { "predict-worse-than-chance", ["predict", "--sensitivity", "0.3", "--specificity", "0.6", "--prevalence", "0.1", "--json"] },
        { "predict-json", ["predict", "--sensitivity", "61/97", "--specificity", "1", "--prevalence", "0.004", "--json"] },
        { "prevalence", ["prevalence", "50/3330", "--sensitivity", "103/122", "--specificity", "399/401"] },
        { "prevalence-below", ["prevalence", "1/3330", "--sensitivity", "0.8", "--specificity", "0.99"] },
        { "prevalence-at-an-end", ["prevalence", "50/3330", "--sensitivity", "27/37", "--specificity", "371/371"] },
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

    // Newcombe 1998, Stat Med 17:873-890, Table II case a, method 10 (read quoted in an independent file), and Koopman's example by its
    // printed limits (from memory); half a unit of the last printed digit.
    [Theory]
    [InlineData("56/70", "48/80", "difference", "newcombe", 0.0524, 0.3339, 5e-5)]
    [InlineData("10/10", "0/20", "difference", "newcombe", 0.6791, 1, 5e-5)]
    [InlineData("36/40", "16/80", "ratio", "koopman", 2.94, 7.15, 5e-3)]
    public void Contrast_gives_the_published_limits(string first, string second, string measure, string method, double lower, double upper, double half)
    {
        using var json = JsonDocument.Parse(Runner.Of("contrast", first, second, "--json").Output);
        var interval = json.RootElement.GetProperty(measure).GetProperty("intervals").EnumerateArray().Single(one => one.GetProperty("method").GetString() == method);

        interval.GetProperty("lower").GetDouble().Should().BeApproximately(lower, half);
        interval.GetProperty("upper").GetDouble().Should().BeApproximately(upper, half);
    }

    // Feinstein and Cicchetti 1990, as quoted in Gerstman's table 10.6: the same agreement, kappas of .70 and .32.
    [Theory]
    [InlineData("40,9,6,45", 0.70, 0)]
    [InlineData("80,10,5,5", 0.32, 1)]
    public void Agreement_gives_the_published_kappa_and_the_caution_where_it_applies(string table, double kappa, int cautions)
    {
        using var json = JsonDocument.Parse(Runner.Of("agreement", table, "--json").Output);

        json.RootElement.GetProperty("kappa").GetProperty("estimate").GetDouble().Should().BeApproximately(kappa, 5e-3);
        json.RootElement.GetProperty("cautions").GetArrayLength().Should().Be(cautions);
    }

    [Fact]
    public void A_table_of_agreement_may_be_one_list_or_rows() =>
        Runner.Of("agreement", "22,2,2,5,7,14,0,2,36", "--json").Output.Should().Be(Runner.Of("agreement", "22,2,2/5,7,14/0,2,36", "--json").Output);

    // Benjamini and Hochberg 1995, section 3.2: 4 of 15 rejected at 0.05, 3 by Bonferroni.
    [Theory]
    [InlineData("benjamini-hochberg", 4)]
    [InlineData("bonferroni", 3)]
    public void Adjust_counts_the_published_rejections(string method, int rejected)
    {
        using var json = JsonDocument.Parse(Runner.Of(
            "adjust", "0.0001,0.0004,0.0019,0.0095,0.0201,0.0278,0.0298,0.0344,0.0459,0.3240,0.4262,0.5719,0.6528,0.7590,1", "--method", method, "--json").Output);

        json.RootElement.GetProperty("adjusted")[0].GetProperty("atOrBelowLevel").GetInt32().Should().Be(rejected);
    }

    // Hanley and Lippman-Hand, JAMA 1983;249:1743-1745 (from memory): 59 without an event rule out 5 %, 299 rule out 1 %.
    [Theory]
    [InlineData("0.05", 59)]
    [InlineData("0.01", 299)]
    public void Plan_gives_the_numbers_known_for_zero_events(string rate, int tests)
    {
        using var json = JsonDocument.Parse(Runner.Of("plan", "zero-events", "--rate", rate, "--json").Output);
        json.RootElement.GetProperty("tests").GetDouble().Should().Be(tests);
        json.RootElement.GetProperty("achieved").GetDouble().Should().BeGreaterThanOrEqualTo(0.95);
        json.RootElement.GetProperty("confidenceWithOneFewer").GetDouble().Should().BeLessThan(0.95);
    }

    // The program of 1,000 people in the reference table cadence-options, worked out in closed form and simulated before this code was written.
    [Theory]
    [InlineData("1", 0.8336, 182.20, 182.50, 0.4996)]
    [InlineData("3.5", 0.5100, 153.30, 52.14, 0.7462)]
    [InlineData("14", 0.1500, 54.75, 13.04, 0.8077)]
    public void Cadence_gives_the_program_of_a_thousand_people(string every, double fraction, double truePositives, double falsePositives, double predictive)
    {
        using var json = JsonDocument.Parse(Runner.Of(
            "cadence", "--every", every, "--sensitivity", "0.6", "--specificity", "0.9995", "--window", "0,7", "--infectious", "0,7", "--incidence", "0.0005",
            "--people", "1000", "--json").Output);
        var option = json.RootElement.GetProperty("options")[0];
        option.EnumerateObject().Select(one => one.Name).Should().Equal(
            "everyDays", "detectionProbability", "infectiousDaysRemoved", "fractionRemoved", "screensPerPersonYear", "falsePositivesPerPersonYear",
            "anyFalsePositivePerYear", "truePositivesPerYear", "falsePositivesPerYear", "positivePredictiveValue");
        option.GetProperty("fractionRemoved").GetDouble().Should().BeApproximately(fraction, 5e-5);
        option.GetProperty("truePositivesPerYear").GetDouble().Should().BeApproximately(truePositives, 5e-3);
        option.GetProperty("falsePositivesPerYear").GetDouble().Should().BeApproximately(falsePositives, 5e-3);
        option.GetProperty("positivePredictiveValue").GetDouble().Should().BeApproximately(predictive, 5e-5);
    }

    [Fact]
    public void The_tables_of_cadence_fit_into_80_columns() => Runner.In(
        new ScreenStats.Cli.Terminal.RunnerEnvironment { Width = 80 }, "cadence", "--every", "0.5,365", "--sensitivity", "0.6", "--specificity", "0.9995", "--window", "0,7",
        "--infectious", "0,7", "--incidence", "0.0005", "--people", "1000000").Output.Split("Screening is not diagnosis")[0].Split('\n')
        .Should().OnlyContain(line => line.Length <= 80).And.Contain(line => line.Contains("share that is true", StringComparison.Ordinal));

    // Rao and Scott, Biometrics 1992;48:577-585, table 1: design effects 1.232495 and 3.952861 (quoted on a public help page).
    [Fact]
    public void Clusters_gives_the_published_design_effects()
    {
        using var json = JsonDocument.Parse(Runner.Of(
            "clusters", "13/13,12/12,9/9,9/9,8/8,8/8,12/13,11/12,9/10,9/10,8/9,11/13,4/5,5/7,7/10,7/10",
            "--against", "12/12,11/11,10/10,9/9,10/11,9/10,9/10,8/9,8/9,4/5,7/9,4/7,5/10,3/6,3/10,0/7", "--json").Output);
        json.RootElement.GetProperty("group").GetProperty("designEffect").GetDouble().Should().BeApproximately(1.232495, 5e-7);
        json.RootElement.GetProperty("against").GetProperty("designEffect").GetDouble().Should().BeApproximately(3.952861, 5e-7);
        json.RootElement.GetProperty("tests")[0].GetProperty("chiSquare").GetDouble().Should().BeApproximately(4.0406105011, 1e-9);
    }

    [Theory]
    [InlineData("--one-sided", "interval", "1/10", "--one-sided", "left")]
    [InlineData("--confidence", "interval", "1/10", "--one-sided", "upper", "--confidence", "0.5")]
    [InlineData("--design-effect", "interval", "1/10", "--design-effect", "0.5")]
    [InlineData("<counts>", "clusters", "5/3,1/2")]
    [InlineData("--against", "clusters", "1/3,1/2", "--against", "x")]
    [InlineData("<question>", "plan", "tests")]
    [InlineData("--rate", "plan", "zero-events")]
    [InlineData("--rate", "plan", "zero-events", "--rate", "1")]
    [InlineData("--rate", "plan", "zero-events", "--rate", "5%")]
    [InlineData("--lots", "plan", "zero-events", "--rate", "0.05", "--lots", "4")]
    [InlineData("--lots", "plan", "lot", "--rate", "0.05", "--excess", "0.1", "--lots", "1")]
    [InlineData("--excess", "plan", "lot", "--rate", "0.5", "--excess", "0.6", "--lots", "4")]
    [InlineData("--every", "cadence", "--every", "0,7", "--sensitivity", "0.6", "--window", "0,7")]
    [InlineData("--every", "cadence", "--every", "weekly", "--sensitivity", "0.6", "--window", "0,7")]
    [InlineData("--window", "cadence", "--every", "7", "--sensitivity", "0.6")]
    [InlineData("--window", "cadence", "--every", "7", "--sensitivity", "0.6", "--window", "7,3")]
    [InlineData("--window", "cadence", "--every", "7", "--sensitivity", "0.6", "--window", "7")]
    [InlineData("--infectious", "cadence", "--every", "7", "--sensitivity", "0.6", "--window", "0,7", "--infectious", "-1,5")]
    [InlineData("--delay", "cadence", "--every", "7", "--sensitivity", "0.6", "--window", "0,7", "--delay", "-1")]
    [InlineData("--sensitivity", "cadence", "--every", "7", "--sensitivity", "60%", "--window", "0,7")]
    [InlineData("--incidence", "cadence", "--every", "7", "--sensitivity", "0.6", "--window", "0,7", "--incidence", "5")]
    [InlineData("--people", "cadence", "--every", "7", "--sensitivity", "0.6", "--window", "0,7", "--people", "0")]
    [InlineData("--screens", "plan", "audit", "--sensitivity", "0.7", "--specificity", "0.99", "--prevalence", "0.01", "--width", "0.2", "--screens", "0")]
    public void Figures_that_cannot_be_are_refused_by_name(string name, params string[] args)
    {
        var run = Runner.Of(args);
        run.Code.Should().Be(2);
        run.Output.Should().BeEmpty();
        run.Errors.Should().Contain(name).And.NotContain("   at ");
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
    [InlineData("contrast")]
    [InlineData("contrast", "1/2")]
    [InlineData("contrast", "5/3", "1/2")]
    [InlineData("contrast", "-1/10", "1/2")]
    [InlineData("contrast", "0.5", "1/2")]
    [InlineData("contrast", "1/2", "1/2", "1/2")]
    [InlineData("contrast", "1/2", "1/3", "--measure", "wald")]
    [InlineData("contrast", "1/2", "1/3", "--confidence", "95%")]
    [InlineData("contrast", "1/2", "1/3", "--paired", "1,2,3,4")]
    [InlineData("contrast", "1/9223372036854775807", "1/9223372036854775807")]
    [InlineData("contrast", "--paired", "1,2,3")]
    [InlineData("contrast", "--paired", "1,2,3,-4")]
    [InlineData("contrast", "--paired", "1,2,3,4.5")]
    [InlineData("contrast", "--paired", "9223372036854775807,2,3,4")]
    [InlineData("contrast", "--paired", "1,2,3,4", "--measure", "ratio")]
    [InlineData("agreement")]
    [InlineData("agreement", "1,2,3")]
    [InlineData("agreement", "1,2/3")]
    [InlineData("agreement", "1,2/3,x")]
    [InlineData("agreement", "7")]
    [InlineData("agreement", "1,2,3,-1")]
    [InlineData("agreement", "1,2,3,4", "--weights", "cubic")]
    [InlineData("agreement", "9223372036854775807,0/1,0")]
    [InlineData("adjust")]
    [InlineData("adjust", "0.01,1.2")]
    [InlineData("adjust", "0.01,,0.2")]
    [InlineData("adjust", "0.01", "--method", "sidak")]
    [InlineData("adjust", "0.01", "--level", "5%")]
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
