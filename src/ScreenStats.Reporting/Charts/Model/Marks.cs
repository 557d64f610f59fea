using System.Collections.Immutable;

namespace ScreenStats.Reporting.Charts.Model;

/// <summary>Something drawn in a chart; positions are in the axes' natural units.</summary>
internal abstract record Mark;

/// <summary>An estimate with its limits. Never an estimate alone.</summary>
/// <param name="At">Place on the other axis: a day, a level.</param>
/// <param name="Estimate">The estimate.</param>
/// <param name="Lower">Lower limit, not below the axis.</param>
/// <param name="Upper">Upper limit, not above the axis.</param>
/// <param name="Upright">True where the interval is drawn along the vertical axis.</param>
/// <param name="Tone">What it means.</param>
/// <param name="Faded">True where it rests on few counts.</param>
/// <param name="Cut">True where the upper limit lies beyond the axis.</param>
internal sealed record IntervalMark(
    double At, double Estimate, double Lower, double Upper, bool Upright, Tone Tone = Tone.Main, bool Faded = false, bool Cut = false) : Mark;

/// <summary>What has no estimate but a lower limit: a line along the horizontal axis from there that goes on beyond the edge.</summary>
/// <param name="At">Place on the vertical axis.</param>
/// <param name="Lower">The lower limit, marked by a stroke.</param>
/// <param name="Edge">Where the line ends with an arrow head.</param>
/// <param name="Tone">What it means.</param>
/// <param name="Open">Whether it has an arrow head; else it ends at a place that nothing can be above.</param>
internal sealed record AtLeastMark(double At, double Lower, double Edge, Tone Tone = Tone.Main, bool Open = true) : Mark;

/// <summary>A line through points.</summary>
internal sealed record LineMark(ImmutableArray<(double X, double Y)> Points, Tone Tone, double Width = 1.5, bool Dashed = false) : Mark;

/// <summary>A surface between two lines: the limits around a curve.</summary>
/// <param name="Points">Places in rising order, with the two lines.</param>
/// <param name="Tone">What it means.</param>
/// <param name="Opacity">How much of what lies behind it hides, in (0, 1].</param>
internal sealed record BandMark(ImmutableArray<(double X, double Lower, double Upper)> Points, Tone Tone, double Opacity = 0.18) : Mark;

/// <summary>A line across the whole chart at one value.</summary>
internal sealed record RuleMark(double At, bool Upright, Tone Tone = Tone.Quiet, bool Dashed = true) : Mark;

/// <summary>A bar along the horizontal axis.</summary>
internal sealed record BarMark(double At, double From, double To, Tone Tone, double Thickness = 0.62) : Mark;

/// <summary>A dot, or another shape that says what the point is.</summary>
/// <param name="X">Place on the horizontal axis.</param>
/// <param name="Y">Place on the vertical axis.</param>
/// <param name="Tone">What it means.</param>
/// <param name="Shape">Its shape.</param>
/// <param name="Size">Width in pixels.</param>
/// <param name="Faded">True where it stands behind others: one of very many, or one that a line leads through.</param>
internal sealed record DotMark(double X, double Y, Tone Tone, DotShape Shape = DotShape.Filled, double Size = 10, bool Faded = false) : Mark;

/// <summary>The shape of a dot.</summary>
internal enum DotShape
{
    /// <summary>A point like others.</summary>
    Filled = 0,

    /// <summary>A point that is not complete.</summary>
    Hollow = 1,

    /// <summary>A point that needs looking into.</summary>
    Diamond = 2,

    /// <summary>A point that belongs to a pattern.</summary>
    Square = 3,

    /// <summary>A point above its limits.</summary>
    TriangleUp = 4,

    /// <summary>A point below its limits.</summary>
    TriangleDown = 5,

    /// <summary>A place of its own kind, such as a change that was found.</summary>
    HollowDiamond = 6,
}

/// <summary>Words in the chart, beside what they speak of.</summary>
/// <param name="X">Place on the horizontal axis.</param>
/// <param name="Y">Place on the vertical axis.</param>
/// <param name="Text">The words.</param>
/// <param name="Side">Where they stand, seen from the place.</param>
/// <param name="Tone">What they speak of.</param>
/// <param name="Strong">Whether they are drawn strong.</param>
/// <param name="Backed">Whether paper lies behind them, so that lines end there.</param>
internal sealed record LabelMark(double X, double Y, string Text, LabelSide Side, Tone Tone = Tone.Ink, bool Strong = false, bool Backed = false) : Mark
{
    /// <summary>How far beside its place a label begins or ends that stands at the same height, in pixels.</summary>
    public const int Beside = 8;

    /// <summary>Size of the words in pixels.</summary>
    public float Size { get; init; } = Chart.TextSize;

    /// <summary>The whole name of the level that it names; null for other words.</summary>
    public string? Level { get; init; }
}

/// <summary>Where a label stands, seen from its place.</summary>
internal enum LabelSide
{
    /// <summary>To the right, at the same height.</summary>
    Right = 0,

    /// <summary>To the left, at the same height.</summary>
    Left = 1,

    /// <summary>Above, beginning at the place.</summary>
    AboveRight = 2,

    /// <summary>Above, ending at the place.</summary>
    AboveLeft = 3,

    /// <summary>In the middle.</summary>
    Centre = 4,

    /// <summary>Below, beginning at the place.</summary>
    BelowRight = 5,

    /// <summary>Below, ending at the place.</summary>
    BelowLeft = 6,
}
