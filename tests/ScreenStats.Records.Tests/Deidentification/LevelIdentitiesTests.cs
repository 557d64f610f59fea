using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Deidentification;

namespace ScreenStats.Records.Tests.Deidentification;

public class LevelIdentitiesTests
{
    [Theory]
    [InlineData("ann.example@example.org", "L1")]
    [InlineData("+44 20 7946 0123", "L1")]
    [InlineData("123-45-6789", "L1")]
    [InlineData("North", "ann.example@example.org")]
    public void A_site_or_lot_that_is_an_address_or_a_number_of_a_person_is_refused_without_repeating_it(string site, string lot)
    {
        // National and telephone numbers are refused from two on: one alone may be a code.
        var other = site[^1] == 'h' || site.Contains('@', StringComparison.Ordinal) ? site : site[..^1] + "4";
        using var folder = Folder((site, lot), (other, lot));
        var refused = folder.Refused();
        refused.Should().ContainSingle(diagnostic => diagnostic.Severity == Severity.Error).Which.Code.Should().Be(ReadingDiagnostics.NamesPeople);
        refused.Should().OnlyContain(diagnostic => !diagnostic.Message.Contains("example.org") && !diagnostic.Message.Contains("7946") && !diagnostic.Message.Contains("6789"));
    }

    [Fact]
    public void Sites_that_look_like_names_of_people_are_warned_of()
    {
        using var folder = Folder(("Maria Smith", "L1"), ("John Garcia", "L2"), ("Peter Rossi", "L3"));
        var warned = folder.Read().Diagnostics.Should().ContainSingle(diagnostic => diagnostic.Code == PrivacyDiagnostics.IdentifierLevels).Which;
        warned.Severity.Should().Be(Severity.Warning);
        warned.Message.Should().NotContainAny("Maria", "Garcia", "Rossi");
    }

    [Fact]
    public void Usual_names_of_sites_and_lots_pass()
    {
        using var folder = Folder(("North", "D-0719"), ("Green Valley", "2026-014"), ("Site 3", "20260105"), ("Plant 12-34", "123-456-7890"));
        folder.Read().Diagnostics.Should().NotContain(diagnostic => diagnostic.Code == PrivacyDiagnostics.IdentifierLevels);
    }

    [Theory]
    [InlineData("note ann.example@example.org", "")]
    [InlineData("of 123-45-6789", "")]
    [InlineData("read at (minutes)", "read at (minutes)")]
    public void A_heading_that_holds_an_address_is_not_shown(string heading, string shown) => ShownHeading.Of(heading).Should().Be(shown);

    private static TestFolder Folder(params (string Site, string Lot)[] rows) => new TestFolder().With(
        "screening.csv", "person,site,lot,collected_at,result\n" + string.Concat(rows.Select((row, index) => $"p{index},{row.Site},{row.Lot},2026-01-0{index + 1}T08:00,negative\n")));
}
