namespace ScreenStats.Synthesis.Planning;

/// <summary>On which working days a site screens its people.</summary>
public enum SynthesisSchedule
{
    /// <summary>Every day from Monday to Friday.</summary>
    Daily = 0,

    /// <summary>Mondays and Thursdays.</summary>
    MondayAndThursday = 1,

    /// <summary>One fixed working day for each person.</summary>
    Weekly = 2,
}
