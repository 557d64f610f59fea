using System.Text;
using ScreenStats.Records.Deidentification;

namespace ScreenStats.Records.Tests.Deidentification;

public class IdentityRuleTests
{
    [Theory]
    [InlineData("P-00123")]
    [InlineData("a8f3e1")]
    [InlineData("12345")]
    [InlineData("0049151")]
    [InlineData("op-07")]
    [InlineData("7f0d2c1e-5a3b-4c6d-8e9f-0a1b2c3d4e5f")]
    [InlineData("12345678-1234-1234-1234-123456789012")]
    [InlineData("2026-01-05")]
    [InlineData("Night Shift")]
    [InlineData("Front Desk")]
    [InlineData("Nurse A")]
    [InlineData("Kiosk North")]
    [InlineData("badge 123")]
    [InlineData("A B")]
    [InlineData("0001 0002")]
    [InlineData("x.y")]
    [InlineData("1.234")]
    [InlineData("Falcon")]
    [InlineData("qPz+/A==")]
    [InlineData("user@host")]
    [InlineData("user@host of x.y")]
    [InlineData("3 @ 1.50")]
    public void Pseudonyms_and_offices_pass(string value) =>
        IdentityRule.Of(Encoding.UTF8.GetBytes(value)).Should().Be(IdentityKind.None);

    [Theory]
    [InlineData("Ada Example")]
    [InlineData("EXAMPLE ADA")]
    [InlineData("Example, Ada")]
    [InlineData("example, ada")]
    [InlineData("ada.example")]
    [InlineData("A. Example")]
    [InlineData("Ada van Example")]
    [InlineData("Zoë O'Example")]
    [InlineData("Ádám Példa")]
    public void Names_are_seen(string value) =>
        IdentityRule.Of(Encoding.UTF8.GetBytes(value)).Should().Be(IdentityKind.Name);

    [Theory]
    [InlineData("ada@example.org")]
    [InlineData("a.b+c@mail.example.org")]
    [InlineData("Ada Example <ada@example.org>")]
    [InlineData("mail ada@example.org, please.")]
    [InlineData("@ op-07 (ada@example.org)")]
    public void Addresses_are_seen(string value) =>
        IdentityRule.Of(Encoding.UTF8.GetBytes(value)).Should().Be(IdentityKind.EmailAddress);

    [Theory]
    // 555-0100 to 555-0199 and +44 1632 are ranges kept for fiction.
    [InlineData("+44 1632 960123")]
    [InlineData("+441632960123")]
    [InlineData("(202) 555-0123")]
    [InlineData("202-555-0123")]
    [InlineData("202.555.0123")]
    public void Telephone_numbers_are_seen(string value) =>
        IdentityRule.Of(Encoding.UTF8.GetBytes(value)).Should().Be(IdentityKind.TelephoneNumber);
}
