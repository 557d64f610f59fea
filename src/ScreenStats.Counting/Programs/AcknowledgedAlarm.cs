namespace ScreenStats.Counting.Programs;

/// <summary>An alarm that is known and dealt with: it is still shown, and makes no nightly job fail.</summary>
/// <param name="Rule">Name of the rule, as the alarm prints it.</param>
/// <param name="Level">Name of the lot, site, kit or operator.</param>
/// <param name="Until">Last day on which it is taken as dealt with; null: without end.</param>
public sealed record AcknowledgedAlarm(string Rule, string Level, DateOnly? Until);
