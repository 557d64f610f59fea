using ScreenStats.Statistics;
using ScreenStats.Statistics.Agreement;

namespace ScreenStats.Cli.Results;

/// <summary>A kappa with its standard errors and limits.</summary>
internal sealed record KappaItem(
    string Weights, Figure Estimate, Figure StandardError, Figure StandardErrorUnderChance, Figure Lower, Figure Upper, Figure ObservedAgreement, Figure ChanceAgreement)
{
    public static KappaItem Of(KappaEstimate kappa)
    {
        var reason = kappa.Estimate.Reason?.Describe();
        Figure Of(double? value) => Figure.Of(value, reason);
        return new(
            kappa.Weights switch { KappaWeights.Linear => "linear", KappaWeights.Quadratic => "quadratic", _ => "none" },
            Of(kappa.Estimate.Value), Of(kappa.StandardError), Of(kappa.StandardErrorUnderChance), Of(kappa.Estimate.Lower), Of(kappa.Estimate.Upper),
            Of(kappa.ObservedAgreement), Of(kappa.ChanceAgreement));
    }
}
