using System.Collections.Concurrent;
using System.Collections.Immutable;
using ScreenStats.Warehouse.Tests.Programs;
using ScreenStats.Warehouse.Tests.Roads;

namespace ScreenStats.Warehouse.Tests;

/// <summary>The tables of the road of files, worked out once for each program.</summary>
internal static class FileTables
{
    private static readonly ConcurrentDictionary<SmallProgram, ImmutableSortedDictionary<string, string>> Known = new(ReferenceEqualityComparer.Instance);

    public static ImmutableSortedDictionary<string, string> Of(SmallProgram program) => Known.GetOrAdd(program, one => Way.Through(new CsvRoad(), one).Tables);
}
