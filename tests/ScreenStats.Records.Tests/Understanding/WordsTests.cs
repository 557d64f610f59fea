using System.Globalization;
using ScreenStats.Counting.Ledger;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Tests.Understanding;

public class WordsTests
{
    [Theory]
    [InlineData("negative", "negative")]
    [InlineData("NEG", "negative")]
    [InlineData("Not Detected", "negative")]
    [InlineData("not_detected", "negative")]
    [InlineData("Non-Reactive", "negative")]
    [InlineData("-", "negative")]
    [InlineData("POSITIVE", "positive")]
    [InlineData("pos", "positive")]
    [InlineData("Detected", "positive")]
    [InlineData("reactive", "positive")]
    [InlineData("+", "positive")]
    [InlineData("Inconclusive", "inconclusive")]
    [InlineData("INVALID", "invalid")]
    [InlineData("void", "invalid")]
    [InlineData("négatif", "negative")]
    [InlineData("NÉGATIVE", "negative")]
    [InlineData("nicht nachgewiesen", "negative")]
    [InlineData("no detectado", "negative")]
    [InlineData("non détecté", "negative")]
    [InlineData("Positivo", "positive")]
    [InlineData("nachweisbar", "positive")]
    [InlineData("détectée", "positive")]
    [InlineData("grenzwertig", "inconclusive")]
    [InlineData("non concluant", "inconclusive")]
    [InlineData("no concluyente", "inconclusive")]
    [InlineData("INC", "inconclusive")]
    [InlineData("ungültig", "invalid")]
    [InlineData("ungueltig", "invalid")]
    [InlineData("inválido", "invalid")]
    [InlineData("non valide", "invalid")]
    [InlineData("inv.", "invalid")]
    [InlineData("unbekannt", "")]
    [InlineData("ND", null)] // not detected, or no data
    [InlineData("n/a", "")]
    [InlineData("banana", null)]
    [InlineData("+-", null)]
    [InlineData("1", null)]
    public void Results_are_read_by_their_usual_words_in_four_languages(string word, string? canonical)
    {
        foreach (var culture in new[] { "", "de-DE", "tr-TR" })
        {
            var before = CultureInfo.CurrentCulture;
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            try
            {
                var code = Words.Outcome.Reader([])(word);
                (code == Words.Unknown ? null : code == Words.Blank ? "" : Words.Outcome.Canonical[code]).Should().Be(canonical, $"under {culture}");
            }
            finally
            {
                CultureInfo.CurrentCulture = before;
            }
        }
    }

    [Fact]
    public void The_program_files_words_go_first()
    {
        var read = Words.Outcome.Reader([new("neg", "positive"), new("Ungültig", "invalid"), new("j", "yes")]);
        Words.Outcome.Canonical[read("NEG")].Should().Be("positive");
        Words.Outcome.Canonical[read("ungultig")].Should().Be("invalid");
        read("j").Should().Be(Words.Unknown, "yes is no result");
        Words.YesNo.Canonical[Words.YesNo.Reader([new("j", "yes")])("J")].Should().Be("yes");
    }

    [Fact]
    public void No_word_has_two_meanings_in_one_table()
    {
        foreach (var words in new[] { Words.Outcome, Words.Confirmation, Words.YesNo, Words.Control, Words.Specimen, Words.Collection, Words.Reason })
        {
            words.All.GroupBy(word => TextFold.Fold(word.Word)).Should().OnlyContain(same => same.Select(word => word.Code).Distinct().Count() == 1);
        }
    }

    [Fact]
    public void No_heading_belongs_to_two_columns_of_an_export()
    {
        foreach (var export in Enum.GetValues<ExportKind>())
        {
            var headings = CanonicalColumns.Of(export).SelectMany(column => column.Headings.Append(column.Name).Select(heading => (Heading: TextFold.Fold(heading), column.Name)));
            headings.GroupBy(heading => heading.Heading).Should().OnlyContain(same => same.Select(heading => heading.Name).Distinct().Count() == 1);
        }
    }
}
