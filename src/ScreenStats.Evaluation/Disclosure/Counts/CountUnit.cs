namespace ScreenStats.Evaluation.Disclosure.Counts;

/// <summary>A part of the program: by what it is broken down, the level, and the first day of the period (empty for the whole span).</summary>
internal readonly record struct CountUnit(string By, string Level, string Period)
{
    /// <summary>The whole program over the whole span.</summary>
    public static CountUnit Program { get; } = new("program", "", "");

    /// <summary>The breakdown that the unit is a level of; empty for the whole program.</summary>
    public string Breakdown => By == "overlap" ? By : Period.Length > 0 ? By + ":period" : By == "program" ? "" : By;

    public override string ToString() => $"{By}|{Level}|{Period}";
}
