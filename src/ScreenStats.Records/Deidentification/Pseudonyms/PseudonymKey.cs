using System.Security.Cryptography;
using ScreenStats.Records.Formats;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>The key of the pseudonyms: who has it can link them to people, so it lies in a file that only its owner can read.</summary>
internal sealed class PseudonymKey : IDisposable
{
    private const int MostBytes = 4096;
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    private const UnixFileMode Others = UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.GroupExecute
        | UnixFileMode.OtherRead | UnixFileMode.OtherWrite | UnixFileMode.OtherExecute;

    private readonly byte[] bytes;

    private PseudonymKey(byte[] bytes) => this.bytes = bytes;

    public ReadOnlySpan<byte> Bytes => bytes;

    /// <summary>Makes a key of 256 random bits in a new file of mode 600.</summary>
    public static PseudonymKey Create(string path)
    {
        var name = Path.GetFileName(path);
        var key = new byte[KeyStrength.FewestBytes];
        string text;
        do
        {
            RandomNumberGenerator.Fill(key);
            text = Convert.ToHexStringLower(key);
        }
        while (KeyStrength.Of(System.Text.Encoding.ASCII.GetBytes(text)).Key is null);

        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, Share = FileShare.None };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = OwnerOnly;
        try
        {
            using var stream = new FileStream(path, options);
            stream.Write(System.Text.Encoding.ASCII.GetBytes(text + "\n"));
            stream.Flush(flushToDisk: true);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            if (File.Exists(path)) throw Exists(name);
            throw new PseudonymizeException($"The key file {name} cannot be created; check that its folder exists, may be written and is not full.", failure);
        }

        return new PseudonymKey(key);
    }

    public static PseudonymizeException Exists(string name) =>
        new($"The key file {name} exists; leave out --create-key to use it. A key is never written over: pseudonyms made with it could not be made again.");

    /// <summary>Reads a key; a weak one, or one that others can read, is refused.</summary>
    public static PseudonymKey Read(string path)
    {
        var name = Path.GetFileName(path);
        byte[] content;
        if (!OrdinaryFile.HoldsBytes(path)) throw new PseudonymizeException($"The key file {name} is empty, or is no file but a pipe or a device; make one with --create-key.");
        try
        {
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            if (!OperatingSystem.IsWindows() && (File.GetUnixFileMode(stream.SafeFileHandle) & Others) != 0)
            {
                throw new PseudonymizeException($"The key file {name} can be read or written by others than its owner. Who has read it can link pseudonyms to people: "
                    + $"if that may have happened make a new key, else: chmod 600 {name}");
            }

            content = new byte[MostBytes + 1];
            content = content[..stream.ReadAtLeast(content, content.Length, throwOnEndOfStream: false)];
        }
        catch (Exception failure) when (failure is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new PseudonymizeException($"There is no key file {name}; check the path, or make one with --create-key.");
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new PseudonymizeException($"The key file {name} cannot be opened; check that it is a file and that you may read it.");
        }

        var (key, fault) = content.Length > MostBytes ? (null, "is too long") : KeyStrength.Of(content);
        Array.Clear(content);
        return key is not null
            ? new PseudonymKey(key)
            : throw new PseudonymizeException($"The key file {name} {fault}. A key is 256 random bits as 64 hexadecimal figures, as Base64 or as bare bytes; make one with --create-key.");
    }

    public void Dispose() => CryptographicOperations.ZeroMemory(bytes);
}
