using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Html.Tables;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html;

/// <summary>One analysis as HTML.</summary>
internal static class SectionHtml
{
    /// <summary>Writes the section: what was found, pictures, tables, part by part where it has parts, what they cannot tell, and the method folded away.</summary>
    /// <param name="page">The page.</param>
    /// <param name="section">The analysis.</param>
    /// <param name="model">The whole report, for what stands elsewhere.</param>
    /// <param name="pictures">The finished pictures by the id of their chart.</param>
    /// <param name="said">Sentences that stand just above it and are not said again.</param>
    public static void Write(Markup page, Page section, ReportModel model, IReadOnlyDictionary<string, string> pictures, ImmutableArray<Sentence> said)
    {
        page.Open("section").Element("h3", section.Heading, ("id", section.Id));
        var above = said.Select(sentence => sentence.Text).ToHashSet(StringComparer.Ordinal);
        var sentences = section.Finding.Sentences;
        // The first sentence leads the page; of the others each stands in the first part that it speaks of.
        var placed = sentences.Skip(1).Where(sentence => !above.Contains(sentence.Text)).Select(sentence => (Sentence: sentence, Part: section.Parts.FirstOrDefault(part => Speaks(sentence, part)))).ToArray();
        SentenceHtml.Paragraph(page, sentences.Take(1).Where(sentence => !above.Contains(sentence.Text)), "lead");
        SentenceHtml.Paragraphs(page, placed.Where(one => one.Part is null).Select(one => one.Sentence));
        foreach (var chart in section.AtTop) page.Open("p").Text("Its picture stands at the top: ").Element("a", chart.Title, ("href", "#figure-" + chart.Id)).Text(".").Close();
        if (section.Caution.Length > 0) page.Element("p", section.Caution, ("class", "caution"));
        if (section.WhatIf is { } view) WhatIfHtml.Write(page, view, section.Id);
        foreach (var chart in section.Charts.Where(chart => !section.Parts.Any(part => part.Charts.Contains(chart.Id)))) FigureHtml.Write(page, chart, pictures, TableAnchors.Of(section.Tables, model.Groups, chart.TableId));
        var next = Math.Max(0, section.Tables.Length - section.Parts.Sum(part => part.Tables));
        foreach (var table in section.Tables.Take(next)) TableHtml.Write(page, table);
        foreach (var part in section.Parts)
        {
            Part(page, section, part, [.. placed.Where(one => ReferenceEquals(one.Part, part)).Select(one => one.Sentence)], next, model, pictures);
            next += part.Tables;
        }

        page.Trusted("<p><strong>What this cannot tell.</strong> ").Text(section.CannotTell).Trusted("</p>\n");
        page.Open("details").Element("summary", "How these figures were made").Element("p", section.Method);
        MethodsHtml.Line(page, section.Finding.Tables);
        page.Close();
        page.Close();
    }

    private static bool Speaks(Sentence sentence, PagePart part) =>
        part.SpeaksOf.Any(path => sentence.Topic.StartsWith(path, StringComparison.Ordinal) || sentence.Figures.Any(figure => figure.Id.StartsWith(path, StringComparison.Ordinal)));

    private static void Part(Markup page, Page section, PagePart part, ImmutableArray<Sentence> sentences, int first, ReportModel model, IReadOnlyDictionary<string, string> pictures)
    {
        var charts = section.Charts.Where(chart => part.Charts.Contains(chart.Id)).ToArray();
        var tables = section.Tables.Skip(first).Take(part.Tables).Where(table => table.Table.RowCount > 0).ToArray();
        var onlyWords = part.Tables == 0 && part.Charts.IsEmpty && !part.Words.Sentences.IsEmpty;
        if (!onlyWords && charts.Length == 0 && tables.Length == 0 && sentences.IsEmpty && part.Items.IsEmpty) return;
        if (part.Heading.Length > 0) page.Element("h4", part.Heading);
        SentenceHtml.Paragraphs(page, sentences);
        SentenceHtml.Paragraph(page, part.Words.Sentences);
        if (!part.Items.IsEmpty)
        {
            page.Open("ul");
            foreach (var item in part.Items) page.Element("li", item);
            page.Close();
        }

        foreach (var chart in charts) FigureHtml.Write(page, chart, pictures, TableAnchors.Of(section.Tables, model.Groups, chart.TableId));
        foreach (var table in tables) TableHtml.Write(page, table);
    }
}
