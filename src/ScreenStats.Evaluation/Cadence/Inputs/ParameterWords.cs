using ScreenStats.Evaluation.Cadence.Draws;

namespace ScreenStats.Evaluation.Cadence.Inputs;

/// <summary>How figures are called, and in what they are measured.</summary>
internal static class ParameterWords
{
    public static (string Id, string Name, string Unit) Of(Parameter parameter) => parameter switch
    {
        Parameter.Sensitivity => ("sensitivity", "sensitivity of one screen", "share"),
        Parameter.FalsePositiveRate => ("specificity", "specificity of one screen", "share"),
        Parameter.DetectableFrom => ("detectable-from", "first day on which an infection can be detected", "days since infection"),
        Parameter.DetectableTo => ("detectable-to", "last day on which an infection can be detected", "days since infection"),
        Parameter.InfectiousFrom => ("infectious-from", "first infectious day", "days since infection"),
        Parameter.InfectiousTo => ("infectious-to", "last infectious day", "days since infection"),
        Parameter.DetectionLimit => ("detection-limit", "lowest viral load that a screen detects", "log10 of copies"),
        Parameter.SymptomShare => ("symptoms", "infected people who get symptoms", "share"),
        Parameter.SymptomOnset => ("symptom-onset", "days to symptoms", "days since infection"),
        Parameter.SymptomSpread => ("symptom-spread", "spread of the days to symptoms", "standard deviation of the logarithm"),
        Parameter.SymptomIsolation => ("symptom-isolation", "people with symptoms who stay away", "share"),
        Parameter.Delay => ("delay", "days from a positive screen to staying away", "days"),
        Parameter.ConfirmatoryDelay => ("confirmatory-delay", "days from a positive screen to the confirmatory result", "days"),
        Parameter.RepeatedMisses => ("repeated-misses", "how far the same people are missed again", "correlation"),
        Parameter.Participation => ("participation", "due screens that are taken", "share"),
        Parameter.Incidence => ("incidence", "infections per person-day", "per person-day"),
        Parameter.FollowThrough => ("follow-through", "positives that got a conclusive confirmatory result", "share"),
        Parameter.Reproduction => ("reproduction", "infections that one case causes inside without screening", "infections"),
        Parameter.BroughtIn => ("brought-in", "infections that are brought in", "share"),
        Parameter.Dispersion => ("dispersion", "dispersion of the infections that one case causes", "negative binomial k"),
        Parameter.FalseAlarmDays => ("false-alarm-days", "working days lost to one false alarm that is refuted", "days"),
        Parameter.Inconclusive => ("inconclusive", "runs that are inconclusive", "share"),
        Parameter.InconclusiveTested => ("inconclusive-tested", "inconclusive runs that get a confirmatory test", "share"),
        Parameter.InconclusiveRepeated => ("inconclusive-repeated", "inconclusive runs that are repeated on the same day", "share"),
        Parameter.ImmunityDays => ("immunity-days", "days until someone infected can be infected again", "days"),
        _ => throw new ArgumentOutOfRangeException(nameof(parameter), parameter, "Not a figure of this analysis."),
    };
}
