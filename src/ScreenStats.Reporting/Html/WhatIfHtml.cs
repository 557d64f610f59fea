using ScreenStats.Reporting.Files;
using ScreenStats.Reporting.Pages.WhatIf;

namespace ScreenStats.Reporting.Html;

/// <summary>The place of a what-if: data for the script, which makes the controls there. Without a script there is nothing to see, and the tables say it.</summary>
internal static class WhatIfHtml
{
    /// <summary>Writes the place.</summary>
    /// <param name="page">The page.</param>
    /// <param name="view">What the script needs.</param>
    /// <param name="labelledBy">Id of the heading that names it.</param>
    public static void Write(Markup page, WhatIfView view, string labelledBy) =>
        // The data hold no sign that begins markup: such signs are written as references of JSON.
        page.Open("div", ("class", "what-if"), ("role", "group"), ("aria-labelledby", labelledBy), ("hidden", ""))
            .Trusted("<script type=\"application/json\">").Trusted(JsonText.Of(view, indented: false)).Trusted("</script>\n").Close();
}
