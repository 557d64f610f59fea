using System.Globalization;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.PersonLog.Checks;

namespace ScreenStats.Records.PersonLog.Codes;

/// <summary>How many different levels a column may have: keys of the counting tables are 64 bits.</summary>
internal static class LevelLimits
{
    public const int SiteBits = 21;
    public const int LotBits = 20;
    public const int KitBits = 23;
    public const int OperatorBits = 21;
    public const int MostSites = (1 << SiteBits) - 1;
    public const int MostLots = (1 << LotBits) - 1;
    public const int MostKits = (1 << KitBits) - 1;
    public const int MostOperators = (1 << OperatorBits) - 1;

    public static void Check(int code, int most, string column, string what)
    {
        if ((uint)code >= (uint)most) throw TooMany(column, what, most);
    }

    public static UnusableDataException TooMany(string column, string what, int most) => new(new Diagnostic(
        CountingDiagnostics.TooManyLevels, Severity.Error, "", null, column, string.Create(CultureInfo.InvariantCulture,
            $"The screening export has more than {most} different {what}; map the column that holds the {column} to \"{column}\" in the program file, or leave it out.")));
}
