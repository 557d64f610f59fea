namespace ScreenStats.Warehouse.Sql;

/// <summary>PostgreSQL and what speaks its dialect.</summary>
internal sealed class PostgresDialect : Dialect
{
    public override string Seconds(string time) => $"CAST(floor(EXTRACT(epoch FROM ({time} - TIMESTAMPTZ '2000-01-01 00:00:00+00'))) AS bigint)";

    public override string Bytes(string text) => $"octet_length({text})";

    public override string In(string value, int parameter, string type) => $"{value} = ANY(${parameter})";

    public override string Among(string value, int parameter) => $"{value} = ANY(${parameter})";
}
