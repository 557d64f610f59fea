namespace ScreenStats.Warehouse.Sql;

/// <summary>PostgreSQL and what speaks its dialect.</summary>
internal sealed class PostgresDialect : Dialect
{
    public override string Seconds(string time) => $"CAST(floor(EXTRACT(epoch FROM ({time} - TIMESTAMPTZ '2000-01-01 00:00:00+00'))) AS bigint)";

    public override string IsLess(string from, string to, long seconds) => FormattableString.Invariant($"({Bin("1 second", to)} - {Bin("1 second", from)}) < INTERVAL '{seconds} seconds'");

    public override string IsAfter(string time, long instant) => FormattableString.Invariant($"{time} >= TIMESTAMPTZ '{Origin.AddSeconds(instant + 1):yyyy-MM-dd HH:mm:ss}+00'");

    public override string MinuteOfHour(string time) => $"({Bin("1 minute", time)} - {Bin("1 hour", time)})";

    public override string SecondsOf(string minute) => $"CAST(EXTRACT(epoch FROM {minute}) AS bigint)";

    private static DateTime Origin { get; } = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);

    private static string Bin(string length, string time) => $"date_bin('{length}', {time}, TIMESTAMPTZ '2000-01-01 00:00:00+00')";

    public override string Bytes(string text) => $"octet_length({text})";

    public override string In(string value, int parameter, string type) => $"{value} = ANY(${parameter})";

    public override string Among(string value, int parameter) => $"{value} = ANY(${parameter})";
}
