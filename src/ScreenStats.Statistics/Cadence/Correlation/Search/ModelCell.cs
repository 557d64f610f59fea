namespace ScreenStats.Statistics.Cadence.Correlation.Search;

/// <summary>A cell as the model reads it.</summary>
/// <param name="Cell">The cell of the table.</param>
/// <param name="Tests">For each test in a row the index of its sensitivity.</param>
/// <param name="Still">For each test the share still infected a test later.</param>
/// <param name="Positives">Positives, leavers added where they are taken as found.</param>
/// <param name="Infected">People, leavers added where they are taken as found.</param>
/// <param name="Next">How many stayed for another test, where leaving is estimated.</param>
internal sealed record ModelCell(SerialCell Cell, int[] Tests, double[] Still, double Positives, double Infected, double? Next);
