using System.Buffers.Binary;
using System.IO.Compression;
using System.IO.Hashing;
using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Records.Formats.Converting;

/// <summary>
/// Unpacks what gzip has packed, also where several members follow each other. The end is checked by length and checksum
/// of the last member: a file that was cut off would otherwise read as one with fewer rows.
/// </summary>
internal static class GzipFile
{
    /// <summary>Unpacks a file into a stream that can be read again.</summary>
    /// <remarks>
    /// What came out is held at every moment against what went in so far: a bomb stops after some 80 MB, however long it is, while
    /// a genuine export of any length goes on as long as there is room.
    /// </remarks>
    /// <exception cref="FileFault">It is no such file, is cut off or damaged, or unpacks to more than any export.</exception>
    public static void Unpack(string path, string name, FileStream to, UnpackingRoom room, Action tick)
    {
        using var packed = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 16);
        var length = packed.Length;
        if (length < 18 || packed.ReadByte() != 0x1F || packed.ReadByte() != 0x8B) throw new FileFault(ReadingDiagnostics.DamagedArchive, $"{name} is not a gzip file, as its name says. Copy it again, or correct its name.");
        packed.Position = length - 8;
        Span<byte> trailer = stackalloc byte[8];
        packed.ReadExactly(trailer);
        packed.Position = 0;
        var sum = new Crc32();
        long written = 0;
        try
        {
            using var unpacked = new GZipStream(packed, CompressionMode.Decompress);
            var buffer = new byte[1 << 17];
            for (int read; (read = unpacked.Read(buffer)) > 0;)
            {
                written += read;
                if (written > UnpackingRoom.AlwaysAllowed + (UnpackingRoom.MostTimes * packed.Position))
                {
                    throw new FileFault(ReadingDiagnostics.SuspiciousArchive,
                        $"{name} unpacks to more than {UnpackingRoom.MostTimes} times its length, which no export does. Nothing was read; check where it comes from. If it is an export, unpack it yourself (gunzip) and read the text.");
                }

                room.Take(read, name);
                sum.Append(buffer.AsSpan(0, read));
                to.Write(buffer.AsSpan(0, read));
                tick();
            }
        }
        catch (InvalidDataException)
        {
            throw Damaged(name);
        }

        to.Flush();
        if (!Whole(to, written, sum.GetCurrentHashAsUInt32(), BinaryPrimitives.ReadUInt32LittleEndian(trailer), BinaryPrimitives.ReadUInt32LittleEndian(trailer[4..]))) throw Damaged(name);
    }

    private static FileFault Damaged(string name) => new(ReadingDiagnostics.DamagedArchive, $"{name} is cut off or damaged: its checksum is not that of what it holds. Copy or export it again.");

    /// <summary>True where the last bytes written are the member that the trailer closes.</summary>
    private static bool Whole(FileStream text, long written, uint sumOfAll, uint sum, uint lengthOfLast)
    {
        for (long last = lengthOfLast; last <= written; last += 1L << 32)
        {
            if ((last == written ? sumOfAll : SumOfLast(text, written - last)) == sum) return true;
        }

        return false;
    }

    private static uint SumOfLast(FileStream text, long from)
    {
        var sum = new Crc32();
        var buffer = new byte[1 << 17];
        text.Position = from;
        for (int read; (read = text.Read(buffer)) > 0;) sum.Append(buffer.AsSpan(0, read));
        return sum.GetCurrentHashAsUInt32();
    }
}
