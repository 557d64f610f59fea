using ScreenStats.Statistics.Heterogeneity;

namespace ScreenStats.Statistics.Tests.Heterogeneity;

/// <summary>Groups as they stand in reference tables, and as they are drawn for properties.</summary>
internal static class GroupRows
{
    public static readonly Gen<GroupCount[]> Drawn = Gen.Select(Gen.Long[0, 3000], Gen.Double[0, 1]).Select((trials, part) => new GroupCount((long)(part * part * part * trials), trials)).Array[2, 12];

    public static GroupCount[] Read(ReferenceRow row) =>
        [.. row.Numbers("events").Zip(row.Numbers("trials"), (events, trials) => new GroupCount((long)events, (long)trials))];

    /// <summary>Compares numbers listed in one field.</summary>
    public static IEnumerable<string?> Mismatches(ReferenceRow row, string column, IEnumerable<double?> actual)
    {
        if (!row.Has(column)) return [];
        var expected = row.Numbers(column);
        var values = actual.ToList();
        return values.Count != expected.Count
            ? [$"{row}: {column} has {values.Count} figures, should have {expected.Count}"]
            : expected.Zip(values, (wanted, value) => value is { } v && row.Within(wanted, v) ? null : $"{row}: {column} should be {wanted:R} ({row.Tolerance}), is {value:R}");
    }
}
