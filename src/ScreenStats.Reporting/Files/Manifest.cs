using System.Collections.Immutable;
using System.Reflection;
using System.Security.Cryptography;
using System.Text.Json;

namespace ScreenStats.Reporting.Files;

/// <summary>What a report folder says of itself: by whom, from what, and which files are its own. No clock, so that the same input gives the same bytes.</summary>
internal sealed record Manifest(
    string MadeBy, int Format, string Version, ImmutableSortedDictionary<string, string> Options, long? Seed,
    ImmutableArray<InputFile> Inputs, ImmutableArray<Manifest.OwnFile> Files)
{
    /// <summary>Name of the file.</summary>
    public const string FileName = "manifest.json";

    /// <summary>By this a folder is known as ours.</summary>
    public const string Maker = "ScreenStats report";

    /// <summary>Version of the layout of the folder.</summary>
    public const int CurrentFormat = 1;

    /// <summary>Version of this library.</summary>
    public static string OwnVersion { get; } = Assembly.GetExecutingAssembly().GetName().Version!.ToString(3);

    /// <summary>The manifest of a report.</summary>
    /// <param name="inputs">Where its findings come from.</param>
    /// <param name="version">Version of the program that made it.</param>
    /// <param name="files">Every other file of the folder: relative path with slashes, and bytes.</param>
    public static Manifest Of(ReportInputs inputs, string version, IEnumerable<KeyValuePair<string, byte[]>> files) => new(
        Maker,
        CurrentFormat,
        version,
        inputs.Options,
        inputs.Seed,
        inputs.Files,
        [.. files.OrderBy(file => file.Key, StringComparer.Ordinal).Select(file => new OwnFile(file.Key, Convert.ToHexStringLower(SHA256.HashData(file.Value))))]);

    /// <summary>Relative paths of the files that the manifest of a folder calls its own; null where the folder has no manifest of ours.</summary>
    public static IReadOnlySet<string>? OwnFilesOf(string folder)
    {
        var path = Path.Combine(folder, FileName);
        if (!File.Exists(path)) return null;
        try
        {
            using var document = JsonDocument.Parse(File.ReadAllBytes(path));
            var root = document.RootElement;
            if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("madeBy", out var maker) || maker.ValueKind != JsonValueKind.String
                || maker.GetString() != Maker || !root.TryGetProperty("files", out var files) || files.ValueKind != JsonValueKind.Array)
            {
                return null;
            }

            var own = new HashSet<string>(StringComparer.Ordinal) { FileName };
            foreach (var file in files.EnumerateArray())
            {
                if (file.ValueKind == JsonValueKind.Object && file.TryGetProperty("path", out var name) && name.ValueKind == JsonValueKind.String) own.Add(name.GetString()!);
            }

            return own;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>A file of the folder.</summary>
    /// <param name="Path">Relative path with slashes.</param>
    /// <param name="Sha256">SHA-256 of its bytes, in hexadecimal.</param>
    internal sealed record OwnFile(string Path, string Sha256);
}
