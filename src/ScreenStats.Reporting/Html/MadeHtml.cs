using System.Globalization;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html;

/// <summary>Of what the report was made, and by what.</summary>
internal static class MadeHtml
{
    /// <summary>Writes the foot of the page.</summary>
    public static void Write(Markup page, ReportModel model)
    {
        page.Open("footer", ("class", "made"));
        page.Element("p", $"Made by ScreenStats {model.Version}" + (model.Inputs.Seed is { } seed ? string.Create(CultureInfo.InvariantCulture, $", seed {seed}") : "") + ".");
        if (!model.Inputs.Options.IsEmpty) page.Element("p", "Options: " + string.Join(", ", model.Inputs.Options.Select(option => $"{option.Key} {option.Value}")) + ".");
        if (!model.Inputs.Files.IsDefaultOrEmpty)
        {
            page.Element("p", "Read (SHA-256 of each file):").Open("ul");
            foreach (var file in model.Inputs.Files) page.Open("li").Text(file.Name + " ").Element("code", file.Sha256).Close();
            page.Close();
        }

        page.Element("p", "Beside this page: findings.json (every figure), workbook.xlsx and tables/ (every table), plots/ (every picture), set-aside.csv (rows not counted), manifest.json.");
        page.Close();
    }
}
