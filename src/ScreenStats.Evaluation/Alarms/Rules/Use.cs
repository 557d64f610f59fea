namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>Counted runs of a lot at a site on a day.</summary>
internal sealed record Use(string Site, string Lot)
{
    public long Runs { get; set; }

    /// <summary>Inconclusive and invalid runs.</summary>
    public long Unusable { get; set; }

    /// <summary>Negative and positive runs.</summary>
    public long Valid => Runs - Unusable;
}
