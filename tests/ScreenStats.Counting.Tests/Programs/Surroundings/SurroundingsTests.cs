using ScreenStats.Counting.Programs.Surroundings;

namespace ScreenStats.Counting.Tests.Programs.Surroundings;

public sealed class SurroundingsTests
{
    [Fact]
    public void A_change_without_sites_touches_every_site_and_one_with_patterns_only_those()
    {
        new ChangeSettings(new(2026, 1, 13), "new rule", []).Touches("North").Should().BeTrue();
        var some = new ChangeSettings(new(2026, 1, 13), "new device", ["N*", "South"]);
        some.Touches("North").Should().BeTrue();
        some.Touches("South").Should().BeTrue();
        some.Touches("Southern").Should().BeFalse();
    }

    [Theory]
    [InlineData("North", 5, false)]
    [InlineData("North", 6, true)]
    [InlineData("North", 19, true)]
    [InlineData("North", 20, false)]
    [InlineData("north", 10, false)]
    public void An_outbreak_holds_from_its_first_to_its_last_day_at_its_site(string site, int day, bool holds) =>
        new OutbreakSettings("North", new(2026, 1, 6), new(2026, 1, 19), "").Holds(site, new(2026, 1, day)).Should().Be(holds);

    [Fact]
    public void An_outbreak_without_a_last_day_goes_on() =>
        new OutbreakSettings("North", new(2026, 1, 6), null, "").Holds("North", new(2030, 1, 1)).Should().BeTrue();

    [Fact]
    public void A_community_value_holds_until_the_next_and_the_last_as_long_as_the_one_before_it()
    {
        var community = new CommunitySettings { Values = [new(new(2026, 1, 5), 0.01, null, null), new(new(2026, 1, 12), 0.02, null, null)] };

        community.On(new(2026, 1, 4)).Should().BeNull();
        community.On(new(2026, 1, 5))!.Value.Should().Be(0.01);
        community.On(new(2026, 1, 11))!.Value.Should().Be(0.01);
        community.On(new(2026, 1, 12))!.Value.Should().Be(0.02);
        community.On(new(2026, 1, 18))!.Value.Should().Be(0.02);
        community.On(new(2026, 1, 19)).Should().BeNull("an old figure is not carried on");
        (community with { Until = new(2026, 1, 25) }).On(new(2026, 1, 25))!.Value.Should().Be(0.02);
        (community with { Until = new(2026, 1, 25) }).On(new(2026, 1, 26)).Should().BeNull();
    }

    [Fact]
    public void One_community_value_alone_has_no_end()
    {
        var community = new CommunitySettings { Values = [new(new(2026, 1, 5), 0.01, null, null)] };

        community.LastDay.Should().BeNull();
        community.On(new(2036, 1, 5))!.Value.Should().Be(0.01);
    }
}
