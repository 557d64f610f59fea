using ScreenStats.Counting.Cubes;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>One run as it will be written, and what is wrong with the row.</summary>
internal struct ScreeningRow
{
    public long Identifier;
    public uint Person;
    public int Site;
    public int Minute;
    public int ReadMinute;
    public Outcome Outcome;
    public int Lot;
    public int Kit;
    public int Operator;
    public bool SelfCollected;
    public bool Symptomatic;
    public bool Exposed;
    public bool Outbreak;
    public ControlExpectation? Control;
    public bool Detectable;
    public RowFaults Faults;
}
