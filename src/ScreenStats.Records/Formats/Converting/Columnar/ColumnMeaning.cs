using Parquet.Meta;
using Type = Parquet.Meta.Type;

namespace ScreenStats.Records.Formats.Converting.Columnar;

/// <summary>What the values of a column are, whatever way they are stored in.</summary>
internal enum ColumnKind
{
    /// <summary>True and false.</summary>
    Truth = 0,

    /// <summary>Whole numbers.</summary>
    Whole = 1,

    /// <summary>Whole numbers without a sign.</summary>
    Unsigned = 2,

    /// <summary>Binary fractions.</summary>
    Fraction = 3,

    /// <summary>Decimal fractions.</summary>
    Decimal = 4,

    /// <summary>Days since 1970-01-01.</summary>
    Day = 5,

    /// <summary>Moments since the beginning of 1970.</summary>
    Moment = 6,

    /// <summary>Times of day.</summary>
    TimeOfDay = 7,

    /// <summary>Text in UTF-8.</summary>
    Text = 8,

    /// <summary>Identifiers of 128 bits.</summary>
    Identifier = 9,
}

/// <summary>What the schema says of a column.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Stored">How values are stored.</param>
/// <param name="Optional">True where values may be missing.</param>
/// <param name="Kind">What the values are.</param>
/// <param name="Scale">Of decimals the digits behind the point; of moments and times of day the digits of fractions of a second.</param>
/// <param name="Utc">Of moments: true where they are instants, written in UTC; false where they are what a clock on the wall showed.</param>
/// <param name="Unsupported">Why it is not read; null where it is.</param>
internal sealed record ColumnMeaning(string Name, Type? Stored, bool Optional, ColumnKind Kind, int Scale, bool Utc, string? Unsupported)
{
    private const int MostDigits = 76;

    /// <summary>The meaning of a top-level element of the schema, by the logical types of the format, else by the older converted types.</summary>
    public static ColumnMeaning Of(SchemaElement element)
    {
        var logical = element.LogicalType;
        if (element.NumChildren > 0 || element.Type is null || element.RepetitionType == FieldRepetitionType.REPEATED)
            return Not("is nested (a list, a map or a structure), and exports are flat. Write each value into a column of its own");
        if (logical?.UNKNOWN is not null) return Is(ColumnKind.Whole);
        if (logical?.STRING is not null || logical?.ENUM is not null || logical?.JSON is not null) return Stored(ColumnKind.Text, Type.BYTE_ARRAY);
        if (logical?.UUID is not null) return element.TypeLength == 16 ? Stored(ColumnKind.Identifier, Type.FIXED_LEN_BYTE_ARRAY) : NotKnown();
        if (logical?.FLOAT16 is not null) return element.TypeLength == 2 ? Stored(ColumnKind.Fraction, Type.FIXED_LEN_BYTE_ARRAY) : NotKnown();
        if (logical?.DECIMAL is { } @decimal) return Decimals(@decimal.Scale);
        if (logical?.DATE is not null) return Stored(ColumnKind.Day, Type.INT32);
        if (logical?.TIME is { } time) return Digits(time.Unit) is { } ofTime ? Is(ColumnKind.TimeOfDay, ofTime, time.IsAdjustedToUTC) : NotKnown();
        if (logical?.TIMESTAMP is { } stamp) return Digits(stamp.Unit) is { } ofStamp ? Stored(ColumnKind.Moment, Type.INT64, ofStamp, stamp.IsAdjustedToUTC) : NotKnown();
        if (logical?.INTEGER is { } integer) return Is(integer.IsSigned ? ColumnKind.Whole : ColumnKind.Unsigned);
        if (logical?.BSON is not null || logical?.VARIANT is not null || logical?.GEOMETRY is not null || logical?.GEOGRAPHY is not null) return NotKnown();
        return element.ConvertedType switch
        {
            ConvertedType.UTF8 or ConvertedType.ENUM or ConvertedType.JSON => Stored(ColumnKind.Text, Type.BYTE_ARRAY),
            ConvertedType.DECIMAL => Decimals(element.Scale ?? 0),
            ConvertedType.DATE => Stored(ColumnKind.Day, Type.INT32),
            ConvertedType.TIME_MILLIS => Is(ColumnKind.TimeOfDay, 3),
            ConvertedType.TIME_MICROS => Is(ColumnKind.TimeOfDay, 6),
            // The format says of these two that they are instants.
            ConvertedType.TIMESTAMP_MILLIS => Stored(ColumnKind.Moment, Type.INT64, 3, utc: true),
            ConvertedType.TIMESTAMP_MICROS => Stored(ColumnKind.Moment, Type.INT64, 6, utc: true),
            ConvertedType.UINT_8 or ConvertedType.UINT_16 or ConvertedType.UINT_32 or ConvertedType.UINT_64 => Is(ColumnKind.Unsigned),
            ConvertedType.INT_8 or ConvertedType.INT_16 or ConvertedType.INT_32 or ConvertedType.INT_64 => Is(ColumnKind.Whole),
            null => Bare(),
            _ => NotKnown(),
        };

        ColumnMeaning Bare() => element.Type switch
        {
            Type.BOOLEAN => Is(ColumnKind.Truth),
            Type.INT32 or Type.INT64 => Is(ColumnKind.Whole),
            Type.FLOAT or Type.DOUBLE => Is(ColumnKind.Fraction),
            Type.INT96 => Not("holds times in the old form of 96 bits, which does not say whether they are in UTC. Write it as TIMESTAMP"),
            _ => Not("holds bytes and does not say that they are text. Write it as STRING"),
        };

        ColumnMeaning Decimals(int scale) => scale is >= 0 and <= MostDigits && element.Type is Type.INT32 or Type.INT64 or Type.BYTE_ARRAY or Type.FIXED_LEN_BYTE_ARRAY
            ? Is(ColumnKind.Decimal, scale)
            : NotKnown();

        ColumnMeaning Stored(ColumnKind kind, Type type, int scale = 0, bool utc = false) => element.Type == type ? Is(kind, scale, utc) : NotKnown();

        ColumnMeaning Is(ColumnKind kind, int scale = 0, bool utc = false) =>
            kind is ColumnKind.Whole or ColumnKind.Unsigned or ColumnKind.TimeOfDay && element.Type is not (Type.INT32 or Type.INT64) && logical?.UNKNOWN is null
                ? NotKnown()
                : new(element.Name, element.Type, element.RepetitionType != FieldRepetitionType.REQUIRED, kind, scale, utc, null);

        ColumnMeaning NotKnown() => Not("is of a kind that is not read. Write it as text, a number, a date or a timestamp");

        ColumnMeaning Not(string why) => new(element.Name, null, true, ColumnKind.Text, 0, false, why);
    }

    private static int? Digits(TimeUnit? unit) => unit switch
    {
        { MILLIS: not null } => 3,
        { MICROS: not null } => 6,
        { NANOS: not null } => 9,
        _ => null,
    };
}
