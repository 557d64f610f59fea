using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Counting.Programs.Costs;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Worth.Prices;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Statistics.Cadence.Sojourn;

namespace ScreenStats.Evaluation.Worth.Options;

/// <summary>What an option costs and gains, from what it does and from prices.</summary>
internal sealed class CostModel
{
    private const double DaysPerYear = 365;
    private readonly int? isolationDays;
    private readonly double discount;

    public CostModel(CadenceWork work, ProgramSettings settings, PriceList prices)
    {
        Work = work;
        Prices = prices;
        Settings = settings.Costs;
        isolationDays = settings.Policy.IsolationDays;
        discount = Discount(settings.Costs.DiscountRate ?? 0, settings.Cadence.Days);
        var spread = work.Outcomes.LeadingBasis == CadenceBasis.AsStated;
        Effect = spread && (Settings.InfectionAverted is not null || Settings.InfectiousDay is null) ? WorthEffect.InfectionsAverted : WorthEffect.InfectiousDaysRemoved;
        Value = Effect == WorthEffect.InfectionsAverted ? Settings.InfectionAverted : Settings.InfectiousDay;
        PriceDraws = [.. Enumerable.Range(0, work.Draws.Count).Select(prices.At)];
    }

    public CadenceWork Work { get; }

    public PriceList Prices { get; }

    public CostSettings Settings { get; }

    /// <summary>The prices in every draw.</summary>
    public PriceSet[] PriceDraws { get; }

    public WorthEffect Effect { get; }

    /// <summary>What one effect is worth; null where not stated.</summary>
    public StatedRange? Value { get; }

    public CadenceMeasure EffectMeasure => Effect == WorthEffect.InfectionsAverted ? CadenceMeasure.InfectionsAverted : CadenceMeasure.InfectiousDaysRemoved;

    /// <summary>Whether illness averted is in the costs: its price, and the share that gets symptoms, must be stated.</summary>
    public bool CountsIllness => Prices.Knows(Price.Illness) && Work.Known.Settings.Course?.Symptoms is not null && Work.Outcomes.LeadingBasis == CadenceBasis.AsStated;

    /// <summary>Whether outbreaks avoided are in the costs.</summary>
    public bool CountsOutbreaks => Prices.Knows(Price.Outbreak) && Work.Outcomes.LeadingBasis == CadenceBasis.AsStated;

    /// <summary>The specimens of one pool that take the fewest tests at the central figures, as far as the laboratory allows; 1 where no pool saves any.</summary>
    public int PoolSize(ScreeningOption option) => PoolSize(Centre(option));

    /// <summary>The same for what an option does.</summary>
    public int PoolSize(Func<CadenceMeasure, double> of)
    {
        if (Settings.LargestPool is not { } most) return 1;
        var share = RealShare(of(CadenceMeasure.TruePositives), of(CadenceMeasure.FalseAlarms));
        if (!double.IsFinite(share)) return 1;
        return Enumerable.Range(1, Math.Max(1, most)).MinBy(size => PooledTesting.RelativeCost(size, share));
    }

    /// <summary>Why the spending of an option is not known; null where it is.</summary>
    public string? SpendingUndefined(ScreeningOption option, WorthConfirmation confirmation)
    {
        if (Work.Known.People == 0) return "nobody was tested";
        if (option.IsNone) return null;
        if (!Prices.KnowsScreen) return "the cost of a screen is not stated in full";
        if (confirmation != WorthConfirmation.Without && !Prices.Knows(Price.ConfirmatoryTest)) return "the price of a confirmatory test is not stated";
        if (!Prices.Knows(Price.IsolationDay)) return "the cost of a day of isolation is not stated";
        if (isolationDays is null) return "how long a case is kept away is not stated in the policy";
        if (!Prices.Knows(Price.WorkingDay)) return "the cost of a working day lost to a false alarm is not stated";
        if (Missing(option, CadenceMeasure.Inconclusive) is { } unclear) return unclear;
        if (Missing(option, CadenceMeasure.FalseAlarms) is { } alarms) return alarms;
        if (Missing(option, CadenceMeasure.TruePositives) is { } found) return found;
        if (Missing(option, CadenceMeasure.DaysAwayAdded) is { } away) return away;
        if (confirmation != WorthConfirmation.Without && !Work.Known.Knows(Parameter.FalseAlarmDays)) return "the working days that a false alarm costs are not known";
        return null;
    }

