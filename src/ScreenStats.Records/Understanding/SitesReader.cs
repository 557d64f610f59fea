using System.Text;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Records.Formats;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Understanding;

/// <summary>
/// Understands the rows of an export of sites, one a site. A site that comes again with the same region, or once without one, counts once;
/// with another region it contradicts itself, and which is right is not for us to say.
/// </summary>
internal sealed class SitesReader : RowReader
{
    private readonly int site, region;
    private readonly Dictionary<string, string> regions = new(StringComparer.Ordinal);

    public SitesReader(TimeScale scale, bool keepText)
        : base(ExportKind.Sites, scale, keepText)
    {
        site = ColumnOf(CanonicalColumns.Site);
        region = ColumnOf(CanonicalColumns.Region);
    }

    public IEnumerable<SiteCell> Cells => regions.Select(one => new SiteCell(one.Key, one.Value));

    /// <summary>Rows of a site that had come already.</summary>
    public long Repeated { get; private set; }

    public override void EndBlock(uint firstRecord)
    {
    }

    public override IEnumerable<(int Column, TextCodes Codes, Words Words)> WordsMet() => [];

    protected override Finding? Understand(RecordSplitter row, uint record, out int column)
    {
        column = site;
        var place = Text(row, site);
        if (place.IsEmpty) return Finding.MissingValue;
        if (place.Length > LongestName) return Finding.NameTooLong;
        // Two columns are all there is: a row of totals lacks nothing but a name for its region.
        if (TotalsLine.Begins(place) && (Fields[region] < 0 || Text(row, region).IndexOfAnyExceptInRange((byte)'0', (byte)'9') < 0)) return Finding.TotalsLine;
        Recorded[site]++;
        column = region;
        var area = Region(row);
        var name = Encoding.UTF8.GetString(place);
        if (regions.TryAdd(name, area)) return null;
        if (area != Levels.None && regions[name] is var known && known != area)
        {
            if (known != Levels.None) return Finding.TwoRegions;
            regions[name] = area;
        }

        Repeated++;
        column = site;
        return Finding.RepeatedSite;
    }

    private string Region(RecordSplitter row)
    {
        if (Fields[region] < 0) return Levels.None;
        var text = Text(row, region);
        if (text.IsEmpty) return Levels.None;
        if (text.Length > LongestName)
        {
            Findings.Add(Finding.NameTooLong, region, Here);
            return Levels.None;
        }

        Recorded[region]++;
        return Encoding.UTF8.GetString(text);
    }
}
