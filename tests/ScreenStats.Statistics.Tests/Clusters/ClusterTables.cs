namespace ScreenStats.Statistics.Tests.Clusters;

/// <summary>Clusters as reference tables and generators hold them.</summary>
internal static class ClusterTables
{
    public static readonly Gen<(long Trials, long Events)[]> Any =
        Gen.Select(Gen.Long[1, 60], Gen.Double[0, 1]).Select((n, share) => (n, (long)Math.Round(n * share))).Array[2, 40];

    public static List<(long Trials, long Events)> Read(ReferenceRow row, string events, string trials) =>
        [.. row.Numbers(trials).Select(n => (long)n).Zip(row.Numbers(events).Select(x => (long)x))];

    public static List<(long Trials, long Events)> Mirrored(IEnumerable<(long Trials, long Events)> clusters) =>
        [.. clusters.Select(cluster => (cluster.Trials, cluster.Trials - cluster.Events))];

    public static bool Near(double? one, double? other) =>
        one is null ? other is null : other is not null && Math.Abs(one.Value - other.Value) <= 1e-9 * Math.Max(1, Math.Abs(one.Value));
}
