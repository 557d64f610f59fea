using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Words;

/// <summary>The answer for the manager: the option, what it gives, what the next step would add and cost, and how sure that is.</summary>
internal static class AnswerSentences
{
    /// <summary>Fewer runs than this share at weekends are next to none.</summary>
    private const double HardlyAny = 0.01;

    /// <summary>An option with fewer days between screens cannot keep to the working days.</summary>
    private const double DaysOfWeek = 7;

    /// <summary>From so many times the figure on an upper limit is explained.</summary>
    private const double Runaways = 4;

    public static IEnumerable<Sentence> Of(CadenceFindings findings, CadenceOptionFinding leading)
    {
        var figures = new CadenceFigures(findings);
        if (!figures.Knows(leading, CadenceMeasure.InfectiousDaysRemoved))
        {
            var reason = findings.Outcome(leading.Option, CadenceMeasure.InfectiousDaysRemoved)?.Figure.EstimateUndefined ?? "not known";
            yield return new Sentence($"How many infectious days a way of screening removes is not known: {reason}.");
            yield break;
        }

        yield return OpeningSentences.Of(findings, figures, leading);
        yield return leading.IsNone ? First(findings, figures) : Gain(findings, figures, leading);
        if (findings.LeadingBasis == CadenceBasis.AllBroughtIn && !leading.IsNone) yield return Bounds(figures, leading);
        if (Averted(figures, leading) is { } averted) yield return averted;
        if (Runaway(findings, leading)) yield return new Sentence(
            "The upper limit is from draws in which infection would run through much of the workplace without screening; a reproduction stated in the program file would narrow it.");
        if (Next(findings, leading) is { } next) yield return next;
        if (Plan(findings, figures, leading) is { } plan) yield return plan;
        if (findings.Choices.IsEmpty) yield return new Sentence("Nothing states how many infectious days 1,000 more screens must remove, so no option is chosen; the table of steps has what each adds.");
        if (HorizonSentences.Of("cadence.days", findings.Days, findings.Assumptions.Any(row => row.Assumption == "immunity-days" && row.Value is not null)) is { } horizon) yield return horizon;
        if (Weekends(findings) is { } weekends) yield return weekends;
    }

    private static Sentence Gain(CadenceFindings findings, CadenceFigures figures, CadenceOptionFinding leading)
    {
        var basis = findings.LeadingBasis == CadenceBasis.AllBroughtIn ? ", if all infections are brought in," : "";
        var figure = figures.Of(leading, CadenceMeasure.InfectiousDaysRemoved);
        var share = figures.Of(leading, CadenceMeasure.ShareRemoved);
        var before = figures.Of(leading, CadenceMeasure.CaughtBeforeSpread);
        var none = findings.Options.FirstOrDefault(option => option.IsNone);
        var without = none is null || !figures.Knows(none, CadenceMeasure.CaughtBeforeSpread) ? null : figures.Of(none, CadenceMeasure.CaughtBeforeSpread);
        var known = share[0].Value.Kind == CellKind.Number;
        var template = $"For {{1}} {figures.PeopleWord} over {{2}} {figures.DaysWord} \"{{0}}\" removes{basis} {{3}} infectious days outside isolation, days off included ({{4}} interval {{5}} to {{6}})"
            + (known ? ", {7} of those that there would be without screening ({8} to {9})" : "") + "; {10} of infections ({11} to {12}) are away before they can be passed on"
            + (without is null ? "." : ", {13} without any screening.");
        FigureReference[] all =
        [
            CadenceFigures.Name(leading), figures.People, figures.Days, figure[0], figures.Confidence, figure[1], figure[2], share[0], share[1], share[2], before[0], before[1], before[2],
            without?[0] ?? before[0],
        ];
        return Compact(template, all);
    }

    /// <summary>Options that cannot be carried out as they are computed: every so many days, at weekends too, where nobody is screened then.</summary>
    private static Sentence? Weekends(CadenceFindings findings)
    {
        if (findings.Inputs.AtWeekends is not { } share || share >= HardlyAny) return null;
        var options = findings.Options.Where(option => !option.IsAsDone && !option.IsNone && option.Weekdays.Length == 0 && option.EveryDays < DaysOfWeek).ToList();
        if (options.Count == 0) return null;
        var names = Enumerable.Range(0, options.Count).Select(at => FormattableString.Invariant($"\"{{{at}}}\"")).ToList();
        var list = names.Count == 1 ? names[0] + " counts" : string.Join(", ", names.Take(names.Count - 1)) + " and " + names[^1] + " count";
        return new Sentence(
            $"{list} Saturdays and Sundays, on which {(share == 0 ? "nobody" : "hardly anybody")} was screened in the data; an option with weekdays of its own keeps to the working days.",
            [.. options.Select(CadenceFigures.Name)]);
    }

