using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Alarms;
using ScreenStats.Evaluation.Changes;
using ScreenStats.Evaluation.Changes.Snapshots;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Reporting;

namespace ScreenStats;

/// <summary>From counts to answers, written as a step of the road.</summary>
public static class TallyEvaluation
{
    /// <summary>Evaluates a tally.</summary>
    /// <param name="tally">What was counted.</param>
    /// <param name="settings">What the program file says.</param>
    /// <param name="progress">Told what is evaluated, as it begins; null for nobody.</param>
    /// <returns>The findings, as <see cref="Evaluator.Evaluate"/> gives them.</returns>
    public static Findings Evaluate(this Tally tally, ProgramSettings settings, IProgress<string>? progress = null) => Evaluator.Evaluate(tally, settings, progress);

    /// <summary>The alarms of a program at the end of a day, from what was collected and reported by then.</summary>
    /// <param name="tally">What was counted.</param>
    /// <param name="settings">What the program file says.</param>
    /// <param name="day">The day; null for the one up to which the data are complete.</param>
    /// <returns>The alarms, as <see cref="AlarmReplay"/> gives them.</returns>
    /// <exception cref="UnusableDataException">Nothing was counted and no day is given.</exception>
    public static AlarmsOfDay AlarmsAt(this Tally tally, ProgramSettings settings, DateOnly? day = null) =>
        AlarmReplay.At(tally, settings, day) ?? throw new UnusableDataException(new Diagnostic(
            ReadingDiagnostics.NothingUsable, Severity.Error, "", null, "", "No run was counted, so there is no day to look at. Look at what inspect says of the exports."));

    /// <summary>Evaluates a tally and hides small counts as the program file's <c>suppressBelow</c> says.</summary>
    /// <param name="tally">What was counted.</param>
    /// <param name="settings">What the program file says.</param>
    /// <param name="earlierRelease">Folder of an earlier report of the same program, so that the difference between the two gives no small count away; null for none.</param>
    /// <param name="progress">Told what is evaluated, as it begins; null for nobody.</param>
    /// <param name="since">An earlier evaluation (<see cref="Report.ReadEvaluation"/>), to say what has changed since; null for none. Where small counts are hidden its report must be the earlier release.</param>
    /// <returns>The findings, as <see cref="DisclosureControl.Apply"/> gives them.</returns>
    /// <exception cref="NotOurFolderException">The folder holds no report of ours.</exception>
    /// <exception cref="NotComparableException">The earlier evaluation cannot be compared with this one.</exception>
    public static Findings EvaluateForRelease(this Tally tally, ProgramSettings settings, string? earlierRelease = null, IProgress<string>? progress = null, EvaluationSnapshot? since = null)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var hides = settings.Report.SuppressBelow > 1;
        if (since is not null && hides && earlierRelease is null)
            throw new NotComparableException("Small counts are hidden, so the report of the earlier evaluation must be taken into account as an earlier release; give its folder.");
        // What is compared is what readers have: the file of the report that is taken into account, whatever else was given.
        if (since is not null && hides) since = Report.ReadEvaluation(earlierRelease!);
        var findings = Evaluator.Evaluate(tally, settings, progress);
        if (since is not null) findings = findings.Since(since);
        if (hides) progress?.Report("small counts");
        return DisclosureControl.Apply(findings, earlierRelease is null ? null : Report.ReadRelease(earlierRelease));
    }
}
