using System.Security.Cryptography;
using System.Text;
using ScreenStats.Reporting.Assets;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html;

/// <summary>The head of the page: its policy, which allows the style sheet with its font and the script that are there and nothing else, and the style sheet.</summary>
internal static class HeadHtml
{
    /// <summary>Writes the head.</summary>
    public static void Write(Markup page, ReportModel model)
    {
        var style = "\n" + PageFont.Faces + Asset.Text("report.css");
        page.Open("head").Void("meta", ("charset", "utf-8"));
        page.Void("meta", ("http-equiv", "Content-Security-Policy"), ("content", $"default-src 'none'; style-src '{Hash(style)}'; script-src '{Hash(ScriptHtml.Text)}'; {PageFont.Policy}; base-uri 'none'; form-action 'none'"));
        page.Void("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1"));
        page.Void("meta", ("name", "referrer"), ("content", "no-referrer"));
        page.Element("title", model.Title + ": screening report");
        page.Trusted("<style>").Trusted(style).Trusted("</style>\n").Close();
    }

    // How a content-security policy names a text that may act.
    private static string Hash(string text) => "sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
}
