using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Words;

/// <summary>What stands behind figures of the answer and cannot be seen in them: spread without screening, few audits, lots left out.</summary>
internal static class CauseSentences
{
    /// <summary>From this share of draws on, spread that grows by itself is told.</summary>
    private const double Told = 0.01;

    /// <summary>Infection that would grow by itself.</summary>
    public static IEnumerable<Sentence> Growth(CadenceFindings findings)
    {
        if (findings.Growth is not { } growth || growth.ShareGrowing <= Told) yield break;
        var of = CadenceFigures.Of("cadence.growth.reproduction", growth.Reproduction, Unit.Ratio);
        yield return new Sentence(
            "Without screening one case would cause {0} infections inside ({1} interval {2} to {3})"
            + (growth.AllInside ? ", if all infections spread inside" : ", by the share brought in and what screening removes now")
            + ", if the level of infection in the data held itself; in {4} of the draws it is 1 or more, so that infection would grow by itself: the upper limits come from there.",
            of[0], new CadenceFigures(findings).Confidence, of[1], of[2], Figure.Number("cadence.growth.shareGrowing", growth.ShareGrowing, Unit.Proportion));
    }

    /// <summary>A sensitivity that rests on few missed infections.</summary>
    public static IEnumerable<Sentence> Audits(CadenceFindings findings)
    {
        if (findings.Audits is not { } audits || audits.Missed >= ProportionFinding.FewBelow) yield break;
        yield return new Sentence(
            "The sensitivity rests on few counts: of {0} audited negative runs {1} " + Figure.Plural(audits.Missed, "was a missed infection", "were missed infections") + ".",
            Figure.Count("cadence.audits.audited", audits.Audited), Figure.Count("cadence.audits.missed", audits.Missed));
    }

    /// <summary>False alarms that are left out of the burden.</summary>
    public static IEnumerable<Sentence> FalseAlarms(CadenceFindings findings)
    {
        if (findings.FalseAlarmsFound is not { } found) yield break;
        yield return new Sentence(
            "False alarms of flagged lots are not counted in that, as a fault to mend: in the data {0} positives were refuted in {1} days, {2} of them of flagged lots.",
            Figure.Count("cadence.falseAlarmsFound.refuted", found.Refuted), Figure.Count("cadence.falseAlarmsFound.days", found.Days), Figure.Count("cadence.falseAlarmsFound.ofFlaggedLots", found.OfFlaggedLots));
    }
}
