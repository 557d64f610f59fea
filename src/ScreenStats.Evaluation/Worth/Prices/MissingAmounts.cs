using System.Collections.Immutable;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Worth.Options;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Evaluation.Worth.Spent;

namespace ScreenStats.Evaluation.Worth.Prices;

/// <summary>What stating one more figure would allow.</summary>
internal static class MissingAmounts
{
    public static ImmutableArray<string> Of(ProgramSettings settings, CostModel model, OptionTable options, SpentItems spent)
    {
        var missing = ImmutableArray.CreateBuilder<string>();
        var (costs, prices) = (settings.Costs, model.Prices);
        string Key(Price price) => "costs." + PriceWords.Of(price).Key;
        var parts = prices.MissingParts.ToList();
        if (parts.Count == 5) missing.Add("costs.screen, or its parts kit, operatorMinutes, operatorHour, supervision and waste: what a screen costs, and with it every other cost");
        else if (parts.Count > 0) missing.Add(string.Join(", ", parts.Select(Key)) + " (0 where nothing is paid for it): what a screen costs in full, and with it every other cost");
        if (!prices.Knows(Price.ConfirmatoryTest)) missing.Add(Key(Price.ConfirmatoryTest) + ": the total, and what screening with a confirmatory test costs");
        if (!prices.Knows(Price.IsolationDay)) missing.Add(Key(Price.IsolationDay) + " (0 where it costs nothing): the total, and what each option costs");
        if (settings.Policy.IsolationDays is null) missing.Add("policy.isolationDays: the days that cases are kept away, in the total and in what each option costs");
        if (!prices.Knows(Price.WorkingDay)) missing.Add(Key(Price.WorkingDay) + " (0 where it costs nothing): the total, and what false alarms cost");
        if (spent.FalseAlarmDays.Estimate is null && spent.Refuted is > 0) missing.Add("cadence.falseAlarmDays: what false alarms cost");
        if (model.Value is null)
        {
            missing.Add((model.Effect == WorthEffect.InfectionsAverted ? "costs.infectionAverted" : "costs.infectiousDay") + ": net benefit, the best option, break-evens, and how sure that is");
        }

        if (model.Work.Options.Options.FirstOrDefault(option => !option.IsNone) is { } any && model.EffectUndefined(any) is { } reason) missing.Add($"{Effects(model.Work.Known)} ({reason}): effects, and with them everything but the spending");
        else if (model.Work.Outcomes.LeadingBasis != CadenceBasis.AsStated) missing.Add("cadence.broughtIn or cadence.reproduction: infections averted, illness and outbreaks saved; without them infectious days removed are the effect, with all infections taken as brought in");
        else AddSavings(missing, model);
        if (costs.AnyStated && costs.Currency is null) missing.Add("costs.currency: in what all amounts are");
        if (costs.AnyStated && costs.PriceYear is null) missing.Add("costs.priceYear: at the prices of which year");
        if (costs.Rules.IsEmpty) missing.Add("costs.rules: what a rule of frequency would have done");
        return missing.ToImmutable();
    }

    private static string Effects(KnownFigures known)
    {
        string[] keys =
        [
            .. known.Settings.Course is null ? new[] { "cadence.course" } : [], .. known.Settings.Course is { Kind: CourseKind.Windows, InfectiousFrom: null } ? new[] { "cadence.course.infectious" } : [],
            .. known.Knows(Parameter.Sensitivity) || known.Settings.Course is { Kind: not CourseKind.Windows } ? [] : new[] { "cadence.sensitivity" }, .. known.Knows(Parameter.Incidence) ? [] : new[] { "cadence.incidence" },
        ];
        return keys.Length == 0 ? "what the page how often asks for" : string.Join(" and ", keys);
    }

    private static void AddSavings(ImmutableArray<string>.Builder missing, CostModel model)
    {
        if (!model.Prices.Knows(Price.Illness)) missing.Add("costs.illness: what averted illness saves, which is not counted now");
        else if (!model.CountsIllness) missing.Add("cadence.course.symptoms: what averted illness saves, which is not counted now");
        if (!model.Prices.Knows(Price.Outbreak)) missing.Add("costs.outbreak: what avoided outbreaks (five or more infections from one brought in) save, which is not counted now");
    }
}
