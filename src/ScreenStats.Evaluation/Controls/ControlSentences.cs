using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Controls;

internal static class ControlSentences
{
    public static ImmutableArray<Sentence> Of(ControlFindings found)
    {
        if (found.Runs == 0) return [new Sentence("No run of a control swab is recorded, so it cannot be said whether devices show what they should.")];
        return
        [
            new Sentence(
                "{0} of {1} positive control swabs showed positive, and {2} of {3} negative ones negative.",
                Figure.Count("controls.positive.asExpected.events", found.Positive.AsExpected.Events), Figure.Count("controls.positive.runs", found.Positive.Runs),
                Figure.Count("controls.negative.asExpected.events", found.Negative.AsExpected.Events), Figure.Count("controls.negative.runs", found.Negative.Runs)),
            new Sentence("A control swab carries a known amount: it shows whether device and handling work, not how well the device finds infections."),
        ];
    }
}
