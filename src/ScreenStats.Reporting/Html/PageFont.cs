using System.Globalization;
using ScreenStats.Reporting.Assets;

namespace ScreenStats.Reporting.Html;

/// <summary>
/// The page's own font, inside the page: a reader's machine need not have it, and nothing is fetched. It holds Latin, Greek and the signs of
/// formulas; letters of other scripts come from the reader's own fonts. How it was made stands in <c>Assets/make-report-sans.py</c>.
/// </summary>
internal static class PageFont
{
    /// <summary>The name by which style sheet and pictures ask for it.</summary>
    public const string Name = "Report Sans";

    /// <summary>What a content-security policy must allow for it: fonts that are written into the page, and no others.</summary>
    public const string Policy = "font-src data:";

    private static readonly Lazy<string> Text = new(() => Face("Regular", "400") + Face("SemiBold", "600 900"));

    /// <summary>The rules of the style sheet that hold the font.</summary>
    public static string Faces => Text.Value;

    private static string Face(string file, string weights) => string.Create(CultureInfo.InvariantCulture,
        $"@font-face {{ font-family: '{Name}'; font-weight: {weights}; src: url(data:font/woff2;base64,{Convert.ToBase64String(Asset.Bytes($"ReportSans-{file}.woff2"))}) format('woff2'); }}\n");
}
