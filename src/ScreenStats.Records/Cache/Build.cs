using System.Security.Cryptography;
using System.Text;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Records.Cache;

/// <summary>Which program made an entry: another one may understand rows otherwise, so it reads them anew.</summary>
internal static class Build
{
    /// <summary>Version of the form of entries.</summary>
    private const int Form = 1;

    /// <summary>In hexadecimal figures.</summary>
    public static readonly string Id = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', Parts()))));

    private static IEnumerable<string> Parts()
    {
        yield return FormattableString.Invariant($"form {Form}, little endian {BitConverter.IsLittleEndian}, runtime {Environment.Version}");
        foreach (var assembly in (Type[])[typeof(Build), typeof(TallyCells)])
        {
            // The identity of a module is drawn from its code: any change of it is another build.
            yield return $"{assembly.Assembly.GetName()} {assembly.Module.ModuleVersionId}";
        }
    }
}
