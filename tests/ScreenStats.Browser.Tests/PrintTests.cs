using System.Globalization;
using UglyToad.PdfPig;

namespace ScreenStats.Browser.Tests;

/// <summary>The report on paper: nothing cut, nothing shrunk, every page numbered.</summary>
public sealed class PrintTests(SampleReport report)
{
    private const double PointsOfAMillimetre = 72 / 25.4;

    // Widths and heights in millimetres; the style sheet leaves 15 mm at the sides.
    private static readonly Dictionary<string, (double Width, double Height)> Papers = new(StringComparer.Ordinal) { ["A4"] = (210, 297), ["Letter"] = (215.9, 279.4) };

    [Theory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task A_print_has_numbered_pages_with_nothing_cut_and_nothing_shrunk(string paper)
    {
        await using var opened = await report.Open(View.Desk);
        var bytes = await opened.Page.PdfAsync(new() { Format = paper });
        using var print = PdfDocument.Open(bytes);
        var (width, height) = Papers[paper];
        print.NumberOfPages.Should().BeInRange(40, 160);
        var sizes = new Dictionary<double, int>();
        foreach (var page in print.GetPages())
        {
            page.Width.Should().BeApproximately(width * PointsOfAMillimetre, 1, "the paper that was asked for");
            page.Height.Should().BeApproximately(height * PointsOfAMillimetre, 1);
            var text = string.Concat(page.Letters.Select(letter => letter.Value.Trim()));
            text.Should().Contain(string.Create(CultureInfo.InvariantCulture, $"Page{page.Number}of{print.NumberOfPages}"));
            var beyond = page.Letters.Where(letter => letter.BoundingBox.Right > page.Width - (14 * PointsOfAMillimetre) || letter.BoundingBox.Left < 14 * PointsOfAMillimetre);
            string.Concat(beyond.Select(letter => letter.Value)).Should().BeEmpty($"nothing leaves the column of page {page.Number}");
            foreach (var letter in page.Letters)
            {
                var size = Math.Round(letter.PointSize, 1);
                sizes[size] = sizes.GetValueOrDefault(size) + 1;
            }
        }

        sizes.Should().ContainKey(10, "the text is printed in the size that it was set in");
        sizes.Keys.Min().Should().BeGreaterThanOrEqualTo(6.5);
    }

    [Theory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task No_table_is_wider_than_the_column_of_a_print(string paper)
    {
        var column = (int)Math.Floor((Papers[paper].Width - 30) / 25.4 * 96);
        await using var opened = await report.Open(new View(column, 960));
        await opened.Page.EmulateMediaAsync(new() { Media = Microsoft.Playwright.Media.Print });
        var wide = await opened.Ask<string[]>("""
            () => [...document.querySelectorAll('table, th, td, figure, p, li, dd')].filter(one => one.checkVisibility() && (one.getBoundingClientRect().right > innerWidth + 0.5 || one.scrollWidth > one.clientWidth + 1 && one.clientWidth > 0))
                .map(one => one.tagName + ' ' + Math.round(one.getBoundingClientRect().right) + ' ' + (one.closest('table')?.caption.textContent ?? '') + ': ' + one.textContent.trim().slice(0, 40))
            """);
        wide.Should().BeEmpty();
        var hidden = await opened.Ask<string[]>("() => [...document.querySelectorAll('details table')].filter(one => one.getBoundingClientRect().height === 0).map(one => one.caption.textContent)");
        hidden.Should().BeEmpty("what is folded on the screen is there on paper");
    }
}
