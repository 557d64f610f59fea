using System.Collections.Immutable;
using ScreenStats.Evaluation.Accuracy;
using ScreenStats.Evaluation.Alarms;
using ScreenStats.Evaluation.Answers.InShort;
using ScreenStats.Evaluation.Audits;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Comparisons;
using ScreenStats.Evaluation.Conduct;
using ScreenStats.Evaluation.Controls;
using ScreenStats.Evaluation.Expected;
using ScreenStats.Evaluation.Flagging;
using ScreenStats.Evaluation.FollowThrough;
using ScreenStats.Evaluation.Lots;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.PredictiveValues;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Evaluation.Sites;
using ScreenStats.Evaluation.Trends;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Yield;

namespace ScreenStats.Evaluation.Answers;

/// <summary>The readers' questions in plain words.</summary>
internal static class AnswerAnalysis
{
    /// <summary>This many flagged lots (and as many sites) are spoken of one by one; the others are counted.</summary>
    private const int Spoken = 3;

    /// <summary>Answers the readers' questions from what the analyses found.</summary>
    public static AnswerFindings Of(
        bool hasConfirmatory, LotFindings lots, SiteFindings sites, ConductFindings conduct, ControlFindings controls, FollowUpFindings followUp, AuditFindings audits,
        AccuracyFindings accuracy, PredictiveValueFindings predictiveValue, ExpectedFindings expected, YieldFindings yield, ComparisonFindings comparison,
        TrendFindings trends, CadenceFindings cadence, WorthFindings worth, AlarmFindings alarms, DateOnly? lastDay) => new(
        [Worth(predictiveValue, followUp, trends), StandOut(lots, sites), PerCase(yield, followUp), Accurate(accuracy), SideBySide.Differ(comparison), SideBySide.Better(trends), HowOften.Of(cadence, worth), WorthIt.Of(worth, cadence)],
        NextSteps.Of(hasConfirmatory, lots, sites, conduct, controls, followUp, audits, accuracy, expected, alarms, lastDay));

    private static Answer Worth(PredictiveValueFindings findings, FollowUpFindings followUp, TrendFindings trends)
    {
        var text = ImmutableArray.CreateBuilder<Sentence>();
        var conditions = ImmutableArray.CreateBuilder<Sentence>();
        if (findings.Observed.Trials == 0)
        {
            text.Add(followUp.HasConfirmatory
                ? new Sentence("These data cannot say: no positive run was confirmed or refuted.")
                : new Sentence("These data cannot say: there is no confirmatory export, so no positive run was confirmed or refuted."));
        }
        else
        {
            text.Add(PredictiveValueSentences.Observed(findings.Observed));
            if (findings.Bounds.WithoutConclusion > 0) text.Add(PredictiveValueSentences.Bounds(findings.Bounds));
            if (!findings.FlaggedLots.IsEmpty) text.Add(PredictiveValueSentences.WithoutFlaggedLots(findings));
            text.AddRange(OfLate.Of(trends));
            conditions.Add(new Sentence(
                "It holds for the people, sites and weeks of these data, for positives with a conclusive confirmatory result, and as far as the confirmatory test is right; where infection is rarer a positive is worth less."));
        }

        conditions.Add(new Sentence("Each positive needs its own confirmatory test all the same."));
        return new Answer(
            "what-a-positive-is-worth", "What is a positive here worth?", [Reader.Manager, Reader.Analyst],
            findings.Observed.Trials == 0 ? text[0] : PositiveInShort.Of(findings), text.ToImmutable(), conditions.ToImmutable());
    }

