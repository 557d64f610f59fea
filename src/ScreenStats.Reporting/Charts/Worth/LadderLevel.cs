namespace ScreenStats.Reporting.Charts.Worth;

/// <summary>How much infection there was over some days, drawn below the rungs.</summary>
/// <param name="Name">Over which days, in words.</param>
/// <param name="Estimate">So many.</param>
/// <param name="Lower">Lower limit; the estimate where it is taken as exact.</param>
/// <param name="Upper">Upper limit, likewise.</param>
internal sealed record LadderLevel(string Name, double Estimate, double Lower, double Upper)
{
    /// <summary>Whether it has limits.</summary>
    public bool HasLimits => Upper > Lower;
}
