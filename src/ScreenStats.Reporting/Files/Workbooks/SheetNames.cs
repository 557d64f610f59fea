using System.Collections.Immutable;
using System.Globalization;

namespace ScreenStats.Reporting.Files.Workbooks;

/// <summary>Names of sheets: no longer than a workbook allows, and told apart whatever their case.</summary>
internal static class SheetNames
{
    /// <summary>The longest name that a workbook allows.</summary>
    public const int Longest = 31;

    /// <summary>A name for each id, in their order. What is cut and then alike gets a number at its end.</summary>
    /// <param name="ids">The ids of tables.</param>
    /// <param name="taken">Names that other sheets have.</param>
    public static ImmutableArray<string> Of(IEnumerable<string> ids, params ReadOnlySpan<string> taken)
    {
        var used = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var name in taken) used.Add(name);
        var names = ImmutableArray.CreateBuilder<string>();
        foreach (var id in ids)
        {
            var name = Cut(id, "");
            for (var number = 2; !used.Add(name); number++) name = Cut(id, "-" + number.ToString(CultureInfo.InvariantCulture));
            names.Add(name);
        }

        return names.ToImmutable();
    }

    private static string Cut(string id, string end) => (id.Length + end.Length <= Longest ? id : id[..(Longest - end.Length)]) + end;
}
