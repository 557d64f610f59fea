namespace ScreenStats.Records.Formats;

/// <summary>What the name of a file says about its form.</summary>
/// <param name="Format">The format.</param>
/// <param name="Compressed">True for a file that gzip has compressed.</param>
internal readonly record struct FileForm(FileFormat Format, bool Compressed)
{
    /// <summary>The endings of names that are looked for, without the one that gzip adds.</summary>
    public static readonly string[] Endings = [".csv", ".tsv", ".txt", ".xlsx", ".ndjson", ".parquet"];

    private const string Gzip = ".gz";

    /// <summary>True for a name that ends as an export does.</summary>
    public static bool Usual(string name)
    {
        var inner = Inner(name);
        return Endings.Any(ending => inner.EndsWith(ending, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>The form of a file of this name; a name with another ending is taken for text.</summary>
    public static FileForm Of(string name)
    {
        var inner = Inner(name);
        var format = inner.EndsWith(".xlsx", StringComparison.OrdinalIgnoreCase) || inner.EndsWith(".xlsm", StringComparison.OrdinalIgnoreCase) ? FileFormat.Workbook
            : inner.EndsWith(".ndjson", StringComparison.OrdinalIgnoreCase) ? FileFormat.Observations
            : inner.EndsWith(".parquet", StringComparison.OrdinalIgnoreCase) ? FileFormat.Parquet
            : FileFormat.DelimitedText;
        return new FileForm(format, inner.Length < name.Length);
    }

    /// <summary>The name without what tells the form: the same for two forms of one export.</summary>
    public static string Stem(string name)
    {
        var inner = Inner(name);
        return Usual(name) ? inner[..inner.LastIndexOf('.')] : inner;
    }

    private static string Inner(string name) => name.EndsWith(Gzip, StringComparison.OrdinalIgnoreCase) ? name[..^Gzip.Length] : name;
}
