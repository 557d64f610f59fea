using System.Globalization;
using ScreenStats.Evaluation.Answers;
using ScreenStats.Evaluation.Changes.Differences;
using ScreenStats.Evaluation.Changes.Rows;
using ScreenStats.Evaluation.Changes.Snapshots;

namespace ScreenStats.Evaluation.Changes;

/// <summary>Adds to findings what has changed since an earlier evaluation of the same program.</summary>
public static class EvaluationChanges
{
    /// <summary>The findings with what has changed since an earlier evaluation, and an answer that says so in short.</summary>
    /// <param name="findings">The later findings, before small counts are hidden.</param>
    /// <param name="earlier">The earlier evaluation.</param>
    /// <returns>The findings with <see cref="Findings.Changes"/>.</returns>
    /// <exception cref="NotComparableException">The two cannot be compared; the message says why and what to do.</exception>
    /// <exception cref="InvalidOperationException">Small counts of the findings are hidden already.</exception>
    public static Findings Since(this Findings findings, EvaluationSnapshot earlier)
    {
        ArgumentNullException.ThrowIfNull(findings);
        ArgumentNullException.ThrowIfNull(earlier);
        if (findings.Disclosure is not null) throw new InvalidOperationException("What has changed is found before small counts are hidden.");
        var later = FindingsSnapshot.Of(findings);
        Check(earlier, later);
        var changes = ChangeAnalysis.Of(earlier, later, findings.Settings.Report.Confidence);
        if (later.SuppressBelow == 0 && Same(changes)) throw new NotComparableException("The earlier evaluation is of the same data, made the same way: nothing has changed. Name one that was made before.");
        return findings with { Changes = changes, Answers = findings.Answers with { Questions = [.. findings.Answers.Questions, ChangeAnswer.Of(changes)] } };
    }

    private static bool Same(ChangeFindings changes) =>
        changes is { Relation: SpanRelation.SameDays, Settings.IsEmpty: true, Answers.IsEmpty: true }
        && changes.Flags.All(row => row.Change == FlagChange.StillFlagged && row.EarlierFlag == row.LaterFlag)
        && changes.Figures.All(row => row.EarlierEvents == row.LaterEvents && row.EarlierTrials == row.LaterTrials && row.EarlierEstimate == row.LaterEstimate);

    private static void Check(EvaluationSnapshot earlier, EvaluationSnapshot later)
    {
        if (earlier.LastDay is not { } before) throw new NotComparableException("The earlier evaluation counted no run, so there is nothing to compare with; name another.");
        if (later.LastDay is not { } last) throw new NotComparableException("No run was counted, so there is nothing to compare; look at what inspect says of the exports.");
        if (before > last)
        {
            throw new NotComparableException(string.Create(
                CultureInfo.InvariantCulture, $"The evaluation named as the earlier one goes up to {before:yyyy-MM-dd} and these data only to {last:yyyy-MM-dd}; name one that ends before, or evaluate the later data."));
        }

        if (!earlier.Sites.Intersect(later.Sites, StringComparer.Ordinal).Any())
            throw new NotComparableException("The earlier evaluation has no site of this program, so it is of another one; name an evaluation of this program.");
        if (later.SuppressBelow == 0) return;
        if (earlier.SuppressBelow == 0)
        {
            throw new NotComparableException(
                "The earlier evaluation shows small counts and this report hides them: what has changed would give them away. Evaluate the earlier data with the same --suppress-below, and name that report.");
        }

        if (earlier.SuppressBelow < later.SuppressBelow)
        {
            throw new NotComparableException(string.Create(
                CultureInfo.InvariantCulture, $"The earlier evaluation hides counts below {earlier.SuppressBelow} and this report those below {later.SuppressBelow}: what has changed would give some of them away. Name an earlier report that hides as much, or hide as little here."));
        }
    }
}
