using System.Collections.Immutable;
using ScreenStats.Evaluation.Answers;
using ScreenStats.Evaluation.Cautions;
using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Tables;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Disclosure;

/// <summary>The stage between evaluation and report that hides small counts: findings in, findings with hidden cells out.</summary>
public static class DisclosureControl
{
    private static readonly Sentence TooSmall = new("The counts behind this answer are too small to be shown.");

    /// <summary>Hides counts from 1 to one less than the program's <c>suppressBelow</c>, and whatever would give one away.</summary>
    /// <param name="findings">Findings as evaluated.</param>
    /// <param name="earlier">An earlier release of the same program; null for none.</param>
    /// <returns>
    /// The findings with what may be seen of them (<see cref="Findings.Disclosure"/>): tables, sentences, answers and cautions are
    /// the visible ones. The typed figures themselves are those that were evaluated, and not for circulation. Unchanged where nothing is to be hidden.
    /// </returns>
    /// <exception cref="InvalidOperationException">The audit found a hidden count that can be worked out: a defect of the hiding, so nothing is released.</exception>
    public static Findings Apply(Findings findings, EarlierRelease? earlier = null)
    {
        ArgumentNullException.ThrowIfNull(findings);
        var threshold = findings.Settings.Report.SuppressBelow;
        if (threshold <= 1 || findings.Disclosure is not null) return findings;

        var release = ReleasedCounts.Of(id => findings.AllTables.Where(table => table.Id == id)
            .SelectMany(table => Enumerable.Range(0, table.RowCount).Select(row => Row.Of(table, row))));
        var tally = findings.Source;
        var model = ReleaseModel.Of(release, tally is null ? [] : LevelOverlaps.Of(tally), earlier?.Counts(), threshold);
        var plan = SuppressionPlanner.Protect(model, threshold);
        Audit(model, plan, threshold);

        var cells = new HiddenCells(model, release.Ambiguous);
        var disclosure = new ReleaseDisclosure(findings, cells, threshold, model, plan, tally is null || cells.Hides(CountUnit.Program, "runs") ? null : ReidentificationRisk.Of(tally), earlier is not null);
        return findings with { Answers = Veil(findings.Answers, disclosure), Cautions = Veil(findings.Cautions, disclosure), Disclosure = disclosure };
    }

    // Two proofs that do not share their way: the witness of each count is checked against every relation, and its range is solved for.
    private static void Audit(CountModel model, SuppressionPlan plan, long threshold)
    {
        if (plan.HidesAll) return;
        var audit = new RangeAudit(model);
        foreach (var variable in model.Variables.Where(variable => variable.Need > variable.Value && !variable.Known && !plan.Unprotected.Contains(variable)))
        {
            if (!plan.Witnesses.TryGetValue(variable, out var witness) || !audit.Holds(witness) || variable.Value + witness[variable] < variable.Need - 1e-6) throw Leak();
            if (audit.Range(variable) is { } range && (range.Lower > variable.Value || (range.Upper ?? long.MaxValue) < Math.Max(variable.Need, threshold))) throw Leak();
        }
    }

    private static InvalidOperationException Leak() => new("A hidden count could be worked out from what is shown, so nothing is released; please report this as a defect.");

    private static AnswerFindings Veil(AnswerFindings answers, ReleaseDisclosure disclosure)
    {
        var without = !disclosure.HidesProgramCounts;
        return new AnswerFindings(
            [.. answers.Questions.Select(answer => answer with
            {
                Sentences = answer.Sentences.Select(sentence => disclosure.Seen(sentence, without) ?? OnlyName(sentence)).OfType<Sentence>().ToImmutableArray() is { Length: > 0 } kept ? kept : [TooSmall],
                // Where a short answer would lose a sentence the whole one stands for it.
                InShort = answer.InShort.Select(sentence => disclosure.Seen(sentence, without) ?? OnlyName(sentence)).ToList() is var brief && brief.TrueForAll(sentence => sentence is not null)
                    ? [.. brief.OfType<Sentence>()]
                    : [],
                // Conditions without a figure are cautions: they stay.
                Conditions = [.. answer.Conditions.Select(sentence => disclosure.Seen(sentence, without: true)).OfType<Sentence>()],
            })],
            [.. answers.NextSteps.Select(step => step with { Sentence = disclosure.Seen(step.Sentence, without) ?? Shortened(step) })
                .DistinctBy(step => step.Sentence.Text)
                .Select((step, index) => step with { Rank = index + 1 })]);
    }

    // That a lot or site stands out is said all the same: somebody must look into it.
    private static Sentence? OnlyName(Sentence sentence)
    {
        const string Opening = " {0} stands out:";
        var end = sentence.Template.IndexOf(Opening, StringComparison.Ordinal);
        return end < 0 ? null : new Sentence(sentence.Template[..end] + " {0} stands out; its chance and some of its counts are hidden.", sentence.Figures[0]);
    }

    // A step stays, for somebody must take it; its counts go.
    private static Sentence Shortened(NextStep step)
    {
        var name = step.Sentence.Figures.FirstOrDefault(figure => figure.Value.Kind == CellKind.Text && step.Id.Contains(':', StringComparison.Ordinal));
        return (step.Id.Split(':')[0], name) switch
        {
            ("look-into-lot", { } lot) => new Sentence("Look into lot {0}: run control swabs, ask the supplier, and settle under local rules whether its kits stay in use. Its counts are hidden.", lot),
            ("look-into-site", { } site) => new Sentence("Look into how runs are done, read and labelled at site {0}. Its counts are hidden.", site),
            ("train-at-site", { } site) => new Sentence("Review technique and train at site {0}. Its counts are hidden.", site),
            ("check-lot", { } lot) => new Sentence("Check storage and handling of lot {0}. Its counts are hidden.", lot),
            ("ask-about-device", { } device) => new Sentence("Ask the supplier of {0} about its specificity. Its counts are hidden.", device),
            _ => new Sentence("A step here rests on hidden counts; those who hold the data see it in the full report."),
        };
    }

    private static CautionFindings Veil(CautionFindings cautions, ReleaseDisclosure disclosure) => new(
        [.. cautions.Items.Where(caution => disclosure.Seen(caution.Sentence, without: !caution.FromData || !disclosure.HidesProgramCounts || caution.Id.StartsWith("taken-as-exact", StringComparison.Ordinal) || caution.Id is "no-time-zone" or "no-confirmatory-export") is not null)]);
}
