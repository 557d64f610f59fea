using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Conduct;

internal static class ConductSentences
{
    public static ImmutableArray<Sentence> Of(ConductFindings found) =>
    [
        Say("conduct.expiredLot", found.ExpiredLot, "were done with an expired lot", "done with an expired lot"),
        Say("conduct.readOutsideWindow", found.ReadOutsideWindow, "were read before or after the device's reading window", "read outside the device's reading window"),
        Say("conduct.beyondKitContents", found.BeyondKitContents, "were more than their kit holds", "more than their kit holds"),
        Say("conduct.withinIsolation", found.WithinIsolation, "were on people within the isolation period after a confirmatory positive", "on people within the isolation period"),
    ];

    private static Sentence Say(string path, ConductRow row, string told, string untold) => row.Found is { } found
        ? new Sentence($"{{0}} of {{1}} counted runs {told}.", Figure.Count(path + ".found", found), Figure.Count(path + ".runs", row.Runs))
        : new Sentence($"Whether runs were {untold} cannot be told: {row.FoundUndefined}.");
}
