using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>latent-class</c> answers, by maximum likelihood or from priors.</summary>
internal sealed record LatentClassResult(
    string Method,
    ImmutableArray<ImmutableArray<long>> Populations,
    double Confidence,
    ImmutableArray<LatentItem> Figures,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] LatentFitItem? Fit,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ImmutableArray<CovarianceItem>? Covariances,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ImmutableArray<LatentItem>? InfectedByCell,
    ImmutableArray<string> Remarks);

/// <summary>One figure; the mean is the posterior's, the standard error the likelihood's.</summary>
internal sealed record LatentItem(
    string Measure, Figure Estimate, Figure Lower, Figure Upper,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? StandardError,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Mean);

/// <summary>How the likelihood fits.</summary>
internal sealed record LatentFitItem(Figure LogLikelihood, int DegreesOfFreedom, Figure Deviance, Figure PValue);
