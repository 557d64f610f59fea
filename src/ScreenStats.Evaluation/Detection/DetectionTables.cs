using System.Collections.Immutable;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Detection;

internal static class DetectionTables
{
    public static Table<DetectionRow> Table(ImmutableArray<DetectionRow> rows) => new(
        "detection",
        "What the flag rule would see",
        "The chance that a lot is flagged in a program like this one, by its size and by how many times the others' rate its rate is. At 1 it is the chance of a false flag. Runs are taken as independent, the fault as the same in all runs of the lot, and all other lots as good. The second, widened chance that a flag needs too makes the true ones a little lower where sites or people differ.",
        [
            new("measure", "Measure", Unit.Text, "What the lot is flagged for: refuted positives, or inconclusive and invalid runs.", row => Cell.Text(row.Measure)),
            new("size", "Size of the lot", Unit.Text, "The percentile of this program's lots by their size, or a tenth of all runs.", row => Cell.Text(row.Size)),
            new("trials", "Its tests", Unit.Count, "Valid tests of the lot; for invalid runs its runs.", row => Cell.Count(row.Trials)),
            new("other_trials", "Others' tests", Unit.Count, "Those of all other lots.", row => Cell.Count(row.OtherTrials)),
            new("lots", "Lots compared", Unit.Count, "How many lots are compared, and adjusted for.", row => Cell.Count(row.Lots)),
            new("rate", "Others' rate", Unit.Proportion, "The rate of this program's lots that are not flagged.", row => Cell.Number(row.Rate)) { Method = MethodNames.Share },
            new("times", "Times that rate", Unit.Ratio, "The lot's rate as a multiple of it.", row => Cell.Number(row.Times)) { Method = MethodNames.Grid },
            new("chance", "Chance of a flag", Unit.Proportion, "The chance that the lot is flagged.", row => Cell.NumberOr(row.Chance, row.ChanceUndefined ?? "")) { Method = MethodNames.FlagCurve },
        ],
        rows);
}
