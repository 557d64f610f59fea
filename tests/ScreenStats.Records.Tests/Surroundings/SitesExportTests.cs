using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Tests.Surroundings;

public sealed class SitesExportTests
{
    private const string Screening = TestFolder.Headings
        + "p1,Dock,2026-01-05T08:00,negative\np2,Mill,2026-01-05T08:05,negative\np3,Yard,2026-01-06T08:10,positive\np4,Yard,2026-01-06T08:20,negative\n";

    [Theory]
    [InlineData("site,region\nDock,Coast\nMill,Inland\nYard,Coast\n")]
    [InlineData("Region;Site;Opened\nCoast;Dock;1999\nInland;Mill;2003\nCoast;Yard;2001\n")]
    [InlineData("Standort\tBundesland\nDock\tCoast\nMill\tInland\nYard\tCoast\n")]
    [InlineData("\uFEFFétablissement,région\r\nDock,Coast\r\nMill,Inland\r\nYard,Coast\r\n")]
    [InlineData("our sites in 2026\n\nlugar,provincia\nDock,Coast\nMill,Inland\nYard,Coast\nTotal,3\n")]
    public void Each_site_has_its_region_however_the_table_is_written(string table)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            foreach (var culture in (string[])["", "de-DE", "tr-TR"])
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
                using var folder = new TestFolder().With("screening.csv", Screening).With("sites.csv", table);
                var reading = folder.Read();

                reading.Tally.Cells.Sites.Should().Equal(new SiteCell("Dock", "Coast"), new SiteCell("Mill", "Inland"), new SiteCell("Yard", "Coast"));
                reading.Diagnostics.Where(one => one.Severity != Severity.Note).Should().BeEmpty();
                TestFolder.Rows(reading, LedgerEntry.Counted, ExportKind.Sites).Should().Be(3);
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_program_without_the_export_has_no_sites_in_the_tally()
    {
        using var folder = new TestFolder().With("screening.csv", Screening);
        folder.Read().Tally.Cells.Sites.Should().BeEmpty();
    }

    [Fact]
    public void A_site_with_two_regions_stops_the_reading_and_names_the_line_and_no_text()
    {
        using var folder = new TestFolder().With("screening.csv", Screening).With("sites.csv", "site,region\nDock,Coast\nMill,Inland\nDock,Highland\n");

        var found = folder.Refused().First(one => one.Severity == Severity.Error);

        found.Code.Should().Be(SurroundingsDiagnostics.TwoRegions);
        (found.File, found.Line).Should().Be(("sites.csv", 4L));
        found.Message.Should().NotContain("Dock").And.NotContain("Coast").And.NotContain("Highland");
    }

    [Fact]
    public void A_site_that_is_repeated_counts_once_and_takes_the_region_that_one_of_its_rows_names()
    {
        using var folder = new TestFolder().With("screening.csv", Screening).With("sites.csv", "site,region\nDock,\nMill,Inland\nDock,Coast\nMill,Inland\nYard,Coast\nYard,n/a\n");

        var reading = folder.Read();

        reading.Tally.Cells.Sites.Should().Equal(new SiteCell("Dock", "Coast"), new SiteCell("Mill", "Inland"), new SiteCell("Yard", "Coast"));
        reading.Diagnostics.Should().ContainSingle().Which.Should().Match<Diagnostic>(one => one.Code == SurroundingsDiagnostics.RepeatedSite && one.Occurrences == 3 && one.Line == 4);
        TestFolder.Rows(reading, LedgerEntry.Duplicate, ExportKind.Sites).Should().Be(3);
        TestFolder.Rows(reading, LedgerEntry.SetAside, ExportKind.Sites).Should().Be(0);
        TestFolder.Rows(reading, ExportKind.Sites).Should().Be(6, "the ledger adds up to the rows of the file");
        reading.SetAside.Should().HaveCount(3).And.OnlyContain(row => row.File == "sites.csv");
    }

