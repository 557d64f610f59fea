namespace ScreenStats.Evaluation.Changes.Rows;

/// <summary>Something by which two evaluations were made differently.</summary>
/// <param name="Id">What it is: lower case, words joined by hyphens.</param>
/// <param name="Name">What it is, in words.</param>
/// <param name="EarlierText">How it was in the earlier evaluation; empty where it was not there.</param>
/// <param name="LaterText">How it is in this evaluation; empty where it is not there.</param>
public sealed record SettingRow(string Id, string Name, string EarlierText, string LaterText);
