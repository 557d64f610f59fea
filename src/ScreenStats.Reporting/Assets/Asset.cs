using System.Reflection;
using System.Text;

namespace ScreenStats.Reporting.Assets;

/// <summary>What is shipped inside the assembly: the font with its licence, the style sheet, and the script.</summary>
internal static class Asset
{
    /// <summary>The bytes of an asset.</summary>
    public static byte[] Bytes(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The assembly was built without its asset {name}.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    /// <summary>The text of an asset, line ends as <c>\n</c>.</summary>
    public static string Text(string name) => Encoding.UTF8.GetString(Bytes(name)).ReplaceLineEndings("\n");
}
