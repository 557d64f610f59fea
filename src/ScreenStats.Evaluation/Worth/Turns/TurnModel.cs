using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Worth.Options;
using ScreenStats.Evaluation.Worth.Prices;

namespace ScreenStats.Evaluation.Worth.Turns;

/// <summary>Net benefit of the option judged against no screening, with figures moved from their centre.</summary>
internal sealed class TurnModel(CostModel model, OptionFigures judged, double value)
{
    public CostModel Costs => model;

    public OptionFigures Judged => judged;

    /// <summary>What one effect is worth.</summary>
    public double Value => value;

    public ParameterSet Centre => model.Work.Draws.Centre;

    public double Net => (value * judged.Centre.Effect) - judged.Centre.Cost;

    /// <summary>What the option does at the centre.</summary>
    public double Does(CadenceMeasure measure) => model.Centre(judged.Choice.Option)(measure);

    /// <summary>Net benefit at other assumptions.</summary>
    public double NetAt(ParameterSet at) => NetAt(at, model.Prices.Centre, value);

    /// <summary>Net benefit at other assumptions and prices.</summary>
    public double NetAt(ParameterSet at, PriceSet prices, double worth)
    {
        var sum = model.At(judged.Choice, model.Work.Outcomes.At(at), at, prices, judged.Pool);
        return (worth * sum.Effect) - sum.Cost;
    }
}
