using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Words;

/// <summary>That over long times nobody is infected twice, where nothing else is stated: what screening saves then shrinks by the length of the time alone.</summary>
internal static class HorizonSentences
{
    /// <summary>Half a year: up to so many days it hardly shows.</summary>
    public const int Long = 182;

    public static Sentence? Of(string path, int days, bool knowsImmunity) => days <= Long || knowsImmunity ? null : new Sentence(
        "Over {0} days it matters that nothing states after how long someone infected can be infected again: nobody is infected twice, and nobody new joins, so that longer times understate what screening saves. State cadence.immunityDays, or look at fewer days.",
        Figure.Count(path, days));
}
