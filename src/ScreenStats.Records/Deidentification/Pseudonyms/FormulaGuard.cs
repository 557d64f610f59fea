using System.Buffers;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>
/// Whether a spreadsheet would run a cell as a formula: it begins with =, @, a tab or a line end, or with + or - and is more than
/// figures and signs. So -1, +1,5, 2026-01-05, +49 1632 960123 and a result written as + or - stay as they are.
/// </summary>
internal static class FormulaGuard
{
    /// <summary>What is put before such a cell.</summary>
    public const byte Mark = (byte)'\'';

    private static readonly SearchValues<byte> FiguresAndSigns = SearchValues.Create("0123456789+-.,: /"u8);

    public static bool Needed(ReadOnlySpan<byte> value)
    {
        if (value.IsEmpty) return false;
        switch (value[0])
        {
            case (byte)'=' or (byte)'@' or (byte)'\t' or (byte)'\r' or (byte)'\n':
                return true;
            case (byte)'+' or (byte)'-':
                return value.ContainsAnyExcept(FiguresAndSigns) && !Number(value);
            case 0xEF:
                // The same signs in full width, which some spreadsheets take for them.
                return value.Length >= 3 && value[1] == 0xBC && value[2] is 0x9D or 0x8B or 0x8D or 0xA0;
            default:
                return false;
        }
    }

    private static bool Number(ReadOnlySpan<byte> value) =>
        System.Buffers.Text.Utf8Parser.TryParse(value, out double _, out var used) && used == value.Length;
}
