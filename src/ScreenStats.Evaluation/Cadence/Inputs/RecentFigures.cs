using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Cadence.Inputs;

/// <summary>What the last days of the data had of all: a level of infection that changes shows there.</summary>
internal sealed class RecentFigures
{
    /// <summary>The last four weeks.</summary>
    public const int Days = 28;

    /// <summary>The last quarter.</summary>
    public const int QuarterDays = 91;

    public RecentFigures(TallyCells cells, int days = Days)
    {
        Length = days;
        if (cells.Screens.Length == 0) return;
        var (first, last) = (cells.Screens.Min(cell => cell.Day), cells.Screens.Max(cell => cell.Day));
        SpanDays = last.DayNumber - first.DayNumber + 1;
        From = last.AddDays(1 - days);
        foreach (var cell in cells.Screens)
        {
            AllScreens += cell.Runs;
            if (cell.Day < From) continue;
            Screens += cell.Runs;
            if (cell is { Outcome: Outcome.Positive, FollowUp: FollowUp.Pending }) Pending += cell.Runs;
        }

        Cases = cells.Cases.Where(cell => cell.FoundThrough == Outcome.Positive && cell.Day >= From).Sum(cell => cell.Cases);
    }

    /// <summary>How many days these are.</summary>
    public int Length { get; }

    /// <summary>Days from the first screen of the data to the last.</summary>
    public int SpanDays { get; }

    /// <summary>The first of the last days.</summary>
    public DateOnly From { get; }

    /// <summary>Cases found in the last days.</summary>
    public long Cases { get; }

    /// <summary>Screens then, and of all days.</summary>
    public long Screens { get; }

    public long AllScreens { get; }

    /// <summary>Positive runs then of which no confirmatory result is to be expected yet.</summary>
    public long Pending { get; }

    /// <summary>Whether there are as many days before to compare with, and screens in both.</summary>
    public bool CanCompare => SpanDays >= 2 * Length && IsPart;

    /// <summary>Whether there are screens in them and before.</summary>
    public bool IsPart => Screens > 0 && AllScreens > Screens;
}
