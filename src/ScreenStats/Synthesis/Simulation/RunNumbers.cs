namespace ScreenStats.Synthesis.Simulation;

/// <summary>Numbers the rows of the screening export in the order in which they are written.</summary>
internal sealed class RunNumbers
{
    private long last;

    public long Next() => ++last;
}
