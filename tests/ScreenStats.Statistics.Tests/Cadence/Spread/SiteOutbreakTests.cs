using ScreenStats.Statistics.Cadence.Spread;

namespace ScreenStats.Statistics.Tests.Cadence.Spread;

public sealed class SiteOutbreakTests
{
    [Fact]
    public void Every_row_of_the_sites_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("site-outbreaks"), row =>
    {
        var process = new OffspringProcess(row.Number("reproduction"), row.Has("dispersion") ? row.Number("dispersion") : null, row.Number("caught"));
        var (people, introductions, size) = ((int)row.Count("people"), (int)row.Count("introductions"), (int)row.Count("size"));
        var sizes = SiteOutbreak.Sizes(process, people, introductions);
        return new[]
        {
            row.Mismatch("exactly", sizes[size]), row.Mismatch("at_least", SiteOutbreak.AtLeast(process, people, size, introductions)),
            row.Mismatch("mean", sizes.Select((chance, n) => n * chance).Sum()),
        };
    });
}
