namespace ScreenStats.Reporting.Charts.Worth;

/// <summary>Between which numbers of infections an option gains most.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="From">From so many; 0 for the first.</param>
/// <param name="To">Up to so many; null for the last.</param>
internal sealed record LadderRung(string Name, double From, double? To);
