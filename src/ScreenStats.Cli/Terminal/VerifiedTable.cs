using ScreenStats.Cli.Results;

namespace ScreenStats.Cli.Terminal;

/// <summary>The counts that were given, as a labelled table: a figure put in the wrong place is seen at once.</summary>
internal static class VerifiedTable
{
    public static void Write(Screen screen, VerifiedRow positives, VerifiedRow negatives) => screen.Table(
        [new(""), new("confirmatory positive", true), new("confirmatory negative", true), new("not verified", true), new("all", true)],
        [Cells("screen positive", positives), Cells("screen negative", negatives)]);

    private static string[] Cells(string name, VerifiedRow row) =>
        [name, Show.Count(row.ConfirmatoryPositive), Show.Count(row.ConfirmatoryNegative), Show.Count(row.Unverified), Show.Count(row.All)];
}
