namespace ScreenStats.Reporting.Charts.Worth;

/// <summary>What an option costs for each effect, on average over all of it and in its last step, from the option before.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Average">The average with its limits; null where there is none.</param>
/// <param name="Last">That of the last step; null likewise.</param>
internal sealed record MarginRow(string Name, (double Estimate, double Lower, double Upper)? Average, (double Estimate, double Lower, double Upper)? Last);
