using ScreenStats.Counting.Ledger;

namespace ScreenStats.Records;

/// <summary>A file that was read.</summary>
/// <param name="Name">Name without its folder.</param>
/// <param name="Export">The export it belongs to.</param>
/// <param name="Bytes">Its length.</param>
/// <param name="Sha256">Its SHA-256, 64 hexadecimal figures in lower case.</param>
public sealed record InputFile(string Name, ExportKind Export, long Bytes, string Sha256);
