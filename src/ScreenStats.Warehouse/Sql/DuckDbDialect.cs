namespace ScreenStats.Warehouse.Sql;

/// <summary>DuckDB.</summary>
internal sealed class DuckDbDialect : Dialect
{
    public override string Seconds(string time) => $"(epoch_us({time}) // 1000000 - 946684800)";

    public override string IsLess(string from, string to, long seconds) => FormattableString.Invariant($"({Seconds(to)} - {Seconds(from)}) < {seconds}");

    public override string IsAfter(string time, long instant) => FormattableString.Invariant($"{Seconds(time)} > {instant}");

    public override string MinuteOfHour(string time) => $"((epoch_us({time}) // 60000000) % 60)";

    public override string SecondsOf(string minute) => $"({minute} * 60)";

    public override string Bytes(string text) => $"strlen({text})";

    public override string In(string value, int parameter, string type) => $"{value} IN (SELECT unnest(CAST(${parameter} AS {type}[])))";

    public override string Among(string value, int parameter) => $"list_contains(CAST(${parameter} AS VARCHAR[]), {value})";
}
