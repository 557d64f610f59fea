using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog.Rows;

namespace ScreenStats.Records.PersonLog.Codes;

/// <summary>How the coordinates of the counting tables are packed into 64 bits.</summary>
internal static class Keys
{
    public const int DayBits = 17;

    /// <summary>Bits that a packed day of a run really needs: runs lie between 1970 and 2106.</summary>
    public const int RunDayBits = 16;
    public const int FollowUpBits = 3;
    public const int StratumBits = 18;
    private const int DayBias = 20_000;

    public static ulong Day(int dayNumber) => (ulong)(dayNumber + DayBias);

    public static DateOnly DayOf(ulong key) => Moment.DayOf((int)(key & ((1 << DayBits) - 1)) - DayBias);

    /// <summary>The day in a key that ends in one.</summary>
    public static int DayNumber(ulong key) => (int)(key & ((1 << DayBits) - 1)) - DayBias;

    public static ulong Shape(int code, int dayNumber) => ((ulong)code << DayBits) | Day(dayNumber);

    public static ulong Shape(int code, int dayNumber, FollowUp followUp) => (Shape(code, dayNumber) << FollowUpBits) | (ulong)followUp;

    public static ulong Operator(int person, int site, int dayNumber, Outcome outcome, OutbreakMark mark) =>
        (((((((ulong)person << LevelLimits.SiteBits) | (uint)site) << RunDayBits) | Day(dayNumber)) << 2 | (ulong)outcome) << 2) | (ulong)mark;

    /// <summary>A kit before its site and lot: all of one kit stand together in order.</summary>
    public static ulong KitFirst(int kit, ulong siteAndLot) => ((ulong)kit << (LevelLimits.SiteBits + LevelLimits.LotBits)) | siteAndLot;

    public static int KitOf(ulong key) => (int)(key >> (LevelLimits.SiteBits + LevelLimits.LotBits));

    public static (int Site, int Lot) SiteAndLotOf(ulong key) =>
        ((int)(key >> LevelLimits.LotBits) & ((1 << LevelLimits.SiteBits) - 1), (int)key & ((1 << LevelLimits.LotBits) - 1));

    /// <summary>A site, a lot and a packed day.</summary>
    public static ulong Run(int site, int lot, ulong day) => (SiteAndLot(site, lot) << DayBits) | day;

    public static ulong SiteAndLot(int site, int lot) => ((ulong)site << LevelLimits.LotBits) | (uint)lot;

    public static ulong Conduct(ConductKind kind, int site, int lot, int dayNumber) =>
        ((((ulong)kind << (LevelLimits.SiteBits + LevelLimits.LotBits)) | SiteAndLot(site, lot)) << DayBits) | Day(dayNumber);

    public static ulong Repeat(int site, int dayNumber, Outcome outcome, bool done) =>
        (((((ulong)(uint)site << DayBits) | Day(dayNumber)) << 2 | (ulong)outcome) << 1) | (done ? 1u : 0);

    /// <summary>The lowest bits of a key, which it loses.</summary>
    public static int Take(ref ulong key, int bits)
    {
        var value = (int)(key & ((1ul << bits) - 1));
        key >>= bits;
        return value;
    }
}
