using System.Text;
using ScreenStats.Records.Deidentification;

namespace ScreenStats.Records.Tests.Deidentification;

public sealed class CheckDigitsTests
{
    // Published examples; the sources are beside them. "From memory" where so.
    [Theory]
    [InlineData(0, "046454286")] // Luhn: specimen Canadian social insurance number, Government of Canada (from memory)
    [InlineData(0, "4539578763621486")] // Luhn: payment card test number (from memory)
    [InlineData(0, "8001015009087")] // Luhn: South African specimen number (from memory)
    [InlineData(1, "86095742719")] // ISO 7064 MOD 11,10: German tax identification number, specimen (from memory)
    [InlineData(1, "94577403194")] // ISO 7064 MOD 11,10: Croatian OIB, specimen (from memory)
    [InlineData(2, "0000000218250097")] // ISO 7064 MOD 11-2: ORCID of the documentation's fictional researcher
    [InlineData(2, "000000021694233X")] // ISO 7064 MOD 11-2: ORCID documentation's example
    [InlineData(2, "11010519491231002X")] // ISO 7064 MOD 11-2: Chinese standard GB 11643-1999, example
    [InlineData(3, "234567890124")] // Verhoeff: check digit worked out with the generator script beside the references
    [InlineData(4, "9434765919")] // NHS Data Dictionary, worked example of the modulus 11 (943 476 5919)
    [InlineData(5, "111222333")] // Dutch BSN, eleven test, the usual example (from memory)
    [InlineData(6, "44051401359")] // PESEL, the usual example (from memory)
    [InlineData(7, "01010750160")] // Norwegian specimen (from memory)
    [InlineData(8, "52998224725")] // Brazilian CPF, the usual example (from memory)
    [InlineData(9, "85073003328")] // Belgian national register number, specimen (from memory)
    [InlineData(9, "295109912611193")] // French NIR, specimen of the social security (from memory)
    [InlineData(10, "12345678Z")] // Spanish DNI, specimen of the police
    [InlineData(10, "X1234567L")] // Spanish NIE, specimen (from memory)
    [InlineData(11, "7569217076985")] // Swiss AHV number, specimen of the Central Compensation Office
    public void Published_examples_pass_and_fail_with_one_figure_changed(int rule, string number)
    {
        CheckDigits.Passes(rule, Encoding.ASCII.GetBytes(number)).Should().BeTrue();
        var figure = number.Length / 2;
        foreach (var other in "0123456789".Where(other => other != number[figure]))
        {
            if (rule == 9) continue; // modulo 97 misses none either, but two centuries are tried
            CheckDigits.Passes(rule, Encoding.ASCII.GetBytes(number[..figure] + other + number[(figure + 1)..])).Should().BeFalse();
        }
    }

    [Fact]
    public void By_chance_a_value_passes_a_rule_about_once_in_ten_at_most()
    {
        var random = new Random(20_260_105);
        for (var rule = 0; rule < CheckDigits.Rules; rule++)
        {
            var form = 0;
            var passed = 0;
            for (var i = 0; i < 60_000; i++)
            {
                var length = rule switch { 0 or 5 => 9, 2 => 16, 3 => 12, 4 => 10, 11 => 13, 10 => 8, _ => 11 };
                var text = string.Concat(Enumerable.Range(0, length).Select(_ => (char)('0' + random.Next(10))));
                if (rule == 10) text += (char)('A' + random.Next(26));
                if (rule == 11) text = "756" + text[3..];
                if (CheckDigits.Passes(rule, Encoding.ASCII.GetBytes(text)) is not { } passes) continue;
                form++;
                if (passes) passed++;
            }

            form.Should().BeGreaterThan(50_000);
            ((double)passed / form).Should().BeLessThan(0.11, $"rule {rule}");
        }
    }

    [Fact]
    public void Spaces_and_hyphens_between_groups_make_no_difference() =>
        CheckDigits.Of("943 476 5919"u8).Should().Be(CheckDigits.Of("943-476-5919"u8)).And.NotBe((0, 0));
}
