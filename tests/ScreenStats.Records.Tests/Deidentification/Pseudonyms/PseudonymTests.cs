using System.Security.Cryptography;
using System.Text;
using CsCheck;
using ScreenStats.Records.Deidentification;
using ScreenStats.Records.Deidentification.Pseudonyms;

namespace ScreenStats.Records.Tests.Deidentification.Pseudonyms;

public sealed class PseudonymTests
{
    private const string OtherKey = "789b34caf54f2e220acd941e71b88d5836866d0d858b63549e94be2cacc67f5b";

    [Theory]
    [InlineData("p-00123")]
    [InlineData("P-00123")]
    [InlineData("  p-00123 ")]
    [InlineData("\uFF30-00123")]
    [InlineData("P-00123\u200B")]
    public void The_same_person_has_the_same_pseudonym_however_written(string value)
    {
        using var folder = new PseudonymFolder();
        folder.One(value).Should().Be(folder.One("p-00123")).And.MatchRegex("^p1-[0-9a-hjkmnp-tv-z]{20}$");
    }

    [Fact]
    public void A_pseudonym_is_the_code_of_RFC_2104_cut_to_100_bits()
    {
        // Worked out here once more from the definition, with the library's HMAC over bytes and base 32 by big integers.
        using var folder = new PseudonymFolder();
        var code = HMACSHA256.HashData(Convert.FromHexString(PseudonymFolder.Key), "person\np-00123"u8);
        var bits = new System.Numerics.BigInteger(code, isUnsigned: true, isBigEndian: true) >> 156;
        var text = "";
        for (var i = 0; i < 20; i++)
        {
            text = "0123456789abcdefghjkmnpqrstvwxyz"[(int)(bits & 31)] + text;
            bits >>= 5;
        }

        folder.One("P-00123").Should().Be("p1-" + text);
    }

    [Fact]
    public void Two_keys_give_unrelated_pseudonyms()
    {
        using var folder = new PseudonymFolder();
        var values = Enumerable.Range(0, 2000).Select(i => $"P-{i:D5}").ToArray();
        var source = "badge,site\n" + string.Concat(values.Select(value => value + ",North\n"));
        var first = Column(folder.Of(source, "badge"));
        File.WriteAllText(folder.KeyFile, OtherKey);
        var second = Column(folder.Of(source, "badge"));

        first.Should().OnlyHaveUniqueItems();
        second.Should().OnlyHaveUniqueItems().And.NotIntersectWith(first);
        // Characters in the same place agree as often as chance lets them: 1 in 32, within five standard errors.
        var agree = first.Zip(second).Sum(pair => pair.First[3..].Zip(pair.Second[3..]).Count(both => both.First == both.Second));
        var expected = values.Length * 20 / 32.0;
        agree.Should().BeInRange((int)(expected - (5 * Math.Sqrt(expected))), (int)(expected + (5 * Math.Sqrt(expected))));
        // Neither the order of the people nor their neighbourhood shows: neighbours share a first character by chance only.
        var same = first.Zip(first.Skip(1)).Count(pair => pair.First[3] == pair.Second[3]);
        same.Should().BeInRange(20, 120);
    }

    [Fact]
    public void No_plain_hash_of_the_value_and_no_length_of_it_shows()
    {
        using var folder = new PseudonymFolder();
        foreach (var value in new[] { "p-1", "P-00123", "ada.example@example.org", new string('x', 500) })
        {
            var made = folder.One(value);
            made.Should().HaveLength(23);
            foreach (var text in new[] { value, value.ToUpperInvariant(), "person\n" + value, value + "\n" })
            {
                var bytes = Encoding.UTF8.GetBytes(text);
                foreach (var hash in new[] { SHA256.HashData(bytes), SHA512.HashData(bytes), SHA384.HashData(bytes), HMACSHA256.HashData(Array.Empty<byte>(), bytes) })
                {
                    made.Should().NotContain(Convert.ToHexStringLower(hash)[..8]).And.NotContain(Convert.ToBase64String(hash)[..8]);
                }
            }
        }
    }

    [Fact]
    public void An_operator_cannot_be_linked_to_the_same_employee_as_a_person()
    {
        using var folder = new PseudonymFolder();
        var request = folder.Request("badge,tester\nP-1,P-1\n"u8.ToArray(), "badge") with { OperatorColumns = ["tester"] };
        var cells = folder.Of(request).Split('\n')[1].Split(',');
        cells[0].Should().NotBe(cells[1]);
    }

    [Fact]
    public void Our_own_rule_of_identities_takes_every_pseudonym() =>
        Gen.String[Gen.Char['!', '~'], 1, 30].Sample(value =>
        {
            using var folder = new PseudonymFolder();
            if (PersonText.Of(value) is null) return true;
            return IdentityRule.Of(Encoding.UTF8.GetBytes(folder.One(value))) == IdentityKind.None;
        }, iter: 100);

    private static string[] Column(string text) => [.. text.Split('\n').Skip(1).Where(line => line.Length > 0).Select(line => line.Split(',')[0])];
}
