using System.Security.Cryptography;
using System.Text;
using ScreenStats.Records.Deidentification.Pseudonyms;

namespace ScreenStats.Records.Tests.Deidentification.Pseudonyms;

public sealed class PseudonymKeyTests
{
    [Theory]
    [InlineData("")]
    [InlineData("secret")]
    [InlineData("9f3c1a77e2b84d065bd1c8f02e94a763")]
    [InlineData("correct horse battery staple and then some more words to be long")]
    [InlineData("correcthorsebatterystaplecorrecthorsebatterystap")]
    [InlineData("CorrectHorseBatteryStaple2026CorrectHorseBat")]
    [InlineData("0000000000000000000000000000000000000000000000000000000000000000")]
    [InlineData("000102030405060708090a0b0c0d0e0f101112131415161718191a1b1c1d1e1f")]
    [InlineData("9f3c1a77e2b84d069f3c1a77e2b84d069f3c1a77e2b84d069f3c1a77e2b84d06")]
    [InlineData("496e206f7572206f776e20776f7264732c206120706173737068726173652121")]
    [InlineData("SW4gb3VyIG93biB3b3JkcywgYSBwYXNzcGhyYXNlISE=")]
    [InlineData("p\u00E4ssw\u00F6rter sind auch dann keine Schl\u00FCssel, wenn sie lang sind")]
    public void A_weak_key_is_refused_and_never_shown(string content)
    {
        using var folder = new PseudonymFolder();
        File.WriteAllText(folder.KeyFile, content);

        var act = () => folder.Of("badge\nP-1\n", "badge");

        act.Should().Throw<PseudonymizeException>().Which.Message.Should().Contain("--create-key").And.Contain("key").And.NotContainAny(content.Length < 6 ? ["\0"] : [content, content[..6]]);
        folder.Left().Should().BeEmpty();
    }

    [Theory]
    [InlineData(UnixFileMode.GroupRead)]
    [InlineData(UnixFileMode.OtherRead)]
    [InlineData(UnixFileMode.GroupWrite)]
    [InlineData(UnixFileMode.OtherExecute)]
    public void A_key_that_others_can_reach_is_refused(UnixFileMode more)
    {
        if (OperatingSystem.IsWindows()) return;
        using var folder = new PseudonymFolder();
        File.SetUnixFileMode(folder.KeyFile, UnixFileMode.UserRead | UnixFileMode.UserWrite | more);

        var act = () => folder.Of("badge\nP-1\n", "badge");

        act.Should().Throw<PseudonymizeException>().WithMessage("*chmod 600*");
        folder.Left().Should().BeEmpty();
    }

    [Fact]
    public void A_key_as_figures_as_Base64_and_as_bytes_is_the_same_key()
    {
        using var folder = new PseudonymFolder();
        var bytes = Convert.FromHexString(PseudonymFolder.Key);
        var first = folder.One("P-1");
        folder.One("P-1", Convert.ToBase64String(bytes) + "\n").Should().Be(first);
        File.WriteAllBytes(folder.KeyFile, bytes);
        folder.One("P-1").Should().Be(first);
    }

    [Fact]
    public void Keys_that_chance_makes_are_taken()
    {
        var refused = 0;
        for (var i = 0; i < 20_000; i++)
        {
            var key = RandomNumberGenerator.GetBytes(32);
            KeyStrength.Of(Encoding.ASCII.GetBytes(Convert.ToHexString(key))).Key.Should().Equal(key);
            if (KeyStrength.Of(Encoding.ASCII.GetBytes(Convert.ToBase64String(key))).Key is null) refused++;
        }

        refused.Should().BeLessThan(10, "about one in 50,000 looks like words");
    }

    [Fact]
    public void A_key_is_made_once_for_its_owner_alone_and_never_written_over()
    {
        using var folder = new PseudonymFolder();
        File.Delete(folder.KeyFile);
        var request = folder.Request("badge\nP-1\n"u8.ToArray(), "badge") with { CreateKey = true };

        var made = folder.Of(request);

        folder.Result!.KeyCreated.Should().BeTrue();
        var key = File.ReadAllText(folder.KeyFile);
        key.Should().MatchRegex("^[0-9a-f]{64}\n$");
        if (!OperatingSystem.IsWindows()) File.GetUnixFileMode(folder.KeyFile).Should().Be(UnixFileMode.UserRead | UnixFileMode.UserWrite);
        folder.Of("badge\nP-1\n", "badge").Should().Be(made);
        var again = () => folder.Of(folder.Request("badge\nP-1\n"u8.ToArray(), "badge") with { CreateKey = true });
        again.Should().Throw<PseudonymizeException>().WithMessage("*exists*");
        File.ReadAllText(folder.KeyFile).Should().Be(key);
    }

    [Fact]
    public void A_key_made_for_a_file_that_is_refused_is_not_left()
    {
        using var folder = new PseudonymFolder();
        File.Delete(folder.KeyFile);
        var act = () => folder.Of(folder.Request("badge,site\nP-1,North,more\n"u8.ToArray(), "badge") with { CreateKey = true });

        act.Should().Throw<Counting.Diagnostics.UnusableDataException>();
        File.Exists(folder.KeyFile).Should().BeFalse();
        folder.Left().Should().BeEmpty();
    }
}
