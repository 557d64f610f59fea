namespace ScreenStats.Evaluation.Comparisons.Strata;

/// <summary>One combination of what is adjusted for: its numbers in the lists of names, and the program's counts in it.</summary>
internal sealed class Stratum(int period, int first, int second)
{
    public int Period { get; } = period;

    public int First { get; } = first;

    public int Second { get; } = second;

    public long Trials { get; set; }

    public long Events { get; set; }

    /// <summary>The program's rate in it.</summary>
    public double Rate => (double)Events / Trials;
}
