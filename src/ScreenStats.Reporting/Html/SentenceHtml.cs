using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Html;

/// <summary>Sentences as HTML; each figure says in its markup where in findings.json it stands.</summary>
internal static class SentenceHtml
{
    /// <summary>Writes sentences as one paragraph.</summary>
    public static void Paragraph(Markup page, IEnumerable<Sentence> sentences, string style = "")
    {
        var all = sentences.ToImmutableArray();
        if (all.IsEmpty) return;
        page.Trusted(style.Length == 0 ? "<p>" : $"<p class=\"{Markup.Escape(style)}\">");
        for (var index = 0; index < all.Length; index++)
        {
            if (index > 0) page.Text(" ");
            Inline(page, all[index]);
        }

        page.Trusted("</p>\n");
    }

    /// <summary>Writes sentences as paragraphs, a new one wherever a sentence turns to something else.</summary>
    public static void Paragraphs(Markup page, IEnumerable<Sentence> sentences)
    {
        var paragraph = new List<Sentence>();
        foreach (var sentence in sentences)
        {
            if (sentence.BeginsParagraph && paragraph.Count > 0)
            {
                Paragraph(page, paragraph);
                paragraph.Clear();
            }

            paragraph.Add(sentence);
        }

        Paragraph(page, paragraph);
    }

    /// <summary>Writes a sentence as an item of a list.</summary>
    public static void Item(Markup page, Sentence sentence)
    {
        page.Trusted("<li>");
        Inline(page, sentence);
        page.Trusted("</li>\n");
    }

    /// <summary>Writes a sentence within a paragraph or a list item. A figure without a path counts what the page itself shows.</summary>
    public static void Inline(Markup page, Sentence sentence)
    {
        foreach (var (literal, figure) in sentence.Parts())
        {
            if (figure is null) page.Text(literal!);
            else if (figure.Id.Length == 0) page.Trusted("<span class=\"drawn\">").Text(Rounding.Print(figure.Value, figure.Unit)).Trusted("</span>");
            else page.Trusted($"<data value=\"{Markup.Escape(figure.Id)}\"{(figure.Value.Kind == CellKind.Text ? " class=\"name\"" : "")}>{Markup.Escape(Rounding.Print(figure.Value, figure.Unit))}</data>");
        }
    }
}
