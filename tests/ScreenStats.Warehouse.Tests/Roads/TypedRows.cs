using System.Globalization;
using ScreenStats.Warehouse.Tests.Programs;

namespace ScreenStats.Warehouse.Tests.Roads;

/// <summary>Rows as the two views have them: columns, SQL types and values by the contract of ScreenStats.Warehouse.</summary>
internal static class TypedRows
{
    /// <summary>How many buckets people fall into.</summary>
    public const int Buckets = 24;

    /// <summary>The columns of the view of screening runs with the kind of each.</summary>
    public static readonly (string Name, Kind Kind)[] Screening =
    [
        ("person", Kind.Text), ("site", Kind.Text), ("collected_at", Kind.Instant), ("collected_on", Kind.Date), ("result", Kind.Text), ("bucket", Kind.Bucket), ("lot", Kind.Text), ("kit", Kind.Text), ("operator", Kind.Text), ("screen_id", Kind.Text),
        ("lot_expiry", Kind.Date), ("read_at", Kind.Instant), ("specimen", Kind.Text), ("collection", Kind.Text), ("symptomatic", Kind.Truth), ("exposed", Kind.Truth), ("outbreak", Kind.Truth), ("control", Kind.Text), ("row_number", Kind.Number),
    ];

    /// <summary>The columns of the view of specimens.</summary>
    public static readonly (string Name, Kind Kind)[] Confirmatory =
    [
        ("person", Kind.Text), ("collected_at", Kind.Instant), ("collected_on", Kind.Date), ("result", Kind.Text), ("reported_at", Kind.Instant), ("reported_on", Kind.Date), ("method", Kind.Text), ("sampling_stratum", Kind.Text), ("reason", Kind.Text),
        ("row_number", Kind.Number), ("bucket", Kind.Bucket),
    ];

    internal enum Kind
    {
        Text = 0,
        Instant = 1,
        Date = 2,
        Truth = 3,
        Number = 4,
        Bucket = 5,
    }

    /// <summary>The type of a column in PostgreSQL or DuckDB.</summary>
    public static string Sql(Kind kind, bool duck) => kind switch
    {
        Kind.Text => duck ? "VARCHAR" : "text",
        Kind.Instant => duck ? "TIMESTAMP WITH TIME ZONE" : "timestamptz",
        Kind.Date => "date",
        Kind.Truth => "boolean",
        Kind.Number => "bigint",
        _ => "int",
    };

    /// <summary>A value in the text form that both engines read; null for NULL.</summary>
    public static string? Value(Row row, long number, string column, Kind kind, TimeZoneInfo? zone)
    {
        switch (column)
        {
            case "row_number":
                return number.ToString(CultureInfo.InvariantCulture);
            case "bucket":
                return Bucket(row["person"]).ToString(CultureInfo.InvariantCulture);
            case "collected_on" or "reported_on":
                return WrittenTime.Of(row[column[..^2] + "at"])?.Local.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        }

        var text = row[column];
        if (text.Length == 0) return null;
        return kind switch
        {
            Kind.Instant => WrittenTime.Of(text) is { DateOnly: false } time ? time.Utc(zone).ToString("yyyy-MM-dd HH:mm:ss'+00'", CultureInfo.InvariantCulture) : null,
            Kind.Date => text,
            Kind.Truth => text == "yes" ? "true" : "false",
            _ => text,
        };
    }

    /// <summary>The bucket of a person: derived from the person alone.</summary>
    public static int Bucket(string person) => (int)(person.Aggregate(2_166_136_261u, (hash, letter) => (hash ^ letter) * 16_777_619u) % Buckets);
}
