using System.Runtime.CompilerServices;
using ScreenStats.Records.PersonLog.Codes;

namespace ScreenStats.Records.PersonLog.Rows;

/// <summary>Distinct row shapes and their codes from 0, by open addressing.</summary>
internal sealed class ShapeTable
{
    /// <summary>Codes have 24 bits.</summary>
    public const int Most = 1 << 24;

    private int[] slots = new int[1 << 10];
    private RowShape[] shapes = new RowShape[256];

    public int Count { get; private set; }

    public RowShape this[int code] => shapes[code];

    public ReadOnlySpan<RowShape> All => shapes.AsSpan(0, Count);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public int Code(in RowShape shape)
    {
        var mask = slots.Length - 1;
        for (var slot = Hash(shape) & mask; ; slot = (slot + 1) & mask)
        {
            var code = slots[slot] - 1;
            if (code < 0) return Add(shape, slot);
            ref var known = ref shapes[code];
            if (known.Site == shape.Site && known.Bits == shape.Bits && known.Lot == shape.Lot) return code;
        }
    }

    private static int Hash(in RowShape shape)
    {
        var hash = ((((ulong)(uint)shape.Site << 32) | (uint)shape.Lot) * 0x9E3779B97F4A7C15ul) ^ (shape.Bits * 0xC2B2AE3D27D4EB4Ful);
        hash ^= hash >> 32;
        return (int)((hash * 0x9E3779B97F4A7C15ul) >> 33);
    }

    private int Add(in RowShape shape, int slot)
    {
        LevelLimits.Check(shape.Site, LevelLimits.MostSites, "site", "sites");
        LevelLimits.Check(shape.Lot, LevelLimits.MostLots, "lot", "lots");
        if (Count == Most) throw LevelLimits.TooMany("lot", "combinations of site, lot, outcome and marks", Most);
        if (Count == shapes.Length) Array.Resize(ref shapes, 2 * Count);
        shapes[Count] = shape;
        slots[slot] = ++Count;
        if (2 * Count > slots.Length) Grow();
        return Count - 1;
    }

    private void Grow()
    {
        slots = new int[2 * slots.Length];
        var mask = slots.Length - 1;
        for (var code = 0; code < Count; code++)
        {
            var slot = Hash(shapes[code]) & mask;
            while (slots[slot] != 0) slot = (slot + 1) & mask;
            slots[slot] = code + 1;
        }
    }
}
