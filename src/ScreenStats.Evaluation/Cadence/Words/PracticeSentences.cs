using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Words;

/// <summary>What was really done, against the plan.</summary>
internal static class PracticeSentences
{
    public static IEnumerable<Sentence> Of(CadenceFindings findings)
    {
        CadenceAdherence Row(string measure) => findings.Adherence.First(row => row.Measure == measure);
        var gaps = Row("days-between-screens");
        if (gaps.Observed.Estimate is null)
        {
            yield return new Sentence($"What was really done cannot be compared with a plan: {gaps.Observed.EstimateUndefined}.");
            yield break;
        }

        var (between, screens) = (Path("days-between-screens"), Path("screens"));
        if (gaps.Planned.Estimate is null)
        {
            yield return new Sentence("From one screen of a person to the next {0} days passed on average.", Number(between + ".observed", gaps.Observed, Unit.Days));
        }
        else
        {
            yield return new Sentence(
                "From one screen of a person to the next {0} days passed on average, where {1} were planned: {2} of the screens due were done.",
                Number(between + ".observed", gaps.Observed, Unit.Days), Number(between + ".planned", gaps.Planned, Unit.Days), Number(screens + ".share", Row("screens").Share, Unit.Proportion));
        }

        var (detection, removed) = (Row("detection"), Row("share-removed"));
        if (detection is { Planned.Estimate: not null, Observed.Estimate: not null })
        {
            yield return removed is { Planned.Estimate: not null, Observed.Estimate: not null }
                ? new Sentence(
                    "With those gaps screening finds {0} of infections and removes {1} of the infectious days outside isolation; as planned it would find {2} and remove {3}.",
                    Number(Path("detection") + ".observed", detection.Observed, Unit.Proportion), Number(Path("share-removed") + ".observed", removed.Observed, Unit.Proportion),
                    Number(Path("detection") + ".planned", detection.Planned, Unit.Proportion), Number(Path("share-removed") + ".planned", removed.Planned, Unit.Proportion))
                : new Sentence(
                    "With those gaps screening finds {0} of infections; as planned it would find {1}.",
                    Number(Path("detection") + ".observed", detection.Observed, Unit.Proportion), Number(Path("detection") + ".planned", detection.Planned, Unit.Proportion));
        }

        if (Row("followed-up-positives") is { Planned.Estimate: { } due, Observed.Estimate: { } settled } followed && due > settled)
        {
            yield return new Sentence(
                "Of {0} positive runs {1} got no conclusive confirmatory result.",
                Number(Path("followed-up-positives") + ".planned", followed.Planned, Unit.Count), Figure.Count("cadence.notFollowedUp", findings.NotFollowedUp));
        }
    }

    private static string Path(string measure) => FigurePath.Row("cadence.adherence", measure);

    private static FigureReference Number(string path, EstimateFinding figure, Unit unit) => Figure.Number(path + ".estimate", figure.Estimate, unit, figure.EstimateUndefined);
}
