using ScreenStats.Reporting.Assets;

namespace ScreenStats.Reporting.Html;

/// <summary>The one script of the page: it makes controls for what stands there already, and computes nothing.</summary>
internal static class ScriptHtml
{
    // In the order in which they run.
    private static readonly string[] Assets = ["tables.js", "marks.js", "what-if.js"];

    /// <summary>What stands between the tags, to the byte. Marked so that it may hold any sign both as HTML and as XML.</summary>
    public static string Text { get; } = "\n//<![CDATA[\n" + string.Concat(Assets.Select(Asset.Text)) + "//]]>\n";

    /// <summary>Writes the script, last in the body: what it works on stands before it.</summary>
    public static void Write(Markup page) => page.Trusted("<script>").Trusted(Text).Trusted("</script>\n");
}
