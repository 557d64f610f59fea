using ScreenStats.Synthesis.Planning;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>Which lots are in use at one site, in days of the program, and what they do there.</summary>
internal sealed class LotUse
{
    private readonly (int Lot, int From, int To)[] uses;
    private readonly (int From, int To, double Rate)?[] faults;
    private readonly double[] falsePositive;

    public LotUse(SynthesisPlan plan, SynthesisSite site)
    {
        int Day(DateOnly? day, DateOnly otherwise) => (day ?? otherwise).DayNumber - plan.FirstDay.DayNumber;
        uses = [.. plan.Lots
            .Select((lot, index) => (lot, index))
            .Where(pair => pair.lot.Sites.IsEmpty || pair.lot.Sites.Contains(site.Name))
            .Select(pair => (pair.index, Day(pair.lot.From, plan.FirstDay), Day(pair.lot.To, plan.LastDay)))];
        faults = [.. plan.Lots.Select(lot => lot.Fault is { } fault && (fault.Sites.IsEmpty || fault.Sites.Contains(site.Name))
            ? ((int, int, double)?)(Day(fault.From, plan.FirstDay), Day(fault.To, plan.LastDay), fault.FalsePositiveRate)
            : null)];
        falsePositive = [.. plan.Lots.Select(lot => 1 - plan.Kits.First(kit => kit.Name == lot.Kit).Specificity)];
    }

    /// <summary>Lots in use on a day, in the plan's order.</summary>
    public int[] On(int day) => [.. uses.Where(use => use.From <= day && day <= use.To).Select(use => use.Lot)];

    /// <summary>Chance of a positive result without detectable infection.</summary>
    public double FalsePositiveRate(int lot, int day) =>
        faults[lot] is { } fault && fault.From <= day && day <= fault.To ? fault.Rate : falsePositive[lot];
}
