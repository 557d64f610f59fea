using System.Collections.Immutable;
using System.Text;
using ScreenStats.Records.Deidentification.Pseudonyms;

namespace ScreenStats.Records.Tests.Deidentification.Pseudonyms;

/// <summary>A folder with a file to pseudonymize and a key; lasts as long as a test.</summary>
internal sealed class PseudonymFolder : IDisposable
{
    public const string Key = "9f3c1a77e2b84d065bd1c8f02e94a7634418fdc60b7ae9253d70cb15f6821e9a";

    private int number;

    public PseudonymFolder()
    {
        File.WriteAllText(KeyFile, Key + "\n");
        Private(KeyFile);
    }

    public string Root { get; } = Directory.CreateTempSubdirectory("screenstats-").FullName;

    public string KeyFile => Path.Combine(Root, "key");

    public PseudonymizeResult? Result { get; private set; }

    public static void Private(string file)
    {
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(file, UnixFileMode.UserRead | UnixFileMode.UserWrite);
    }

    public PseudonymizeRequest Request(byte[] source, params string[] columns)
    {
        var path = Path.Combine(Root, $"source{++number}.csv");
        File.WriteAllBytes(path, source);
        return new PseudonymizeRequest { Source = path, Target = Path.Combine(Root, $"target{number}.csv"), KeyFile = KeyFile, Columns = [.. columns] };
    }

    /// <summary>The text that comes out.</summary>
    public string Of(string source, params string[] columns) => Of(Request(Encoding.UTF8.GetBytes(source), columns));

    public string Of(PseudonymizeRequest request)
    {
        Result = Pseudonymizer.Write(request);
        return Encoding.UTF8.GetString(File.ReadAllBytes(request.Target));
    }

    /// <summary>The pseudonym of one value.</summary>
    public string One(string value, string? key = null)
    {
        if (key is not null)
        {
            File.WriteAllText(KeyFile, key);
            Private(KeyFile);
        }

        return Of("badge,site\n\"" + value.Replace("\"", "\"\"", StringComparison.Ordinal) + "\",North\n", "badge").Split('\n')[1].Split(',')[0].Trim('"');
    }

    /// <summary>What stands in the folder besides sources and key.</summary>
    public ImmutableArray<string> Left() =>
        [.. Directory.GetFileSystemEntries(Root).Select(path => Path.GetFileName(path)).Where(name => name != "key" && !name.StartsWith("source", StringComparison.Ordinal))];

    public void Dispose() => Directory.Delete(Root, true);
}
