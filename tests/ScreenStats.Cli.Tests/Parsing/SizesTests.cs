using System.Globalization;
using ScreenStats.Cli.Parsing;

namespace ScreenStats.Cli.Tests.Parsing;

public class SizesTests
{
    private const long Least = 256L << 20;

    [Theory]
    [InlineData("256MB", 268_435_456)]
    [InlineData("256mb", 268_435_456)]
    [InlineData("1GB", 1_073_741_824)]
    [InlineData("1.5GB", 1_610_612_736)]
    [InlineData("0.25gb", 268_435_456)]
    [InlineData("1000000GB", 1_073_741_824_000_000)]
    public void A_size_is_a_number_of_bytes_in_every_culture(string text, long bytes)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            foreach (var culture in (string[])["", "de-DE", "tr-TR"])
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
                Sizes.Memory("--memory", text, Least).Should().Be(bytes);
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData("", "is not a size")]
    [InlineData("GB", "is not a size")]
    [InlineData("0", "is not a size")]
    [InlineData("1073741824", "is not a size")]
    [InlineData("1 GB", "is not a size")]
    [InlineData(" 1GB", "is not a size")]
    [InlineData("-1GB", "is not a size")]
    [InlineData("+1GB", "is not a size")]
    [InlineData("1,5GB", "is not a size")]
    [InlineData("1e3MB", "is not a size")]
    [InlineData("NaNGB", "is not a size")]
    [InlineData("10XB", "is not a size")]
    [InlineData("10GiB", "is not a size")]
    [InlineData("\u0661GB", "is not a size")]
    [InlineData("99999999999999999999999999999999999GB", "is not a size")]
    [InlineData("1000000.1MB", "is too large; write at most 1000000 with MB or GB.")]
    [InlineData("79228162514264337593543950335GB", "is too large; write at most 1000000 with MB or GB.")]
    [InlineData("0GB", "is too small; the least is 256MB.")]
    [InlineData("1MB", "is too small; the least is 256MB.")]
    [InlineData("255.999MB", "is too small; the least is 256MB.")]
    public void What_is_no_size_is_refused_with_what_to_write(string text, string words)
    {
        var memory = () => Sizes.Memory("--memory", text, Least);

        memory.Should().Throw<UsageException>().Which.Message.Should().StartWith(text.Length == 0 ? "--memory: \"\"" : "--memory: ").And.Contain(words).And.Match($"*{text}*");
    }
}
