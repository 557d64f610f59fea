using System.Text;

namespace ScreenStats.Records.Deidentification;

/// <summary>A heading as it may be shown: not where it looks like a person's own, as the first row of a file without headings does.</summary>
internal static class ShownHeading
{
    private const int Longest = 80;

    /// <summary>The heading, or nothing.</summary>
    public static string Of(string heading) =>
        heading.Length > Longest || heading.Any(c => char.IsControl(c)) || heading.Split([' ', '\u00A0', '<', '>', '(', ')', ',', ';', ':']).Append(heading).Any(NamesSomebody)
            ? ""
            : heading;

    private static bool NamesSomebody(string text) => IdentityRule.Of(Encoding.UTF8.GetBytes(text)) is IdentityKind.EmailAddress or IdentityKind.TelephoneNumber or IdentityKind.GovernmentNumber;
}
