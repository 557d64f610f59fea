using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Regression.Rates;

namespace ScreenStats.Statistics.Regression.Fitting;

/// <summary>Poisson rows whose log of the expected events per exposure is the predictor; the exposure comes in as an offset.</summary>
internal sealed class LogRateModel(double[] events, double[] exposures, double[]? offsets = null)
    : RowModel(events, exposures, Array.ConvertAll(Enumerable.Range(0, events.Length).ToArray(), i => Math.Log(exposures[i]) + (offsets is null ? 0 : offsets[i])))
{
    public static LogRateModel Of(RateRow[] rows) => new(Array.ConvertAll(rows, row => row.Events), Array.ConvertAll(rows, row => row.Exposure));

    // The logarithm of the likelihood of a model that fits the row is taken off, so that no digits go with large counts.
    public override double Log(int row, double eta) => -Binomial.Deviance(Events[row], Math.Exp(eta));

    public override double Slope(int row, double eta) => Events[row] - Math.Exp(eta);

    public override double Curvature(int row, double eta) => Math.Exp(eta);

    public override double Information(int row, double eta) => Math.Exp(eta);

    public override double Mean(int row, double eta) => Math.Exp(eta);

    public override (double Log, double Deviance, double Pearson) Fit(int row, double eta)
    {
        var (y, m) = (Events[row], Math.Exp(eta));
        var deviance = Binomial.Deviance(y, m);
        var log = y == 0 ? -m : -deviance - Binomial.StirlingRemainder(y) - (0.5 * Math.Log(2 * Math.PI * y));
        return (log, 2 * deviance, (y - m) * (y - m) / m);
    }
}
