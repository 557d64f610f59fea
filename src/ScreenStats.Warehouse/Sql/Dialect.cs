namespace ScreenStats.Warehouse.Sql;

/// <summary>
/// Where the engines differ in how something is written. What is written for PostgreSQL can be left to shards: only immutable functions and
/// operators of its own, no IS TRUE, COALESCE or NULLIF, which postgres_fdw of version 15 does not send.
/// </summary>
internal abstract class Dialect
{
    /// <summary>Whole seconds since 2000-01-01T00:00:00 UTC of an instant, cut off towards the past.</summary>
    public abstract string Seconds(string time);

    /// <summary>Bytes of a text.</summary>
    public abstract string Bytes(string text);

    /// <summary>True where a value is one of a long list.</summary>
    public abstract string In(string value, int parameter, string type);

    /// <summary>True where a value is one of a short list.</summary>
    public abstract string Among(string value, int parameter);

    /// <summary>Whole days since 2000-01-01 of a date.</summary>
    public static string Day(string date) => $"({date} - DATE '2000-01-01')";

    /// <summary>The same of the Monday of its week; 1900-01-01 was one.</summary>
    public static string Week(string date) => $"({date} - DATE '2000-01-01' - (({date} - DATE '1900-01-01') % 7))";

    /// <summary>The same of the first of its month.</summary>
    public static string Month(string date) => $"({date} - DATE '2000-01-01' + 1 - CAST(EXTRACT(day FROM {date}) AS integer))";
}
