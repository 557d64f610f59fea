using System.Globalization;
using System.Text;
using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Records.Tests.Understanding;

/// <summary>How often something was found is a number of rows, whoever met the text first.</summary>
public class CountedFindingsTests
{
    private const int Rows = 20_000;

    [Fact]
    public void An_operator_who_looks_like_a_person_is_counted_in_every_row_whatever_the_number_of_threads()
    {
        var text = new StringBuilder("person,site,collected_at,result,operator\n");
        for (var row = 0; row < Rows; row++) text.Append(CultureInfo.InvariantCulture, $"p{row},North,2026-01-05T08:00,negative,{(row % 2 == 0 ? "o1" : "Martin Hall")}\n");
        using var folder = new TestFolder().With("screening.csv", text.ToString());
        foreach (var threads in new[] { 1, 2, 5 })
        {
            var read = () => folder.Read(options: new ReadOptions { Threads = threads });
            read.Should().Throw<UnusableDataException>().Which.Diagnostics.Single(found => found.Column == "operator" && found.Code == ReadingDiagnostics.NamesPeople && found.Line is not null).Occurrences.Should().Be(Rows / 2);
        }
    }

    [Fact]
    public void Times_of_expiry_with_an_offset_are_counted_in_every_row_whatever_the_number_of_threads()
    {
        var text = new StringBuilder("person,site,collected_at,result,lot,lot_expiry\n");
        for (var row = 0; row < Rows; row++) text.Append(CultureInfo.InvariantCulture, $"p{row},North,2026-01-05T08:00Z,negative,A1,{(row % 4 == 0 ? "2027-01" : "2027-01-31T12:00Z")}\n");
        using var folder = new TestFolder().With("screening.csv", text.ToString());
        foreach (var threads in new[] { 1, 2, 5 })
        {
            var column = folder.Read(options: new ReadOptions { Threads = threads }).Understanding[0].Columns.Single(one => one.Column == "lot_expiry");
            column.WithOffset.Should().Be(Rows * 3 / 4);
            column.WithoutOffset.Should().Be(0);
            column.Recorded.Should().Be(Rows);
        }
    }
}
