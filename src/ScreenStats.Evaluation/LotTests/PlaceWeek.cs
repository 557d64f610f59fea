namespace ScreenStats.Evaluation.LotTests;

/// <summary>Counts of one lot at one site in one ISO week.</summary>
internal sealed class PlaceWeek(string lot, string site, DateOnly week)
{
    public string Lot { get; } = lot;

    public string Site { get; } = site;

    public DateOnly Week { get; } = week;

    public long Runs { get; set; }

    public long Unusable { get; set; }

    public long Tests { get; set; }

    /// <summary>Positive runs whose follow-up is not pending.</summary>
    public long Settled { get; set; }

    /// <summary>Positive runs that were confirmed or refuted.</summary>
    public long Conclusive { get; set; }

    public long Refuted { get; set; }

    public long Cases { get; set; }
}
