using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Accuracy;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Expected;
using ScreenStats.Evaluation.Flagging;
using ScreenStats.Evaluation.Kits;
using ScreenStats.Evaluation.Lots;
using ScreenStats.Evaluation.Positivity;

namespace ScreenStats.Tests.Synthesis;

/// <summary>One analysis of many tallies, where a study asks for no other: the whole evaluation would take nearly all of its time.</summary>
internal static class OneAnalysis
{
    public static AccuracyFindings Accuracy(Tally tally, ProgramSettings settings)
    {
        var sums = new PersonSums(tally);
        string[] flagged = [.. Lots(tally).Where(lot => lot.Flag != Flag.None).Select(lot => lot.Lot)];
        var positivity = PositivityAnalysis.Of(tally, Slices.Of(tally), sums, settings.Report.Confidence);
        return AccuracyAnalysis.Of(tally, settings, positivity, KitAnalysis.Of(tally, sums, settings, flagged), ExpectedAnalysis.Of(tally, sums, settings));
    }

    public static LotFindings Lots(Tally tally)
    {
        var table = new LotSiteTable(tally);
        return LotAnalysis.Of(table, Judgements.Of(table.Counts, tally.Cells.HasConfirmatory, new PersonEffects(new PersonSums(tally), table.Counts)));
    }
}
