using CsCheck;
using ScreenStats.Records.Deidentification.Pseudonyms;

namespace ScreenStats.Records.Tests.Deidentification.Pseudonyms;

public sealed class PersonTextTests
{
    // Unicode Standard 14.0, CaseFolding.txt (C and F) and UAX 15, table 4 (compatibility forms); the points are written out.
    [Theory]
    [InlineData("P-00123", "p-00123")]
    [InlineData("  P-00123\t", "p-00123")]
    [InlineData("STRASSE", "strasse")]
    [InlineData("Stra\u00DFe", "strasse")]
    [InlineData("STRA\u1E9EE", "strasse")]
    [InlineData("\uFB03x", "ffix")]
    [InlineData("\u03A3\u03AF\u03C3\u03C5\u03C6\u03BF\u03C2", "\u03C3\u03AF\u03C3\u03C5\u03C6\u03BF\u03C3")]
    [InlineData("\u0130", "i\u0307")]
    [InlineData("\u13A0", "\u13A0")]
    [InlineData("\uAB70", "\u13A0")]
    [InlineData("\U00010400", "\U00010428")]
    [InlineData("\u1F88", "\u1F00\u03B9")]
    [InlineData("A\u030Ada", "\u00E5da")]
    [InlineData("\u00C5DA", "\u00E5da")]
    [InlineData("\u212B", "\u00E5")]
    [InlineData("\uFF21\uFF22\uFF11", "ab1")]
    [InlineData("a\u00A0\u2003 b", "a b")]
    [InlineData("a\u200Bb\uFEFF", "ab")]
    public void The_form_is_that_of_the_Unicode_Standard(string text, string form) => PersonText.Of(text).Should().Be(form);

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("\u00A0\u200B")]
    [InlineData("-")]
    [InlineData("?")]
    [InlineData("n/a")]
    [InlineData("NULL")]
    public void A_value_that_names_nobody_has_no_form(string text) => PersonText.Of(text).Should().BeNull();

    [Fact]
    public void Accents_tell_people_apart() => PersonText.Of("Ada Bel\u00E9n").Should().NotBe(PersonText.Of("Ada Belen"));

    [Fact]
    public void The_form_of_a_form_is_itself_and_case_and_composition_make_no_difference() =>
        Gen.Char.Where(c => !char.IsSurrogate(c) && c is not ('\uFFFE' or '\uFFFF')).Array[0, 12].Sample(letters =>
        {
            var text = new string(letters);
            var form = PersonText.Of(text);
            if (form is null) return true;
            return PersonText.Of(form) == form
                && PersonText.Of(" " + text.Normalize(System.Text.NormalizationForm.FormD) + "\u00A0") == form
                && PersonText.Of(text.Normalize(System.Text.NormalizationForm.FormC)) == form;
        }, iter: 20_000);

    [Fact]
    public void Every_character_folds_with_its_capital_under_invariant_rules()
    {
        // An independent table of simple mappings: that of the runtime. Dotless i is a letter of its own without Turkish rules.
        for (var point = 1; point < 0x2000; point++)
        {
            if (!System.Text.Rune.IsValid(point) || point is 0x131) continue;
            var rune = new System.Text.Rune(point);
            var capital = System.Text.Rune.ToUpperInvariant(rune);
            if (capital == rune) continue;
            CaseFolding.Fold(rune.ToString()).Should().Be(CaseFolding.Fold(capital.ToString()), $"of U+{point:X4}");
        }
    }
}
