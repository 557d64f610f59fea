namespace ScreenStats.Reporting.Charts.Model;

/// <summary>How positions on an axis are laid out.</summary>
internal enum AxisScale
{
    /// <summary>Evenly.</summary>
    Linear = 0,

    /// <summary>By powers of ten; positions are in natural units and above 0.</summary>
    Logarithmic = 1,
}
