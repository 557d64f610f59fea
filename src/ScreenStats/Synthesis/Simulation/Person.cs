namespace ScreenStats.Synthesis.Simulation;

/// <summary>What is true of one person. Days count from the first day of the program.</summary>
internal struct Person
{
    /// <summary>Pseudonym, 24 bits.</summary>
    public uint Code;

    /// <summary>Day of infection, or -1.</summary>
    public int Infected;

    /// <summary>Day on which symptoms show, or -1.</summary>
    public int SymptomsOn;

    /// <summary>First day on which the person may be at work again.</summary>
    public int AwayUntil;

    /// <summary>Usual minute of the day.</summary>
    public short UsualMinute;

    /// <summary>Working day of a weekly screen, 0 to 4.</summary>
    public byte Weekday;

    /// <summary>True in a week away for other reasons.</summary>
    public bool AbsentThisWeek;

    /// <summary>True after the first run.</summary>
    public bool Seen;
}
