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
    public void A_sampling_stratum_that_is_an_address_is_refused_without_repeating_it()
    {
        using var folder = new TestFolder()
            .With("screening.csv", "person,site,collected_at,result\np1,North,2026-01-05T08:00,negative\np2,North,2026-01-05T08:05,negative\n")
            .With("confirmatory.csv", "person,collected_at,result,reason,sampling_stratum\np1,2026-01-05T09:00,negative,audit,ann.example@example.org\n");
        var error = folder.Refused().Single(one => one.Severity == Severity.Error);
        (error.Code, error.File, error.Column).Should().Be((ReadingDiagnostics.NamesPeople, "confirmatory.csv", "sampling_stratum"));
        error.Message.Should().Contain("of the confirmatory export").And.NotContain("example.org");
    }

    [Fact]
    public void Sites_that_look_like_names_of_people_are_warned_of()
    {
        using var folder = Folder(("Maria Smith", "L1"), ("John Garcia", "L2"), ("Peter Rossi", "L3"));
        var warned = folder.Read().Diagnostics.Should().ContainSingle(diagnostic => diagnostic.Code == PrivacyDiagnostics.IdentifierLevels).Which;
        warned.Severity.Should().Be(Severity.Warning);
        warned.Message.Should().NotContainAny("Maria", "Garcia", "Rossi");
    }

    [Theory]
    [InlineData("kit", "ann.example@example.org", 1, "e-mail addresses")]
    [InlineData("kit", "+44 20 7946 0123", 1, "telephone numbers")]
    [InlineData("kit", "212-555-012", 4, "telephone numbers")]
    [InlineData("kit", "123-45-678", 4, "national numbers")]
    [InlineData("lot", "123-45-678", 4, "national numbers")]
    [InlineData("lot", "+44 20 7946 0123", 1, "telephone numbers")]
    [InlineData("site", "+44 20 7946 0123", 1, "telephone numbers")]
    public void Addresses_and_numbers_of_people_are_refused_alike_in_sites_lots_and_kits(string column, string value, int times, string what)
    {
        // Among forty good ones: every name is looked at, not a sample.
        var values = Enumerable.Range(0, 30).Select(i => $"{column}-{i}").Concat(Enumerable.Range(0, times).Select(i => times == 1 ? value : value + i)).ToList();
        using var folder = new TestFolder().With("screening.csv", "person,site,lot,kit,collected_at,result\n" + string.Concat(values.Select((one, at) =>
            $"p{at},{(column == "site" ? one : "North")},{(column == "lot" ? one : "L-1")},{(column == "kit" ? one : "K-1")},2026-01-05T{8 + (at / 60):00}:{at % 60:00},negative\n")));
        var found = folder.Refused().Single(one => one.Severity == Severity.Error);
        (found.Code, found.Column).Should().Be((ReadingDiagnostics.NamesPeople, column));
        found.Message.Should().Contain($"{times} of {30 + times} ").And.Contain(what).And.Contain($"In the column {column}").And.NotContainAny("example.org", "7946", "678", "212");
    }

    [Theory]
    [InlineData("(10)1234567", "(10)1234568")]
    [InlineData("(21)100200301", "(21)100200302")]
    [InlineData("123-456-7890", "K-2")]
    public void Numbers_of_packages_and_one_number_alone_pass(string one, string other)
    {
        using var folder = new TestFolder().With("screening.csv", $"person,site,lot,kit,collected_at,result\np1,North,{one},{one},2026-01-05T08:00,negative\np2,North,{other},{other},2026-01-05T08:05,negative\n");
        folder.Read().Diagnostics.Should().BeEmpty();
    }

    [Fact]
    public void Names_of_people_are_in_no_message_and_not_in_what_inspect_shows()
    {
        // Findings that name sites: spelled in two ways, no negative run, one minute of the hour.
        var rows = string.Concat(Enumerable.Range(0, 40).Select(i => $"p{i},{(i % 4) switch { 0 => "Maria", 1 => "maria", 2 => "Garcia", _ => "North" }},K-{i % 3},2026-01-{5 + (i / 10):00}T{8 + (i % 10):00}:00,positive\n"));
        using var folder = new TestFolder().With("screening.csv", "person,site,kit,collected_at,result\n" + rows);
        var reading = folder.Read();
        var warned = reading.Diagnostics.Should().ContainSingle(one => one.Code == PrivacyDiagnostics.IdentifierLevels).Which;
        (warned.Severity, warned.Column).Should().Be((Severity.Warning, "site"));
        warned.Message.Should().Contain("In the column site").And.Contain("replace them by pseudonyms");
        reading.Diagnostics.Should().Contain(one => one.Code == ConductDiagnostics.SiteSpelledTwice).And.Contain(one => one.Code == ConductDiagnostics.NoNegatives);
        reading.Diagnostics.Concat(reading.Tally.Cells.Diagnostics).Should().NotContain(one => one.Message.Contains("aria", StringComparison.Ordinal) || one.Message.Contains("Garcia", StringComparison.Ordinal));
        reading.Diagnostics.Should().Contain(one => one.Message.Contains("(a name that is not shown)", StringComparison.Ordinal)).And.Contain(one => one.Message.Contains("\"North\"", StringComparison.Ordinal));
        reading.Understanding.SelectMany(export => export.Columns).SelectMany(column => column.Levels).Select(level => level.Name).Should().Contain("North").And.NotContain(["Maria", "maria", "Garcia"]);
    }

    [Fact]
    public void Kits_with_names_of_people_are_warned_of_by_their_column()
    {
        using var folder = new TestFolder().With("screening.csv", "person,site,kit,collected_at,result\np1,North,Maria,2026-01-05T08:01,negative\np2,North,Peter,2026-01-05T08:05,negative\np3,North,K-3,2026-01-05T08:09,negative\n");
        folder.Read().Diagnostics.Should().ContainSingle().Which.Should().Match<Diagnostic>(one => one.Code == PrivacyDiagnostics.IdentifierLevels && one.Column == "kit");
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
