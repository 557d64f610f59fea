using System.Data.Common;
using System.Globalization;

namespace ScreenStats.Warehouse.Engines;

/// <summary>One line of an answer.</summary>
internal readonly struct Line(DbDataReader reader)
{
    public int Count => reader.FieldCount;

    /// <summary>A text; null where it is NULL or empty.</summary>
    public string? Text(int at) => reader.IsDBNull(at) ? null : reader.GetString(at) is { Length: > 0 } text ? text : null;

    /// <summary>A whole number of any width; null where it is NULL.</summary>
    public long? Number(int at) => reader.IsDBNull(at) ? null : Whole(at);

    /// <summary>A whole number of any width that is not NULL.</summary>
    public long Whole(int at) => reader.GetValue(at) is long value ? value : Convert.ToInt64(reader.GetValue(at), CultureInfo.InvariantCulture);

    /// <summary>True or false.</summary>
    public bool YesNo(int at) => reader.GetBoolean(at);
}
