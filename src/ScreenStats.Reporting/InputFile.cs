namespace ScreenStats.Reporting;

/// <summary>A file that was read.</summary>
/// <param name="Name">Its name without its folder.</param>
/// <param name="Sha256">SHA-256 of its bytes, in hexadecimal.</param>
public sealed record InputFile(string Name, string Sha256);
