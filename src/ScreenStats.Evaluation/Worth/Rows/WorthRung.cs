namespace ScreenStats.Evaluation.Worth.Rows;

/// <summary>Between which numbers of infections an option gains most, all other figures at their centre.</summary>
/// <param name="Key">The option, and its place where it comes twice.</param>
/// <param name="Option">The way of screening; <see cref="None"/> for no screening.</param>
/// <param name="Confirmation">What is worth most after a positive there; pooled where pools save tests in all of it.</param>
/// <param name="From">From so many infections in 1,000 people in a week; 0 for the first.</param>
/// <param name="To">Up to so many; null for the last, which gains most whatever more was looked at.</param>
/// <param name="IsNone">Whether nobody is screened.</param>
/// <param name="IsPresent">Whether the incidence of the verdict lies there.</param>
public sealed record WorthRung(string Key, string Option, WorthConfirmation Confirmation, double From, double? To, bool IsNone, bool IsPresent)
{
    /// <summary>What no screening is called, also where it is not among the options.</summary>
    public const string None = "none";
}
