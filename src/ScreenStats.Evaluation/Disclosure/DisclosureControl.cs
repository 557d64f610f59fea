using ScreenStats.Evaluation.Cautions;
using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Rules;
using ScreenStats.Evaluation.Disclosure.Tables;
using ScreenStats.Evaluation.WhatIf;

namespace ScreenStats.Evaluation.Disclosure;

/// <summary>The stage between evaluation and report that hides small counts: findings in, findings with hidden cells out.</summary>
public static class DisclosureControl
{
    /// <summary>Hides counts from 1 to one less than the program's <c>suppressBelow</c>, and whatever would give one away.</summary>
    /// <param name="findings">Findings as evaluated.</param>
    /// <param name="earlier">An earlier release of the same program; null for none.</param>
    /// <returns>
    /// The findings with what may be seen of them (<see cref="Findings.Disclosure"/>): tables, sentences, answers and cautions are
    /// the visible ones. The typed figures themselves are those that were evaluated, and not for circulation. Unchanged where nothing is to be hidden.
    /// </returns>
    public static Findings Apply(Findings findings, EarlierRelease? earlier = null)
    {
        ArgumentNullException.ThrowIfNull(findings);
        var threshold = findings.Settings.Report.SuppressBelow;
        if (threshold <= 1 || findings.Disclosure is not null) return findings;

        // Evaluated before it was asked to hide: what is laid out over grids may start at no figure of the data.
        if (!findings.WhatIf.OnlyStated) findings = findings with { WhatIf = WhatIfAnalysis.Of(findings.Settings, findings.Accuracy, findings.Cadence, onlyStated: true) };

        var figures = FigureRules.Of(findings);
        var before = earlier?.Counts();
        // A table that would make everything else unprovable is left out before everything is hidden.
        var optional = TableRules.Ordered.Where(rule => rule.Optional).Select(rule => rule.Id).ToHashSet(StringComparer.Ordinal);
        var (model, plan, release, without) = Hidden(findings, figures, before, threshold, []);
        if (!Whole(plan) || !Proven(model, plan, threshold)) (model, plan, release, without) = Hidden(findings, figures, before, threshold, optional);
        // What the audit can still work out is not argued with: then no count is shown.
        if (!Proven(model, plan, threshold)) plan = SuppressionPlan.HideAll(model, plan);

        var tally = findings.Source;
        var cells = new HiddenCells(model, release.Ambiguous, threshold, without, new CoarseLimits(model, plan));
        var risk = tally is null || cells.Hides(CountUnit.Program, "runs") ? null : ReidentificationRisk.Of(tally).Below(threshold);
        var disclosure = new ReleaseDisclosure(findings, cells, figures, threshold, model, plan, risk, earlier is not null);
        var answers = AnswerVeil.Of(findings, disclosure);
        // Two answers are compared as they may be read: what is hidden in one changes no word.
        return findings with { Answers = answers, Changes = findings.Changes?.With(answers), Cautions = Veil(findings.Cautions, disclosure), Disclosure = disclosure };
    }

    private static (CountModel Model, SuppressionPlan Plan, ReleasedCounts Release, HashSet<string> Without) Hidden(
        Findings findings, Dictionary<string, ColumnRule> figures, ReleasedCounts? earlier, long threshold, HashSet<string> without)
    {
        var release = ReleasedCounts.Of(
            id => findings.AllTables.Where(table => table.Id == id).SelectMany(table => Enumerable.Range(0, table.RowCount).Select(row => Row.Of(table, row))), without);
        foreach (var measure in figures.Values.SelectMany(rule => rule.Measures).Where(measure => measure.Of is { } unit && unit.Level != Measure.AllLevels)) release.Spoken.Add((measure.Of!.Value, measure.Name));
        if (!without.Contains("participation")) release.Add(CountUnit.Program, "gaps", findings.Participation.Gaps);
        var model = ReleaseModel.Of(release, findings.Source is { } tally ? LevelOverlaps.Of(tally) : [], earlier, threshold, findings);
        return (model, SuppressionPlanner.Protect(model, threshold), release, without);
    }

    // Counts are whole: where a relation counts some several times, a witness may come out in fractions and proves nothing.
    private static bool Whole(SuppressionPlan plan) =>
        !plan.HidesAll && plan.Witnesses.Values.All(witness => witness.Values.All(moved => Math.Abs(moved - Math.Round(moved)) < 1e-6));

    // Two proofs that do not share their way: the witness of each count is checked against every relation, and its range is solved for.
    private static bool Proven(CountModel model, SuppressionPlan plan, long threshold)
    {
        if (plan.HidesAll) return true;
        var audit = new RangeAudit(model);
        foreach (var variable in model.Variables.Where(variable => variable.Need > variable.Value && !variable.Known && !plan.Unprotected.Contains(variable)))
        {
            if (!plan.Witnesses.TryGetValue(variable, out var witness) || !audit.Holds(witness) || variable.Value + witness[variable] < variable.Need - 1e-6) return false;
            if (audit.Range(variable) is { } range && (range.Lower > variable.Value || (range.Upper ?? long.MaxValue) < Math.Max(variable.Need, threshold))) return false;
        }

        return true;
    }

    private static CautionFindings Veil(CautionFindings cautions, ReleaseDisclosure disclosure) => new(
        [.. cautions.Items.Where(caution => disclosure.Seen(caution.Sentence, without: !caution.FromData || !disclosure.HidesProgramCounts || caution.Id.StartsWith("taken-as-exact", StringComparison.Ordinal) || caution.Id is "no-time-zone" or "no-confirmatory-export") is not null)]);
}
