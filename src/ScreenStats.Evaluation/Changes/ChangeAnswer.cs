using System.Collections.Immutable;
using ScreenStats.Evaluation.Answers;
using ScreenStats.Evaluation.Changes.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Changes;

/// <summary>What has changed, among the answers; only where an earlier evaluation was named.</summary>
internal static class ChangeAnswer
{
    public const string Id = "what-has-changed";

    public static Answer Of(ChangeFindings findings)
    {
        var question = "What has changed since " + findings.EarlierLastDay.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) + "?";
        // What a positive is worth leads, then positivity: the first of which a difference with limits can be told, else the first.
        var leading = findings.Figures.Where(row => row is { By: Grouping.Program, Measure: ChangeMeasure.PositivePredictiveValue or ChangeMeasure.Positivity, Estimate: not null }).ToList();
        var first = leading.Find(row => row.Lower is not null) ?? leading.FirstOrDefault();
        ImmutableArray<Sentence> whole = first is null ? [ChangeSentences.Flags(findings)] : [ChangeSentences.Of(findings, first), ChangeSentences.Flags(findings)];
        var moved = findings.Hides ? [] : findings.Figures.Where(row => row.By == Grouping.Program && row != first && row.LeavesOutZero == true).Select(row => ChangeSentences.Of(findings, row));
        return new Answer(
            Id, question, [Reader.Manager, Reader.Analyst, Reader.Consultant], ChangeSentences.InOne(findings, first), [.. whole, .. moved],
            [
                new Sentence("It holds for who was tested, how and when: a difference does not say why. A flag that is closed is no proof that a lot or site is sound, and it releases nobody from isolation."),
            ]);
    }
}
