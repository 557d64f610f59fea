using System.Globalization;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Worth.Lists;

/// <summary>The 28 items of CHEERS 2022 for the report of an economic evaluation: what data and program file say, "not stated" where they do not.</summary>
/// <remarks>Source: Husereau D and others, BMJ 2022;376:e067975; the items in words of our own.</remarks>
internal static class ReportingItems
{
    public static IEnumerable<WorthCriterion> Of(WorthFindings findings, CadenceFindings cadence, ProgramSettings settings)
    {
        var (costs, report) = (settings.Costs, settings.Costs.Report);
        var options = string.Join(", ", findings.Options.Select(option => option.Option).Distinct(StringComparer.Ordinal));
        var many = WorthNames.Many(findings.Effect);
        string?[] answers =
        [
            "the report of the program; its part on worth asks whether screening is worth it, against the options of item 7",
            findings.Verdict,
            report.Background,
            report.AnalysisPlan,
            report.Population,
            report.Setting,
            Both(findings.Options.IsEmpty ? null : "compared: " + options, report.Comparators),
            costs.Perspective,
            Both($"{Count(findings.Days)} days", report.Horizon),
            Both(findings.DiscountRate is { } rate ? $"{Rounding.Print(Cell.Number(rate), Unit.Proportion)} a year after the first" : "nothing is discounted", report.Discounting),
            Both(many, report.Outcomes),
            findings.Options.Any(option => option.Effect.Estimate is not null) ? "from the course of an infection, the days of screens, accuracy and incidence: see how often to screen" : null,
            Both(findings.Value is { } value ? $"{Rounding.Print(Cell.Number(value), Unit.Ratio)} {findings.Currency} for one {WorthNames.One(findings.Effect)}" : null, report.Valuation),
            Both(findings.AnyStated ? "prices as stated, item by item with their sources; numbers as counted or modelled" : null, report.Resources),
            costs.Currency is { } currency ? costs.PriceYear is { } year ? $"{currency} at prices of {year.ToString(CultureInfo.InvariantCulture)}, not converted" : null : null,
            cadence.Options.IsEmpty ? null : "course of an infection by screens, spread inside and what is brought in: see the methods",
            "see the methods and the table of assumptions",
            report.Heterogeneity,
            report.Distribution,
            $"{Count(findings.Draws)} draws of all uncertain figures, one at a time, and what knowing more would be worth",
            report.Engagement,
            "values, ranges and sources stand in the tables of assumptions and costs",
            findings.Judged?.Cost.Estimate is not null ? "costs, effects and net benefits of all options stand in the table of options" : null,
            findings.PaysShare is { } share ? $"\"{findings.Judged!.Option}\" pays in {Rounding.Print(Cell.Number(share), Unit.Proportion)} of the draws; curves of acceptability stand beside it" : null,
            report.EngagementEffect,
            report.Limitations,
            report.Funding,
            report.Conflicts,
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
            string.IsNullOrEmpty(answers[index]) ? "not stated" : "stated", answers[index] ?? ""));
    }

    // What the analysis knows, and what people state of it.
    private static string? Both(string? known, string? stated) => known is null ? stated : stated is null ? known : $"{known}; {stated}";

    private static string Count(long value) => Rounding.Print(Cell.Count(value), Unit.Count);
}
