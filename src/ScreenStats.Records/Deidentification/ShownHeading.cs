using System.Text;

namespace ScreenStats.Records.Deidentification;

/// <summary>A heading as it may be shown: not where it looks like a person's own, as the first row of a file without headings does.</summary>
internal static class ShownHeading
{
    private const int Longest = 80;

    /// <summary>The heading, or nothing.</summary>
    public static string Of(string heading) =>
        heading.Length > Longest || heading.Any(c => char.IsControl(c)) || IdentityRule.Of(Encoding.UTF8.GetBytes(heading)) is IdentityKind.EmailAddress or IdentityKind.TelephoneNumber
            ? ""
            : heading;
}
