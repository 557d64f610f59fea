using System.Globalization;

namespace ScreenStats.Testing;

/// <summary>One row of a <see cref="ReferenceTable"/>.</summary>
public sealed class ReferenceRow
{
    private readonly IReadOnlyList<string> _columns;
    private readonly IReadOnlyList<string> _fields;

    internal ReferenceRow(string table, IReadOnlyList<string> columns, IReadOnlyList<string> fields)
    {
        Table = table;
        _columns = columns;
        _fields = fields;
    }

    public string Table { get; }

    public string Id => Text("id");

    /// <summary><c>exact</c>, <c>relative:1e-9</c> or <c>absolute:5e-5</c>.</summary>
    public string Tolerance => Text("tolerance");

    /// <summary><c>published</c>, <c>independent</c>, <c>closed-form</c> or <c>regression</c>.</summary>
    public string Kind => Text("kind");

    public string Source => Text("source");

    public string Text(string column)
    {
        for (var i = 0; i < _columns.Count; i++)
        {
            if (string.Equals(_columns[i], column, StringComparison.Ordinal)) return _fields[i];
        }

        throw new ArgumentException($"{Table}.csv has no column {column}.", nameof(column));
    }

    public bool Has(string column) => Text(column).Length > 0;

    public double Number(string column) => double.Parse(Text(column), NumberStyles.Float, CultureInfo.InvariantCulture);

    public long Count(string column) => long.Parse(Text(column), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);

    /// <summary>Numbers separated by blanks in one field.</summary>
    public IReadOnlyList<double> Numbers(string column) =>
        [.. Text(column).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(part => double.Parse(part, NumberStyles.Float, CultureInfo.InvariantCulture))];

    /// <summary>
    /// Why a computed figure does not match the row's, or null where it does or the field is empty (not stated by the source). An expected
    /// <c>undefined</c> matches null only.
    /// </summary>
    public string? Mismatch(string column, double? actual)
    {
        var expected = Text(column);
        if (expected.Length == 0) return null;
        if (expected == "undefined") return actual is null ? null : Message(column, expected, actual);
        if (actual is not { } value) return Message(column, expected, actual);
        return Within(Number(column), value) ? null : Message(column, expected, actual);
    }

    /// <summary>Whether a value lies within the row's tolerance of the expected one.</summary>
    public bool Within(double expected, double actual)
    {
        if (!double.IsFinite(actual)) return false;
        if (Tolerance == "exact") return expected == actual;
        var parts = Tolerance.Split(':');
        var width = double.Parse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture);
        return parts[0] switch
        {
            "relative" => Math.Abs(actual - expected) <= width * Math.Abs(expected),
            // Published figures are rounded; the last bit of the sum must not decide.
            "absolute" => Math.Abs(actual - expected) <= width * (1 + 1e-9),
            _ => throw new FormatException($"{Table}.csv row {Id}: a tolerance is exact, relative:x or absolute:x."),
        };
    }

    public override string ToString() => $"{Table} {Id}";

    private string Message(string column, string expected, double? actual) =>
        string.Create(CultureInfo.InvariantCulture, $"{Table}.csv {Id}: {column} should be {expected} ({Tolerance}), is {(actual is { } value ? value.ToString("R", CultureInfo.InvariantCulture) : "undefined")}");
}
