using System.Globalization;
using ScreenStats.Statistics.Regression;
using ScreenStats.Statistics.Regression.Rates;
using ScreenStats.Statistics.Tests.Heterogeneity;

namespace ScreenStats.Statistics.Tests.Regression.Rates;

/// <summary>Rows of regressions of rates as they stand in reference tables (events/size:term;term@group), and the comparison of fits.</summary>
internal static class RateRows
{
    private static readonly Dictionary<string, RateCovariance> Kinds = new() { ["model"] = RateCovariance.Model, ["quasi"] = RateCovariance.Quasi, ["cluster-robust"] = RateCovariance.ClusterRobust };

    public static RateRow[] Poisson(string text) => [.. Read(text).Select(row => new RateRow(row.Events, row.Size, row.Terms, row.Group))];

    public static BinomialRow[] Binomial(string text) => [.. Read(text).Select(row => new BinomialRow(row.Events, row.Size, row.Terms, row.Group))];

    public static RateOptions Options(ReferenceRow row) => new() { Constant = row.Text("constant") == "TRUE", Covariance = Kinds[row.Text("covariance")] };

    public static IEnumerable<string?> Mismatches(ReferenceRow row, RateFit fit) =>
    [
        .. GroupRows.Mismatches(row, "coefficients", fit.Coefficients.Select(b => (double?)b)), .. GroupRows.Mismatches(row, "standard_errors", fit.StandardErrors.Select(b => (double?)b)),
        row.Mismatch("deviance", fit.Deviance), row.Mismatch("null_deviance", fit.NullDeviance), row.Mismatch("pearson", fit.Pearson), row.Mismatch("log_likelihood", fit.LogLikelihood),
        row.Mismatch("akaike", fit.Akaike), row.Mismatch("degrees_of_freedom", fit.DegreesOfFreedom),
    ];

    public static (double Events, double Size, double[] Terms, int Group)[] Read(string text) => [.. text.Split(' ').Select(part =>
    {
        var fields = part.Split('/', ':', '@');
        return (Number(fields[0]), Number(fields[1]), fields[2].Split(';', StringSplitOptions.RemoveEmptyEntries).Select(Number).ToArray(), int.Parse(fields[3], CultureInfo.InvariantCulture));
    })];

    public static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
