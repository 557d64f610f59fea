namespace ScreenStats.Evaluation.Participation;

/// <summary>One line of the distribution of runs per person, or of days between a person's runs.</summary>
/// <param name="Key">Measure and value joined by a colon.</param>
/// <param name="Measure"><c>runs-per-person</c> or <c>days-between-runs</c>.</param>
/// <param name="Value">Runs, or whole days.</param>
/// <param name="Count">People with so many runs, or pairs of consecutive runs so many days apart.</param>
/// <param name="Share">Its share of all people, or of all pairs.</param>
public sealed record ParticipationRow(string Key, string Measure, int Value, long Count, double Share);
