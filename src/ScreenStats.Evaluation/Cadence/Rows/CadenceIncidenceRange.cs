namespace ScreenStats.Evaluation.Cadence.Rows;

/// <summary>Between which incidences an option is the one to choose, all other figures at their centre.</summary>
/// <param name="Key">The option, and its place where it comes twice.</param>
/// <param name="Option">The option.</param>
/// <param name="From">From so many infections per 100,000 person-days; 0 for the first.</param>
/// <param name="To">Up to so many; null for the last, where it is chosen whatever more there is.</param>
/// <param name="HasData">Whether the incidence of the answer lies there.</param>
/// <param name="HasRecent">Whether that of the last days of the data does.</param>
public sealed record CadenceIncidenceRange(string Key, string Option, double From, double? To, bool HasData, bool HasRecent);
