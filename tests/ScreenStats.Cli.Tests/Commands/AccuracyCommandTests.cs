using System.Text.Json;
using ScreenStats.Testing;

namespace ScreenStats.Cli.Tests.Commands;

/// <summary><c>accuracy</c>, <c>bounds</c> and <c>latent-class</c> from the command line.</summary>
public sealed class AccuracyCommandTests
{
    private static readonly string[] Hepatic = ["--positives", "231/263", "--negatives", "27/81", "--unverified-positives", "166", "--unverified-negatives", "140"];

    private static readonly string[] Workplaces = ["--positives", "641/1103", "--unverified-positives", "219", "--unverified-negatives", "902086"];

    public static TheoryData<string, string[]> Screens => new()
    {
        { "accuracy", ["accuracy", .. Hepatic] },
        { "accuracy-json", ["accuracy", .. Hepatic, "--json"] },
        { "accuracy-undefined", ["accuracy", .. Workplaces] },
        { "accuracy-undefined-json", ["accuracy", .. Workplaces, "--json"] },
        { "accuracy-none-missed", ["accuracy", "--positives", "122/224", "--negatives", "0/1000", "--unverified-positives", "40", "--unverified-negatives", "58736", "--confirmatory-sensitivity", "0.95", "--confirmatory-specificity", "199/200"] },
        { "accuracy-without-negatives", ["accuracy", "--positives", "3/10", "--confirmatory-sensitivity", "0.4", "--confirmatory-specificity", "0.5"] },
        { "accuracy-nothing", ["accuracy", "--positives", "0/0"] },
        { "bounds", ["bounds", .. Workplaces, "--claimed-specificity", "0.997"] },
        { "bounds-json", ["bounds", .. Hepatic, "--confirmatory-sensitivity", "0.97", "--confirmatory-specificity", "198/200", "--json"] },
        { "bounds-undefined", ["bounds", "--positives", "0/0"] },
        { "latent-class", ["latent-class", "--counts", "14,4,9,528", "--second-population", "887,31,37,367"] },
        { "latent-class-json", ["latent-class", "--counts", "14,4,9,528", "--second-population", "887,31,37,367", "--json"] },
        { "latent-class-undefined", ["latent-class", "--counts", "14,4,9,528", "--second-population", "28,8,18,1056"] },
        { "latent-class-too-many", ["latent-class", "--counts", "900,200,200,9000", "--sensitivity-prior", "2,1", "--specificity-prior", "2,1", "--second-sensitivity-prior", "2,1", "--second-specificity-prior", "2,1"] },
        { "latent-class-one-test", ["latent-class", "--positives", "40/162", "--sensitivity-prior", "4.44,13.31", "--specificity-prior", "71.25,3.75"] },
        { "latent-class-two-tests", ["latent-class", "--counts", "38,87,2,35", "--sensitivity-prior", "21.96,5.49", "--specificity-prior", "4.1,1.76", "--second-sensitivity-prior", "4.44,13.31", "--second-specificity-prior", "71.25,3.75"] },
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
            // The exact sum's last digits may differ between machines; the text shows six.
            Golden.Check($"cli/{name}.txt", run.Output);
        }
    }

    // Hepatic scintigraphy, Drum and Christacopoulos 1972 in Zhou 1993 (printed values from memory); half a unit of the last digit.
    [Fact]
    public void Accuracy_gives_the_published_values()
    {
        using var json = JsonDocument.Parse(Runner.Of(["accuracy", .. Hepatic, "--json"]).Output);
        var sensitivity = json.RootElement.GetProperty("sensitivity");
        sensitivity.GetProperty("naive").GetProperty("estimate").GetDouble().Should().BeApproximately(.895, 5e-4);
        sensitivity.GetProperty("corrected").GetProperty("estimate").GetDouble().Should().BeApproximately(.84, 5e-3);
        sensitivity.GetProperty("corrected").GetProperty("waldLower").GetDouble().Should().BeApproximately(.788, 5e-4);
        sensitivity.GetProperty("bounds").GetProperty("lower").GetDouble().Should().BeApproximately(231.0 / 398, 1e-12);
        json.RootElement.GetProperty("specificity").GetProperty("corrected").GetProperty("estimate").GetDouble().Should().BeApproximately(.74, 5e-3);
        json.RootElement.GetProperty("screenNegative").GetProperty("all").GetInt64().Should().Be(221);
    }

    // Gans et al., JAMA 2022;327:485-486 (seen): 462 of 1,103 refuted; 0.05 % of screens.
    [Fact]
    public void Without_verified_negatives_the_predictive_value_is_known_and_the_rest_says_why_not()
    {
        using var json = JsonDocument.Parse(Runner.Of(["accuracy", .. Workplaces, "--json"]).Output);
        var corrected = json.RootElement.GetProperty("sensitivity").GetProperty("corrected");
        corrected.GetProperty("estimate").ValueKind.Should().Be(JsonValueKind.Null);
        corrected.GetProperty("estimateUndefined").GetString().Should().Contain("no negative run was verified");
        json.RootElement.GetProperty("positivePredictiveValue").GetProperty("corrected").GetProperty("estimate").GetDouble().Should().BeApproximately(1 - .42, 5e-3);
        json.RootElement.GetProperty("falsePositivesPerTest").GetProperty("lower").GetDouble().Should().BeApproximately(.0005, 5e-5);
        json.RootElement.GetProperty("oneSided").GetProperty("specificityFromPositivity").GetDouble().Should().BeApproximately(.9985, 5e-5);
    }

    // Hui and Walter 1980 (counts and printed values from memory).
    [Fact]
    public void Latent_class_gives_the_published_prevalences()
    {
        using var json = JsonDocument.Parse(Runner.Of("latent-class", "--counts", "14,4,9,528", "--second-population", "887,31,37,367", "--json").Output);
        var figures = json.RootElement.GetProperty("figures");
        figures[0].GetProperty("estimate").GetDouble().Should().BeApproximately(.0268, 5e-5);
        figures[1].GetProperty("estimate").GetDouble().Should().BeApproximately(.7168, 5e-5);
        json.RootElement.GetProperty("fit").GetProperty("degreesOfFreedom").GetInt32().Should().Be(0);
    }

    [Theory]
    [InlineData("accuracy")]
    [InlineData("accuracy", "--positives", "300/263")]
    [InlineData("accuracy", "--positives", "0.9")]
    [InlineData("accuracy", "--positives", "231/263", "--unverified-negatives", "-1")]
    [InlineData("accuracy", "--positives", "231/263", "--unverified-negatives", "1.5")]
    [InlineData("accuracy", "--positives", "231/263", "--confirmatory-sensitivity", "0.9")]
    [InlineData("accuracy", "--positives", "231/263", "--confirmatory-sensitivity", "0,9", "--confirmatory-specificity", "0.9")]
    [InlineData("accuracy", "--positives", "231/263", "--confidence", "1")]
    [InlineData("bounds", "--positives", "231/263", "--claimed-specificity", "93%")]
    [InlineData("bounds", "--positives", "231/263", "--missed-share", "1.2")]
    [InlineData("latent-class")]
    [InlineData("latent-class", "--counts", "14,4,9")]
    [InlineData("latent-class", "--counts", "14,4,9,-1")]
    [InlineData("latent-class", "--counts", "14,4,9,528")]
    [InlineData("latent-class", "--second-population", "14,4,9,528")]
    [InlineData("latent-class", "--counts", "14,4,9,528", "--positives", "3/4")]
    [InlineData("latent-class", "--counts", "14,4,9,528", "--second-population", "887,31,37,367", "--sensitivity-prior", "1,1")]
    [InlineData("latent-class", "--positives", "40/162", "--sensitivity-prior", "0,1", "--specificity-prior", "1,1")]
    [InlineData("latent-class", "--positives", "40/162", "--sensitivity-prior", "1,1,1", "--specificity-prior", "1,1")]
    [InlineData("latent-class", "--positives", "40/162", "--sensitivity-prior", "1,1", "--specificity-prior", "1,1", "--second-sensitivity-prior", "1,1")]
    public void What_cannot_be_followed_is_a_usage_error_with_one_message(params string[] args)
    {
        foreach (var culture in (string[])["", "de-DE"])
        {
            var run = Runner.Under(culture, args);

            run.Code.Should().Be(2, string.Join(' ', args));
            run.Output.Should().BeEmpty();
            run.Errors.Should().StartWith("screenstats: ").And.Contain("--help").And.NotContain("   at ");
            run.Errors.Split('\n').Should().HaveCount(3);
        }
    }

    [Fact]
    public void Examples_work_as_written()
    {
        foreach (var example in App.Commands().Where(command => command.Name is "accuracy" or "bounds" or "latent-class").SelectMany(command => command.Examples))
            Runner.Of(example.Split(' ')[1..]).Code.Should().Be(0, example);
    }
}
