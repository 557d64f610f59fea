namespace ScreenStats.Evaluation.StandOuts;

/// <summary>Verdicts as tables print them.</summary>
public static class StandOutNames
{
    /// <summary>The name of a verdict.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <returns>For instance <c>stands-out</c>.</returns>
    public static string Of(StandOutVerdict verdict) => verdict switch
    {
        StandOutVerdict.MayMissInfections => "may-miss-infections",
        StandOutVerdict.StandsOut => "stands-out",
        StandOutVerdict.StandsOutOverAll => "stands-out-over-all-only",
        StandOutVerdict.NotMaterial => "not-material",
        StandOutVerdict.DoesNotStandOut => "does-not-stand-out",
        StandOutVerdict.NotCompared => "not-compared",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Not a verdict."),
    };
}
