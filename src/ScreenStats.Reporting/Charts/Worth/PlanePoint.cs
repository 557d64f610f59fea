namespace ScreenStats.Reporting.Charts.Worth;

/// <summary>An option by what it gains and what it costs, both against no screening.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Effect">What it gains.</param>
/// <param name="EffectLower">Lower limit of it.</param>
/// <param name="EffectUpper">Upper limit of it.</param>
/// <param name="Cost">What it costs; below 0 where it saves money.</param>
/// <param name="CostLower">Lower limit of it.</param>
/// <param name="CostUpper">Upper limit of it.</param>
/// <param name="Standing">What is said of it.</param>
/// <param name="Remark">The same in words, after its name; empty for nothing.</param>
internal sealed record PlanePoint(
    string Name, double Effect, double EffectLower, double EffectUpper, double Cost, double CostLower, double CostUpper, PlaneStanding Standing = PlaneStanding.None, string Remark = "")
{
    /// <summary>Whether nothing does better for some value of an effect.</summary>
    public bool OnFrontier => Standing.HasFlag(PlaneStanding.OnFrontier);

    /// <summary>Whether it is neither judged nor best.</summary>
    public bool IsPlain => (Standing & (PlaneStanding.Judged | PlaneStanding.Best)) == 0;

    /// <summary>Its name with what is said of it.</summary>
    public string Words => Remark.Length == 0 ? Name : $"{Name}, {Remark}";
}
