namespace ScreenStats.Records.Formats;

/// <summary>A piece of a file that holds whole records, as UTF-8.</summary>
internal sealed class Block
{
    public byte[] Buffer = [];

    public int Length;

    /// <summary>Position among the blocks of the file, from 0.</summary>
    public int Number;

    /// <summary>Where the block starts in the file, in bytes of the file.</summary>
    public long SourceOffset;

    /// <summary>Bytes of the file it was made of.</summary>
    public int SourceLength;
}
