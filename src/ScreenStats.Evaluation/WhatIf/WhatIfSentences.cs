using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.WhatIf;

/// <summary>What would be, in words.</summary>
internal static class WhatIfSentences
{
    public static ImmutableArray<Sentence> Of(WhatIfPositiveFindings findings)
    {
        const string Path = "whatIf.positive.atStart";
        var at = findings.AtStart;
        return
        [
            new Sentence(
                "Of {0} people screened once, at a prevalence of {1}, a sensitivity of {2} and a specificity of {3}, {4} would be positive and infected, {5} positive and not infected, and {6} infected would be missed: {7} of positives would be right, and {8} of negatives.",
                Figure.Count("whatIf.positive.people", findings.People),
                Say.Share(Path + ".prevalence", at.Prevalence),
                Say.Share(Path + ".sensitivity", at.Sensitivity),
                Say.Share(Path + ".specificity", at.Specificity),
                Say.Ratio(Path + ".truePositives", at.TruePositives),
                Say.Ratio(Path + ".falsePositives", at.FalsePositives),
                Say.Ratio(Path + ".missed", at.Missed),
                Say.Share(Path + ".positivePredictiveValue", at.PositivePredictiveValue),
                Say.Share(Path + ".negativePredictiveValue", at.NegativePredictiveValue)),
            new Sentence("These are expected numbers at exactly these values: no uncertainty is in them."),
        ];
    }

    public static ImmutableArray<Sentence> Of(WhatIfIntervalFindings findings)
    {
        const string Path = "whatIf.interval";
        if (findings.AtStart is not { } at) return [new Sentence($"What other intervals between screens would give is not known: {findings.ParticipationUndefined}.")];
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        var figures = ImmutableArray.CreateBuilder<FigureReference>();
        string Add(FigureReference figure)
        {
            figures.Add(figure);
            return FormattableString.Invariant($"{{{figures.Count - 1}}}");
        }

        var text = $"With days between screens at {Add(Say.Days(Path + ".atStart.daysBetweenScreens", at.DaysBetweenScreens))}";
        if (at.Sensitivity is { } sensitivity) text += $" and sensitivity at {Add(Say.Share(Path + ".atStart.sensitivity", sensitivity))}";
        text += $", {Add(Say.Share(Path + ".atStart.detection", at.Detection))} of infections would be found";
        if (at.Removed is { } removed)
        {
            text += $", {Add(Say.Share(Path + ".atStart.removed", removed))} of the infectious time would be taken away";
            if (findings.RemovedBySymptoms is > 0 and var symptoms) text += $" ({Add(Say.Share(Path + ".removedBySymptoms", symptoms))} by symptoms alone)";
            text += $", and {Add(Say.Share(Path + ".atStart.caught", at.Caught))} of those infected would be away before they pass anything on";
        }

        sentences.Add(new Sentence(text + ".", figures.DrainToImmutable()));
        text = $"In {Add(Figure.Count(Path + ".days", findings.Days))} days a person would take {Add(Say.Ratio(Path + ".atStart.screens", at.Screens))} screens, and {Add(Figure.Count(Path + ".people", findings.People))} people would have {Add(Say.Ratio(Path + ".atStart.falseAlarms", at.FalseAlarms))} false alarms at a specificity of {Add(Say.Share(Path + ".atStart.specificity", at.Specificity))}";
        sentences.Add(new Sentence(text + ".", figures.DrainToImmutable()));
        sentences.Add(new Sentence(
            "These are figures at exactly these values, with {0} of the screens due taken and every other assumption of how often to screen at its central value: no uncertainty is in them.",
            Say.Share(Path + ".participation", findings.Participation)));
        return sentences.ToImmutable();
    }
}