    private static Answer Accurate(AccuracyFindings findings)
    {
        var text = ImmutableArray.CreateBuilder<Sentence>();
        var conditions = ImmutableArray.CreateBuilder<Sentence>();
        if (AccuracySentences.Proven(findings) is { } proven) text.Add(proven);
        text.AddRange(AccuracySentences.Claims(findings));
        if (AccuracySentences.Estimate(findings, "sensitivity", "sensitivity", findings.Sensitivity, mark: true) is { } sensitivity) text.Add(sensitivity);
        if (AccuracySentences.Estimate(findings, "specificity", "specificity", findings.Specificity, mark: false) is { } specificity) text.Add(specificity);
        if (AccuracySentences.Missed(findings) is { } missed) text.Add(missed);
        if (AccuracySentences.Limits(findings) is { } limits) text.Add(limits);
        if (findings.Basis == AccuracyBasis.None) text.Add(new Sentence("How many infected people it missed these data cannot say: no negative run was audited with a conclusive result."));
        if (AccuracySentences.Unweighted(findings) is { } unweighted) conditions.Add(unweighted);
        if (findings.Basis != AccuracyBasis.None) conditions.Add(new Sentence($"It holds only if {findings.Assumption}."));
        conditions.Add(new Sentence("A negative screen does not rule out infection."));
        return new Answer(
            "how-accurate-is-the-screen", "How accurate was the screen here?", [Reader.Consultant, Reader.Analyst], AccuracyInShort.Of(findings), text.ToImmutable(), conditions.ToImmutable());
    }

    private static Answer StandOut(LotFindings lots, SiteFindings sites)
    {
        var text = ImmutableArray.CreateBuilder<Sentence>();
        Add(text, "lots", "lot", [.. lots.Where(lot => lot.Flag != Flag.None)]);
        Add(text, "sites", "site", [.. sites.Where(site => site.Flag != Flag.None)]);
        var refuted = lots.Any(lot => lot.RefutedP is not null) || sites.Any(site => site.RefutedP is not null);
        var invalid = lots.Any(lot => lot.InvalidP is not null) || sites.Any(site => site.InvalidP is not null);
        if (text.Count == 0 && (refuted || invalid))
        {
            var what = (refuted, invalid) switch
            {
                (true, true) => "refuted positives, or more runs without a valid result,",
                (true, false) => "refuted positives",
                _ => "runs without a valid result",
            };
            text.Add(new Sentence($"No lot and no site had more {what} than chance readily makes."));
        }

        if (!refuted) text.Add(new Sentence("Refuted positives could not be compared: there are too few lots, sites or confirmatory results."));
        if (!invalid) text.Add(new Sentence("Runs without a valid result could not be compared: there are too few lots and sites."));

        return new Answer(
            "which-lots-and-sites-stand-out", "Which lots and sites stand out?", [Reader.Consultant, Reader.Analyst], StandOutInShort.Of(lots, sites), text.ToImmutable(),
            [
                new Sentence(
                    "A flag means that the lot or site needs looking into. It does not say that its positives were false, and it releases nobody from isolation; and one that is not flagged may be at fault all the same, where it had few runs."),
            ]);
    }

    private static void Add<TLevel>(ImmutableArray<Sentence>.Builder text, string list, string kind, ImmutableArray<TLevel> flagged)
        where TLevel : IJudgedLevel
    {
        foreach (var level in flagged.OrderBy(level => StandsOut.Smallest(level)).ThenBy(level => level.Name, StringComparer.Ordinal).Take(Spoken))
        {
            var path = FigurePath.Row(list, level.Name);
            if (level.Flag.HasFlag(Flag.Refuted)) text.Add(StandsOut.Refuted(path, kind, level));
            if (level.Flag.HasFlag(Flag.Invalid)) text.Add(StandsOut.Invalid(path, kind, level));
        }

        if (flagged.Length <= Spoken) return;
        text.Add(new Sentence($"More {kind}s than these are flagged; the table of {kind}s has them all."));
    }

    private static Answer PerCase(YieldFindings findings, FollowUpFindings followUp)
    {
        const string Id = "how-much-screening-for-each-case";
        const string Question = "How much screening was done for each case found?";
        if (findings.Runs == 0) return Unable(Id, Question, "No run was counted.");
        if (!followUp.HasConfirmatory) return Unable(Id, Question, "These data cannot say: there is no confirmatory export, so no case is confirmed.");
        return new Answer(
            Id, Question, [Reader.Manager], PerCaseInShort.Of(findings), [YieldSentences.PerCase(findings)],
            [
                new Sentence(
                    "A case is a person's first confirmed run in {0} days; people whose positive was never confirmed, and infected people who tested negative, are not among them.",
                    Figure.Count("yield.episodeDays", findings.EpisodeDays)),
                .. YieldSentences.TheseSites(findings) is { } sites ? (Sentence[])[sites] : [],
            ]);
    }

    private static Answer Unable(string id, string question, string why) => new(id, question, [Reader.Manager], new Sentence(why), [new Sentence(why)], []);
}
