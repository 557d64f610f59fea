namespace ScreenStats.Reporting.Charts.Cadence;

/// <summary>A way of screening, by what it asks and what it gives.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Burden">Screens, 0 or more.</param>
/// <param name="Gain">The share that it takes away.</param>
/// <param name="Lower">Lower limit.</param>
/// <param name="Upper">Upper limit.</param>
/// <param name="Standing">What is said of it.</param>
internal sealed record OptionPoint(string Name, double Burden, double Gain, double Lower, double Upper, OptionStanding Standing = OptionStanding.None)
{
    /// <summary>Its name with what is said of it.</summary>
    /// <param name="name">The name as it may stand in a picture.</param>
    public string Words(string name) => Standing switch
    {
        OptionStanding.Planned => name + ", planned",
        OptionStanding.Chosen => name + ", chosen",
        OptionStanding.Planned | OptionStanding.Chosen => name + ", planned and chosen",
        OptionStanding.Done => "as done",
        _ => name,
    };
}
