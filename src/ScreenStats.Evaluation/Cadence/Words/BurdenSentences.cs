using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Words;

/// <summary>What the option spoken of costs.</summary>
internal static class BurdenSentences
{
    public static IEnumerable<Sentence> Of(CadenceFindings findings, CadenceOptionFinding leading)
    {
        var figures = new CadenceFigures(findings);
        // Of no screening there is no burden: that of what was done, then.
        var option = !leading.IsNone ? leading : findings.Options.FirstOrDefault(one => one.IsPlanned && !one.IsNone) ?? findings.Options.FirstOrDefault(one => one.IsAsDone);
        if (option is null) yield break;
        var screens = figures.Of(option, CadenceMeasure.Screens)[0];
        if (!figures.Knows(option, CadenceMeasure.FalseAlarms))
        {
            yield return new Sentence(
                "\"{0}\" takes {1} screens in {2} " + figures.DaysWord + ". How many false alarms come with them is not known: " + findings.Outcome(option.Option, CadenceMeasure.FalseAlarms)!.Figure.EstimateUndefined + ".",
                CadenceFigures.Name(option), screens, figures.Days);
            yield break;
        }

        var alarms = figures.Of(option, CadenceMeasure.FalseAlarms);
        var any = figures.Of(option, CadenceMeasure.AnyFalseAlarm);
        yield return new Sentence(
            "\"{0}\" takes {1} screens in {2} " + figures.DaysWord + " and brings {3} false alarms ({4} interval {5} to {6}); a person has one or more with a chance of {7}.",
            CadenceFigures.Name(option), screens, figures.Days, alarms[0], figures.Confidence, alarms[1], alarms[2], any[0]);
        if (figures.Knows(option, CadenceMeasure.DaysLost))
        {
            var lost = figures.Of(option, CadenceMeasure.DaysLost);
            yield return new Sentence("They cost {0} working days ({1} to {2}).", lost[0], lost[1], lost[2]);
        }

        if (figures.Knows(option, CadenceMeasure.PredictiveValue))
        {
            var value = figures.Of(option, CadenceMeasure.PredictiveValue);
            yield return new Sentence("Of its positives {0} are infected ({1} to {2}): each needs its confirmatory test.", value[0], value[1], value[2]);
        }
    }
}
