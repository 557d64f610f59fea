using System.Globalization;

namespace ScreenStats.Evaluation.Model;

/// <summary>One cell of a table: a value, an undefined value with its reason, or a hidden one.</summary>
public readonly record struct Cell
{
    private readonly long count;
    private readonly double number;
    private readonly string? text;

    private Cell(CellKind kind, long count = 0, double number = 0, string? text = null)
    {
        Kind = kind;
        this.count = count;
        this.number = number;
        this.text = text;
    }

    /// <summary>An empty cell.</summary>
    public static Cell Empty => default;

    /// <summary>A cell whose value is not shown.</summary>
    public static Cell Hidden => new(CellKind.Hidden);

    /// <summary>What the cell holds.</summary>
    public CellKind Kind { get; }

    /// <summary>The whole number of a count.</summary>
    /// <exception cref="InvalidOperationException">The cell is not a count.</exception>
    public long AsCount => Kind == CellKind.Count ? count : throw Not(CellKind.Count);

    /// <summary>The number of a number or a count.</summary>
    /// <exception cref="InvalidOperationException">The cell is neither.</exception>
    public double AsNumber => Kind switch
    {
        CellKind.Number => number,
        CellKind.Count => count,
        _ => throw Not(CellKind.Number),
    };

    /// <summary>The text of a text, or the reason of an undefined cell.</summary>
    /// <exception cref="InvalidOperationException">The cell is neither.</exception>
    public string AsText => Kind is CellKind.Text or CellKind.Undefined ? text ?? "" : throw Not(CellKind.Text);

    /// <summary>The day of a date.</summary>
    /// <exception cref="InvalidOperationException">The cell is not a date.</exception>
    public DateOnly AsDate => Kind == CellKind.Date ? DateOnly.FromDayNumber((int)count) : throw Not(CellKind.Date);

    /// <summary>A count.</summary>
    /// <param name="value">Whole number.</param>
    /// <returns>The cell.</returns>
    public static Cell Count(long value) => new(CellKind.Count, count: value);

    /// <summary>A number.</summary>
    /// <param name="value">A finite number.</param>
    /// <returns>The cell.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="value"/> is not finite.</exception>
    public static Cell Number(double value) => double.IsFinite(value)
        ? new(CellKind.Number, number: value)
        : throw new ArgumentOutOfRangeException(nameof(value), value, "A number in a table is finite; use Undefined with a reason.");

    /// <summary>A number, or undefined where there is none.</summary>
    /// <param name="value">A finite number, or null.</param>
    /// <param name="reason">Why there is none.</param>
    /// <returns>The cell.</returns>
    public static Cell NumberOr(double? value, string reason) => value is { } some ? Number(some) : Undefined(reason);

    /// <summary>A text.</summary>
    /// <param name="value">The text.</param>
    /// <returns>The cell.</returns>
    public static Cell Text(string value) => new(CellKind.Text, text: value);

    /// <summary>A day.</summary>
    /// <param name="value">The day, or null for an empty cell.</param>
    /// <returns>The cell.</returns>
    public static Cell Date(DateOnly? value) => value is { } day ? new(CellKind.Date, count: day.DayNumber) : Empty;

    /// <summary>No value, for a reason.</summary>
    /// <param name="reason">Why, in plain words.</param>
    /// <returns>The cell.</returns>
    public static Cell Undefined(string reason) => new(CellKind.Undefined, text: reason);

    /// <summary>The cell for debugging, invariant.</summary>
    /// <returns>A short text.</returns>
    public override string ToString() => Kind switch
    {
        CellKind.Count => count.ToString(CultureInfo.InvariantCulture),
        CellKind.Number => number.ToString("R", CultureInfo.InvariantCulture),
        CellKind.Text => text ?? "",
        CellKind.Date => AsDate.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        CellKind.Undefined => $"undefined ({text})",
        CellKind.Hidden => "hidden",
        _ => "",
    };

    private InvalidOperationException Not(CellKind wanted) => new($"The cell is {Kind}, not {wanted}.");
}
