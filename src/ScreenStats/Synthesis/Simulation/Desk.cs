namespace ScreenStats.Synthesis.Simulation;

/// <summary>An operator and the kit that is open in front of them.</summary>
internal struct Desk
{
    /// <summary>Number of the operator, unique in the program.</summary>
    public int Operator;

    /// <summary>Lot of the open kit.</summary>
    public int Lot;

    /// <summary>Number of the open kit.</summary>
    public int Kit;

    /// <summary>Runs left in it.</summary>
    public int Left;
}
