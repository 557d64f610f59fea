using System.Globalization;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Costs;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Worth.Lists;

/// <summary>The 28 items of CHEERS 2022 for the report of an economic evaluation: "stated" where data, analysis and program file say all that an item asks for, "in part" where some of it is missing, "not stated" where all is.</summary>
/// <remarks>Source: Husereau D and others, BMJ 2022;376:e067975; the items in words of our own.</remarks>
internal static class ReportingItems
{
    private const int DaysPerYear = 365;

    public static IEnumerable<WorthCriterion> Of(WorthFindings findings, CadenceFindings cadence, ProgramSettings settings)
    {
        var (costs, report) = (settings.Costs, settings.Costs.Report);
        var options = findings.Options.IsEmpty ? null : "compared: " + string.Join(", ", findings.Options.Where(option => !option.IsAsDone).Select(option => option.Option).Distinct(StringComparer.Ordinal));
        var judged = findings.Judged?.Cost.Estimate is not null;
        var effect = findings.Options.Any(option => !option.IsNone && option.Effect.Estimate is not null);
        var firstYear = findings.Days <= DaysPerYear;
        (string? Stated, string? InPart)[] answers =
        [
            (null, options is null ? null : "this part of the report asks whether screening is worth it, against the options of item 7; its title names no economic evaluation"),
            (judged ? findings.Verdict : null, null),
            (report.Background, null),
            (report.AnalysisPlan, null),
            (report.Population, null),
            (report.Setting, null),
            Whole(options, report.Comparators, "why these is not stated"),
            (costs.Perspective, null),
            Whole($"{Count(findings.Days)} days", report.Horizon, "why so long is not stated"),
            Whole(
                findings.DiscountRate is { } rate ? $"{Rounding.Print(Cell.Number(rate), Unit.Proportion)} a year after the first" : "nothing is discounted",
                report.Discounting ?? (firstYear ? "nothing falls after the first year" : null), "why is not stated"),
            Whole(effect ? WorthNames.Many(findings.Effect) : null, report.Outcomes, null),
            (effect ? "from the course of an infection, the days of screens, accuracy and incidence: see how often to screen" : null, null),
            Whole(
                findings.Value is { } value ? $"{Rounding.Print(Cell.Number(value), Unit.Ratio)} {findings.Currency} for one {WorthNames.One(findings.Effect)}" : null,
                report.Valuation ?? Source(costs, findings.Effect), "whose value it is, and how it was found, is not stated"),
            Whole(findings.AnyStated ? "prices as stated, item by item with their sources; numbers as counted or modelled" : null, report.Resources, findings.Figure("total-cost")?.Figure.Estimate is null ? "not every item is priced" : null),
            (costs.Currency, costs.PriceYear) switch
            {
                ({ } currency, { } year) => ($"{currency} at prices of {year.ToString(CultureInfo.InvariantCulture)}, not converted", null),
                ({ } currency, null) => (null, $"{currency}; of what year is not stated"),
                (null, { } year) => (null, $"at prices of {year.ToString(CultureInfo.InvariantCulture)}; the currency is not stated"),
                _ => (null, null),
            },
            (null, cadence.Options.IsEmpty ? null : "course of an infection by screens, spread inside and what is brought in: see the methods; why this model is for people to say"),
            Known("see the methods and the table of assumptions", judged, effect, "no costs, so of the effects only"),
            (report.Heterogeneity, null),
            (report.Distribution, null),
            Known($"{Count(findings.Draws)} draws of all uncertain figures, one at a time, and what knowing more would be worth", findings.PaysShare is not null, effect, "of the effects only: cost or value is not known"),
            (report.Engagement, null),
            Known("values, ranges and sources stand in the tables of assumptions and costs", judged && !Unsourced(findings, cadence), effect || findings.AnyStated, judged ? "not every stated figure has a source" : "not everything is stated"),
            (judged ? "costs, effects and net benefits of all options stand in the table of options" : null, effect && !judged ? "effects stand in the table of options; costs are not known" : null),
            (findings.PaysShare is { } share ? $"\"{findings.Judged!.Option}\" pays in {Rounding.Print(Cell.Number(share), Unit.Proportion)} of the draws; curves of acceptability stand beside it" : null, null),
            (report.EngagementEffect, null),
            (report.Limitations, null),
            (report.Funding, null),
            (report.Conflicts, null),
        ];
        string[] questions =
        [
            "Title: is it named as an economic evaluation, with what is compared?",
            "Abstract: is there a short account of it?",
            "Background: what is the question, and why does it matter for a decision?",
            "Plan: was there a plan of the analysis beforehand, and where is it?",
            "Population: who is studied?",
            "Setting: where, and what of the place bears on the findings?",
            "Comparators: what is compared, and why that?",
            "Perspective: whose costs and effects are counted?",
            "Horizon: over what time, and why that?",
            "Discounting: at what rate, and why that?",
            "Outcomes: which measures of benefit and harm?",
            "Outcomes: how were they measured?",
            "Outcomes: whose values were they given, and how were these found?",
            "Costs: how were resources measured and priced?",
            "Currency: which, of what year, and how converted?",
            "Model: which, and why that?",
            "Analysis: by what methods and assumptions?",
            "Groups: how may results differ between groups of people?",
            "Distribution: how are gains and burdens spread over people?",
            "Uncertainty: how was it dealt with?",
            "Engagement: how did those affected take part in the design?",
            "Inputs: are all values, ranges and sources given?",
            "Results: what are the main costs and effects of each option?",
            "Uncertainty: what does it do to the findings?",
            "Engagement: what did it change?",
            "Discussion: limitations, ethics, where else it may hold, and what else is known",
            "Funding: who paid, and what part had they in it?",
            "Conflicts: what interests had the authors?",
        ];
        return questions.Select((question, index) => new WorthCriterion(
            "cheers-2022|" + (index + 1).ToString(CultureInfo.InvariantCulture), "cheers-2022", index + 1, question,
            answers[index] switch { ({ Length: > 0 }, _) => "stated", (_, { Length: > 0 }) => "in part", _ => "not stated" },
            answers[index].Stated is { Length: > 0 } whole ? whole : answers[index].InPart ?? ""));
    }

    // What the analysis knows, and what people state of it: in part where something asked for is in neither.
    private static (string? Stated, string? InPart) Whole(string? known, string? stated, string? lacking) =>
        known is null ? (null, stated) : stated is { Length: > 0 } ? ($"{known}; {stated}", null) : lacking is null ? (known, null) : (null, $"{known}; {lacking}");

    private static (string? Stated, string? InPart) Known(string text, bool whole, bool some, string lacking) => whole ? (text, null) : some ? (null, $"{text}; {lacking}") : (null, null);

    private static string? Source(CostSettings costs, WorthEffect effect) =>
        (effect == WorthEffect.InfectionsAverted ? costs.InfectionAverted : costs.InfectiousDay) is { } value && (value.Source.Length > 0 ? value.Source : costs.Source) is { Length: > 0 } source ? source : null;

    // Where no source is stated the table says "program file"; the number of people has none to state.
    private static bool Unsourced(WorthFindings findings, CadenceFindings cadence) =>
        cadence.Assumptions.Any(row => row is { Origin: CadenceOrigin.Stated, Assumption: not "people" } && row.Source.StartsWith("program file", StringComparison.Ordinal))
        || findings.Costs.Any(row => row.Origin == CadenceOrigin.Stated && row.Source.Contains("program file", StringComparison.Ordinal));

    private static string Count(long value) => Rounding.Print(Cell.Count(value), Unit.Count);
}
