using ScreenStats.Counting.Diagnostics;
using ScreenStats.Synthesis;
using ScreenStats.Synthesis.Planning;

namespace ScreenStats.Tests.Synthesis;

public sealed class SynthesisPlanTests
{
    [Fact]
    public void A_plan_is_read_back_as_it_was_written()
    {
        var text = SynthesisPlan.Standard.ToJson();
        SynthesisPlan.Parse(text).ToJson().Should().Be(text);
        text.Should().NotContain("\r").And.EndWith("}\n");
    }

    [Theory]
    [InlineData("", "line 1")]
    [InlineData("null", "null")]
    [InlineData("{ \"title\": \"x\"", "line 1")]
    [InlineData("{\n \"titel\": \"x\" }", "not a plan")]
    [InlineData("{ \"title\": \"x\", \"firstDay\": \"2024-09-30\", \"sites\": [], \"kits\": [], \"lots\": [] }", "sites: at least one is needed")]
    public void What_is_no_plan_is_refused_with_one_clear_message(string json, string message)
    {
        var parse = () => SynthesisPlan.Parse(json);
        parse.Should().Throw<UnusableDataException>().Which.Message.Should().Contain(message).And.StartWith("plan.json");
    }

    [Fact]
    public void A_missing_file_is_refused_by_name_only()
    {
        var read = () => SynthesisPlan.Read(Path.Combine(Path.GetTempPath(), "nowhere", "my-plan.json"));
        read.Should().Throw<UnusableDataException>().WithMessage("The plan my-plan.json cannot be read.*");
    }

    [Fact]
    public void A_site_without_a_lot_on_a_working_day_is_named_with_the_day()
    {
        var plan = SynthesisPlan.Standard with { Lots = [new SynthesisLot { Name = "L", Kit = "Device one", To = new DateOnly(2024, 9, 10) }] };
        var check = () => plan.Validate();
        check.Should().Throw<UnusableDataException>().WithMessage("*Site A on 2024-09-11*");
    }

    [Fact]
    public void Every_fault_is_reported_at_once()
    {
        var plan = SynthesisPlan.Standard with
        {
            RepeatShare = 1.5,
            Enrolment = 0,
            Infection = new SynthesisInfection { BackgroundIncidence = double.NaN, DetectabilityByDay = [] },
        };
        var check = () => plan.Validate();
        check.Should().Throw<UnusableDataException>().Which.Diagnostics.Select(diagnostic => diagnostic.Column).Should()
            .BeEquivalentTo("repeatShare", "enrolment", "infection.backgroundIncidence", "infection.detectabilityByDay");
    }

    [Fact]
    public void A_first_day_that_is_no_Monday_is_refused()
    {
        var check = () => (SynthesisPlan.Standard with { FirstDay = new DateOnly(2024, 9, 3) }).Validate();
        check.Should().Throw<UnusableDataException>().WithMessage("*firstDay: write a Monday*");
    }
}