    [Fact]
    public void Sites_without_a_region_and_sites_never_screened_are_told_with_the_export_spelled_as_it_is()
    {
        using var folder = new TestFolder().With("screening.csv", Screening).With("sites.csv", "site,region\nDock,\nMILL,Inland\nYard,Coast\nQuay,Coast\n,Coast\n");

        var found = folder.Read().Diagnostics;

        found.Single(one => one.Code == SurroundingsDiagnostics.SiteWithoutRegion).Message.Should().Contain("2 of 3 screened sites").And.Contain("\"Dock\", \"Mill\"");
        found.Single(one => one.Code == SurroundingsDiagnostics.SiteNeverScreened).Message.Should().Contain("2 sites").And.Contain("\"MILL\", \"Quay\"");
        found.Single(one => one.Code == ReadingDiagnostics.MissingValue).Line.Should().Be(6);
    }

    [Fact]
    public void Regions_that_are_addresses_or_numbers_of_people_are_refused_and_names_are_a_warning_that_does_not_repeat_them()
    {
        using var addresses = new TestFolder().With("screening.csv", Screening).With("sites.csv", "site,region\nDock,anna.berg@example.org\nMill,Inland\n");
        var refused = addresses.Refused()[0];
        refused.Code.Should().Be(ReadingDiagnostics.NamesPeople);
        (refused.Column, refused.File).Should().Be(("region", "sites.csv"));
        refused.Message.Should().Contain("region of the sites export").And.NotContain("example.org");

        using var names = new TestFolder().With("screening.csv", Screening).With("sites.csv", "site,region\nDock,Martin Hall\nMill,Anna Berg\nYard,Peter Lang\n");
        var warned = names.Read().Diagnostics.Single(one => one.Code == PrivacyDiagnostics.IdentifierLevels);
        warned.Column.Should().Be("region");
        warned.Message.Should().NotContain("Hall");
    }

    [Fact]
    public void Names_of_sites_that_may_be_people_are_not_repeated_by_the_findings_about_regions()
    {
        using var folder = new TestFolder()
            .With("screening.csv", Screening.Replace("Dock", "Martin Hall", StringComparison.Ordinal).Replace("Mill", "Anna Berg", StringComparison.Ordinal).Replace("Yard", "Peter Lang", StringComparison.Ordinal))
            .With("sites.csv", "site,region\nMartin Hall,Coast\n");

        var found = folder.Read().Diagnostics.Single(one => one.Code == SurroundingsDiagnostics.SiteWithoutRegion);

        found.Message.Should().Contain("(a name that is not shown)").And.NotContain("Anna");
    }

    [Fact]
    public void The_program_file_says_where_the_table_is_and_how_it_is_headed()
    {
        using var folder = new TestFolder().With("screening.csv", Screening).With("places.txt", "Where|Part of|Since\nDock|Coast|1999\nMill|Inland|2001\nYard|Coast|2003\n");
        var settings = ProgramFile.Parse("""{ "exports": { "sites": { "files": ["places.txt"], "columns": { "site": "Where", "region": "Part of" } } } }""");

        folder.Read(settings).Tally.Cells.Sites.Should().HaveCount(3).And.Contain(new SiteCell("Mill", "Inland"));
    }

    [Fact]
    public void A_table_without_a_site_column_is_refused_with_what_to_write()
    {
        using var folder = new TestFolder().With("screening.csv", Screening).With("sites.csv", "place,region\nDock,Coast\n");

        folder.Refused().Single().Message.Should().Contain("required column site").And.Contain("\"sites\": { \"columns\": { \"site\"");
    }

    [Fact]
    public void A_region_of_more_than_200_bytes_counts_as_not_recorded()
    {
        using var folder = new TestFolder().With("screening.csv", Screening).With("sites.csv", $"site,region\nDock,{new string('x', 201)}\nMill,Inland\nYard,Coast\n");

        var reading = folder.Read();

        reading.Tally.Cells.Sites.Should().Contain(new SiteCell("Dock", Levels.None));
        reading.Diagnostics.Should().Contain(one => one.Code == ReadingDiagnostics.NameTooLong && one.Column == "region");
    }
}
