using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Rows;

namespace ScreenStats.Evaluation.Worth.Options;

/// <summary>An option with its costs and effects, at the centre and in every draw.</summary>
internal sealed class OptionFigures
{
    private const double Largest = 1e15;

    private OptionFigures(OptionChoice choice, int pool, string? spendingUndefined, string? effectUndefined)
    {
        Choice = choice;
        Pool = pool;
        SpendingUndefined = spendingUndefined;
        EffectUndefined = effectUndefined;
    }

    public OptionChoice Choice { get; }

    /// <summary>Specimens of one pool.</summary>
    public int Pool { get; }

    public string? SpendingUndefined { get; }

    public string? EffectUndefined { get; }

    /// <summary>Whether both cost and effect are known.</summary>
    public bool IsKnown => SpendingUndefined is null && EffectUndefined is null && Array.TrueForAll(Costs, Countable) && Array.TrueForAll(Effects, Countable);

    /// <summary>Whether a sum is a number that the statistics take.</summary>
    public static bool Countable(double amount) => Math.Abs(amount) <= Largest;

    public OptionSum Centre { get; private init; }

    public double[] Spendings { get; private init; } = [];

    public double[] Costs { get; private init; } = [];

    public double[] Effects { get; private init; } = [];

    public static OptionFigures Of(CostModel model, OptionChoice choice, int pool)
    {
        var (work, basis) = (model.Work, model.Work.Outcomes.LeadingBasis);
        var at = work.Draws.Centre;
        if (choice.Option.IsNone) return Nothing(model, choice, work.Draws.Count);
        var measures = Enum.GetValues<CadenceMeasure>();
        var drawn = new double[measures.Length][];
        CadenceMeasure[] needed =
            [CadenceMeasure.Screens, CadenceMeasure.InconclusiveTests, CadenceMeasure.InconclusiveRepeats, CadenceMeasure.TruePositives, CadenceMeasure.FalseAlarms, CadenceMeasure.DaysLost, CadenceMeasure.DaysAwayAdded, CadenceMeasure.InfectionsAverted, CadenceMeasure.OutbreaksAvoided, CadenceMeasure.InfectiousDaysRemoved];
        foreach (var measure in needed) drawn[(int)measure] = work.Outcomes.Drawn(choice.Does, measure, basis);
        var count = work.Draws.Count;
        var symptoms = work.Draws.Drawn(Parameter.SymptomShare);
        var (spendings, costs, effects) = (new double[count], new double[count], new double[count]);
        for (var draw = 0; draw < count; draw++)
        {
            var index = draw;
            (spendings[draw], costs[draw], effects[draw]) = model.Sum(choice, measure => drawn[(int)measure][index], model.PriceDraws[draw], symptoms(draw) ?? 0, pool);
        }

        var spending = model.SpendingUndefined(choice.Does, choice.Confirmation);
        if (spending is null && costs.Any(cost => Math.Abs(cost) > Largest)) spending = "it is too large to compute";
        return new OptionFigures(choice, pool, spending, model.EffectUndefined(choice.Does))
        {
            Centre = model.Sum(choice, model.Centre(choice.Does), model.Prices.Centre, at[Parameter.SymptomShare] ?? 0, pool),
            Spendings = spendings,
            Costs = costs,
            Effects = effects,
        };
    }

    // No screening costs and gains nothing more than itself.
    private static OptionFigures Nothing(CostModel model, OptionChoice choice, int draws) =>
        new(choice, 1, model.SpendingUndefined(choice.Option, choice.Confirmation), model.EffectUndefined(choice.Option)) { Spendings = new double[draws], Costs = new double[draws], Effects = new double[draws] };

    /// <summary>Net benefit in every draw.</summary>
    public double[] NetBenefits(double value) => [.. Costs.Zip(Effects, (cost, effect) => (value * effect) - cost)];
}
