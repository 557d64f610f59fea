using System.Globalization;

namespace ScreenStats.Records.Cache;

/// <summary>
/// The name of an entry: the build that made it, the length of the file it is of, how that was understood and what it holds. So a look at the
/// names tells whether an entry can fit a file at all, before the file is hashed.
/// </summary>
internal static class EntryName
{
    public const string Ending = ".entry";

    private const int Figures = 16;

    public static string Of(string build, long length, byte[] understanding, string content) =>
        $"{Start(build, length, understanding)}{content}{Ending}";

    /// <summary>How the names begin of all entries that files of a length may have, understood in one way.</summary>
    public static string Start(string build, long length, byte[] understanding) => string.Create(
        CultureInfo.InvariantCulture, $"{Start(build)}{length}-{Convert.ToHexStringLower(understanding)[..Figures]}-");

    /// <summary>How the names of all entries of a build begin.</summary>
    public static string Start(string build) => $"{build[..Figures]}-";
}