    // Why no screening is chosen: what the first step would give.
    private static Sentence First(CadenceFindings findings, CadenceFigures figures)
    {
        if (findings.Steps.FirstOrDefault(one => one.Leads) is not { } step) return new Sentence("There is no way of screening among the options.");
        var path = FigurePath.Row("cadence.steps", step.Key);
        var gain = CadenceFigures.Of(path + ".perThousandScreens", step.PerThousandScreens, Unit.Ratio);
        return gain[0].Value.Kind != CellKind.Number ? new Sentence("What the first step would give is not known.")
            : new Sentence("Already the first step, to \"{0}\", removes {1} for each 1,000 ({2} interval {3} to {4}).", Figure.Name(path + ".to", step.To), gain[0], figures.Confidence, gain[1], gain[2]);
    }

    private static Sentence Bounds(CadenceFigures figures, CadenceOptionFinding leading)
    {
        var inside = figures.Of(leading, CadenceMeasure.InfectiousDaysRemoved, CadenceBasis.AllInside);
        return new Sentence(
            "If all infections spread inside it is {0} ({1} to {2}): how many are brought in is not stated, and the truth lies between.", inside[0], inside[1], inside[2]);
    }

    private static Sentence? Averted(CadenceFigures figures, CadenceOptionFinding leading)
    {
        if (leading.IsNone || !figures.Knows(leading, CadenceMeasure.OutbreaksAvoided)) return null;
        var (infections, outbreaks) = (figures.Of(leading, CadenceMeasure.InfectionsAverted), figures.Of(leading, CadenceMeasure.OutbreaksAvoided));
        var known = figures.Knows(leading, CadenceMeasure.DaysOfAverted);
        var days = figures.Of(leading, CadenceMeasure.DaysOfAverted);
        return Compact(
            "It averts {0} infections inside ({1} to {2})" + (known ? ", to which {6} of those days belong," : "") + " and {3} outbreaks of five or more cases ({4} to {5}).",
            [infections[0], infections[1], infections[2], outbreaks[0], outbreaks[1], outbreaks[2], days[0]]);
    }

    private static bool Runaway(CadenceFindings findings, CadenceOptionFinding leading) =>
        !leading.IsNone && findings.LeadingBasis == CadenceBasis.AsStated && findings.Assumptions.All(row => row.Assumption != "reproduction" || row.Value is null)
        && findings.Outcome(leading.Option, CadenceMeasure.InfectiousDaysRemoved)!.Figure is { Estimate: { } estimate, Upper: { } upper } && upper > Runaways * estimate;

    /// <summary>What the plan gives, where it is another option.</summary>
    private static Sentence? Plan(CadenceFindings findings, CadenceFigures figures, CadenceOptionFinding leading)
    {
        if (findings.Options.FirstOrDefault(option => option.IsPlanned) is not { IsNone: false } plan || plan == leading || !figures.Knows(plan, CadenceMeasure.InfectiousDaysRemoved)) return null;
        var removed = figures.Of(plan, CadenceMeasure.InfectiousDaysRemoved);
        return new Sentence(
            "The plan, \"{0}\", removes {1} infectious days ({2} to {3}) with {4} screens.", CadenceFigures.Name(plan), removed[0], removed[1], removed[2], figures.Of(plan, CadenceMeasure.Screens)[0]);
    }

    /// <summary>What the step from the option to the next more frequent one adds and costs.</summary>
    private static Sentence? Next(CadenceFindings findings, CadenceOptionFinding leading)
    {
        if (leading.IsNone) return null;
        if (findings.Steps.FirstOrDefault(step => step.Leads && step.From == leading.Option) is not { } step)
            return new Sentence("No option is more frequent.");
        var path = FigurePath.Row("cadence.steps", step.Key);
        var gain = CadenceFigures.Of(path + ".gain", step.Gain, Unit.Ratio);
        if (gain[0].Value.Kind != CellKind.Number) return null;
        var each = CadenceFigures.Of(path + ".perThousandScreens", step.PerThousandScreens, Unit.Ratio);
        var alarms = CadenceFigures.Of(path + ".moreFalseAlarms", step.MoreFalseAlarms, Unit.Ratio);
        var known = alarms[0].Value.Kind == CellKind.Number;
        return Compact(
            "The next step, to \"{0}\", would remove {1} more infectious days ({2} to {3}) for {4} more screens" + (known ? " and {5} more false alarms" : "")
            + (each[0].Value.Kind == CellKind.Number ? ": {6} for each 1,000 screens ({7} to {8})." : "."),
            [Figure.Name(path + ".to", step.To), gain[0], gain[1], gain[2], Figure.Number(path + ".moreScreens.estimate", step.MoreScreens.Estimate, Unit.Count), alarms[0], each[0], each[1], each[2]]);
    }

    /// <summary>A sentence of a template that may leave figures out.</summary>
    internal static Sentence Compact(string template, FigureReference[] figures)
    {
        var used = Enumerable.Range(0, figures.Length).Where(index => template.Contains($"{{{Text(index)}}}", StringComparison.Ordinal)).ToList();
        for (var place = 0; place < used.Count; place++) template = template.Replace($"{{{Text(used[place])}}}", $"{{{Text(place)}}}", StringComparison.Ordinal);
        return new Sentence(template, [.. used.Select(index => figures[index])]);
    }

    private static string Text(int index) => index.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
