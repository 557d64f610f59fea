namespace ScreenStats.Evaluation.Worth.Rows;

/// <summary>Words of this analysis in tables.</summary>
internal static class WorthNames
{
    public static string Of(WorthConfirmation confirmation) => confirmation switch
    {
        WorthConfirmation.NotNeeded => "not-needed",
        WorthConfirmation.Confirmed => "confirmed",
        WorthConfirmation.Pooled => "pooled",
        WorthConfirmation.Without => "without",
        _ => throw new ArgumentOutOfRangeException(nameof(confirmation), confirmation, "Not a confirmation of this analysis."),
    };

    /// <summary>After the name of an option.</summary>
    public static string InWords(WorthConfirmation confirmation) => confirmation switch
    {
        WorthConfirmation.Confirmed => " with confirmatory tests",
        WorthConfirmation.Pooled => " with pooled confirmatory tests",
        WorthConfirmation.Without => " without a confirmatory test",
        _ => "",
    };

    public static string Of(WorthEffect effect) => effect switch
    {
        WorthEffect.InfectionsAverted => "infections-averted",
        WorthEffect.InfectiousDaysRemoved => "infectious-days-removed",
        _ => throw new ArgumentOutOfRangeException(nameof(effect), effect, "Not an effect of this analysis."),
    };

    public static string One(WorthEffect effect) => effect == WorthEffect.InfectionsAverted ? "infection averted" : "infectious day removed";

    public static string Many(WorthEffect effect) => effect == WorthEffect.InfectionsAverted ? "infections averted" : "infectious days removed";

    public static string Of(WorthStanding standing) => standing switch
    {
        WorthStanding.NotKnown => "not-known",
        WorthStanding.OnFrontier => "on-frontier",
        WorthStanding.Dominated => "dominated",
        WorthStanding.ExtendedlyDominated => "extendedly-dominated",
        WorthStanding.SameAsEarlier => "same-as-earlier",
        WorthStanding.NoOption => "no-option",
        _ => throw new ArgumentOutOfRangeException(nameof(standing), standing, "Not a standing of this analysis."),
    };

    public static string Of(WorthPays pays) => pays switch
    {
        WorthPays.NotKnown => "not-known",
        WorthPays.Above => "above",
        WorthPays.Below => "below",
        WorthPays.Always => "always",
        WorthPays.Never => "never",
        WorthPays.Between => "between",
        _ => throw new ArgumentOutOfRangeException(nameof(pays), pays, "Not a side of a break-even."),
    };
}
