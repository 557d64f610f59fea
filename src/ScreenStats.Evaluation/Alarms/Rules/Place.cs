namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>What an alarm is about.</summary>
internal readonly record struct Place(string By, string Level)
{
    public static Place Lot(string lot) => new("lot", lot);

    public static Place Site(string site) => new("site", site);

    public static Place Operator(string pseudonym) => new("operator", pseudonym);

    public static Place SiteAndLot(string site, string lot) => new("site-and-lot", $"{site}, {lot}");

    /// <summary>As a sentence begins.</summary>
    public string Words => By switch
    {
        "lot" => $"Lot {Level}",
        "operator" => $"Operator {Level}",
        _ => Level,
    };
}
