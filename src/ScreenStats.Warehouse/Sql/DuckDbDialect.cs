namespace ScreenStats.Warehouse.Sql;

/// <summary>DuckDB.</summary>
internal sealed class DuckDbDialect : Dialect
{
    public override string Seconds(string time) => $"(epoch_us({time}) // 1000000 - 946684800)";

    public override string Bytes(string text) => $"strlen({text})";

    public override string In(string value, int parameter, string type) => $"{value} IN (SELECT unnest(CAST(${parameter} AS {type}[])))";

    public override string Among(string value, int parameter) => $"list_contains(CAST(${parameter} AS VARCHAR[]), {value})";
}
