using ScottPlot;
using ScreenStats.Reporting.Assets;
using SkiaSharp;

namespace ScreenStats.Reporting.Charts.Drawing;

/// <summary>The shipped font, so that pictures have text on a machine without any font, and the same text on every machine.</summary>
internal sealed class ReportFont : IFontResolver
{
    /// <summary>The name under which it is known to the drawing library.</summary>
    public const string Name = "ScreenStats Report Sans";

    /// <summary>What a browser uses: the font of the page, or where it is installed, else the nearest there is.</summary>
    public const string WebStack = "'Report Sans', 'Source Sans 3', 'Source Sans Pro', 'Segoe UI', 'Noto Sans', 'Helvetica Neue', Arial, sans-serif";

    private static readonly Lazy<ReportFont> Installed = new(() =>
    {
        var font = new ReportFont();
        Fonts.FontResolvers.Insert(0, font);
        return font;
    });

    private readonly SKTypeface regular = Load("SourceSans3-Regular.ttf");
    private readonly SKTypeface strong = Load("SourceSans3-SemiBold.ttf");

    private ReportFont()
    {
    }

    /// <summary>Makes the font known, once.</summary>
    public static void Install() => _ = Installed.Value;

    /// <summary>Name of the font's family as the font itself gives it.</summary>
    public static string Family => Typeface(bold: false).FamilyName;

    /// <summary>The typeface of a weight, for measuring.</summary>
    public static SKTypeface Typeface(bool bold) => bold ? Installed.Value.strong : Installed.Value.regular;

    /// <inheritdoc/>
    public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) =>
        fontName != Name ? null : bold ? strong : regular;

    /// <inheritdoc/>
    public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
        fontName != Name ? null : weight >= FontWeight.SemiBold ? strong : regular;

    private static SKTypeface Load(string asset)
    {
        using var data = SKData.CreateCopy(Asset.Bytes(asset));
        return SKTypeface.FromData(data);
    }
}