    /// <summary>Why the effect of an option is not known; null where it is. That of no screening is known where that of any option is.</summary>
    public string? EffectUndefined(ScreeningOption option) => Missing(option.IsNone ? Work.Options.Options[0] : option, EffectMeasure);

    /// <summary>What an option does at the central figures.</summary>
    public Func<CadenceMeasure, double> Centre(ScreeningOption option) => measure => Work.Outcomes.Centre(option, measure, Work.Outcomes.LeadingBasis);

    /// <summary>Costs and effect of an option.</summary>
    /// <param name="choice">The option.</param>
    /// <param name="of">What it does.</param>
    /// <param name="prices">Prices.</param>
    /// <param name="symptoms">Share of the infected who get symptoms.</param>
    /// <param name="pool">Specimens of one pool.</param>
    public OptionSum Sum(OptionChoice choice, Func<CadenceMeasure, double> of, PriceSet prices, double symptoms, int pool = 1)
    {
        if (choice.Option.IsNone) return new OptionSum(0, 0, 0);
        var (found, alarms) = (of(CadenceMeasure.TruePositives), of(CadenceMeasure.FalseAlarms));
        var days = isolationDays ?? double.NaN;
        var without = choice.Confirmation == WorthConfirmation.Without;
        var tests = without ? 0 : (found + alarms) * (pool > 1 && found + alarms > 0 ? PooledTesting.RelativeCost(pool, RealShare(found, alarms)) : 1) * prices[Price.ConfirmatoryTest];
        var unclear = (of(CadenceMeasure.InconclusiveRepeats) * prices.Screen) + (without ? 0 : of(CadenceMeasure.InconclusiveTests) * prices[Price.ConfirmatoryTest]);
        var spending = (of(CadenceMeasure.Screens) * prices.Screen) + unclear + tests + (of(CadenceMeasure.DaysAwayAdded) * prices[Price.IsolationDay]) + ((without ? alarms * days : of(CadenceMeasure.DaysLost)) * prices[Price.WorkingDay]);
        var saved = (CountsIllness ? of(CadenceMeasure.InfectionsAverted) * symptoms * prices[Price.Illness] : 0) + (CountsOutbreaks ? of(CadenceMeasure.OutbreaksAvoided) * prices[Price.Outbreak] : 0);
        return new OptionSum(discount * spending, discount * (spending - saved), discount * of(EffectMeasure));
    }

    /// <summary>Costs and effect at one set of figures.</summary>
    public OptionSum At(OptionChoice choice, Func<ScreeningOption, CadenceMeasure, CadenceBasis, double> of, ParameterSet at, PriceSet prices, int pool = 1) =>
        Sum(choice, measure => of(choice.Does, measure, Work.Outcomes.LeadingBasis), prices, at[Parameter.SymptomShare] ?? 0, pool);

    /// <summary>The share of the costs and effects of a time that is left after discounting: what falls into the first year is whole.</summary>
    internal static double Discount(double rate, int days)
    {
        double left = 0;
        for (var (year, from) = (0, 0.0); from < days; year++, from += DaysPerYear) left += Math.Min(DaysPerYear, days - from) * Math.Pow(1 + rate, -year);
        return left / days;
    }

    private static double RealShare(double found, double alarms) => found + alarms > 0 ? Math.Clamp(found / (found + alarms), 0, 1) : double.NaN;

    private string? Missing(ScreeningOption option, CadenceMeasure measure)
    {
        var basis = Work.Outcomes.LeadingBasis;
        var slots = Work.Outcomes.Slots;
        return slots.Slots[slots.Place(option, measure, basis)].Undefined
            ?? (double.IsFinite(Work.Outcomes.Centre(option, measure, basis)) ? null : "no screen of the data could have found an infection");
    }
}
