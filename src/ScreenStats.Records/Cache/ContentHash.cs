namespace ScreenStats.Records.Cache;

/// <summary>What tells the content of a file.</summary>
/// <param name="Sha256">In hexadecimal figures, small letters.</param>
/// <param name="Checksum">A quick one of the bytes behind the mark of the encoding: by it what was read is held against what was hashed.</param>
internal sealed record ContentHash(string Sha256, UInt128 Checksum);
