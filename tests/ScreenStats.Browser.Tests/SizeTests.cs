namespace ScreenStats.Browser.Tests;

/// <summary>What a report may weigh; needs no browser.</summary>
public class SizeTests(SampleReport report)
{
    [Fact]
    public void The_page_of_the_sample_program_is_less_than_two_megabytes() =>
        new FileInfo(report.File).Length.Should().BeInRange(500_000, 2_000_000, "it is sent by e-mail and opened on a telephone");
}
