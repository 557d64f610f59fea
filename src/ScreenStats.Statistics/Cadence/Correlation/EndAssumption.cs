namespace ScreenStats.Statistics.Cadence.Correlation;

/// <summary>What is taken of the later tests of people who were infected on the day of the first one.</summary>
public enum EndAssumption
{
    /// <summary>They are as likely positive as people who start on that later day: nobody gets over the infection in between.</summary>
    NobodyRecovers,

    /// <summary>
    /// Some are over the infection by then and stay negative. How many is taken from the table: people who start on a day (still infected) against those tested
    /// on it who started a test before, over all groups.
    /// </summary>
    SomeRecover,
}
