using ScreenStats.Counting.Cubes;

namespace ScreenStats.Counting.Programs;

/// <summary>How findings are reported.</summary>
public sealed record ReportSettings
{
    /// <summary>Confidence level of intervals, in (0, 1). Default 0.95.</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>Length of a reporting period. Default one week.</summary>
    public ReportPeriod Period { get; init; } = ReportPeriod.Week;

    /// <summary>Counts below this are hidden in tables; 0 hides none.</summary>
    public int SuppressBelow { get; init; }

    /// <summary>How limits of control charts of shares are made. Default exact.</summary>
    public ControlLimits ControlLimits { get; init; }

    /// <summary>By what runs are compared side by side. Default by site.</summary>
    public CompareBy CompareBy { get; init; }
}
