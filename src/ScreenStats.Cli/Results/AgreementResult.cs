using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>agreement</c> answers.</summary>
internal sealed record AgreementResult(
    ImmutableArray<ImmutableArray<long>> Counts,
    long Total,
    double Confidence,
    ShareItem OverallAgreement,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ShareItem? PositivePercentAgreement,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ShareItem? NegativePercentAgreement,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ShareItem? PositivePercentAgreementSwapped,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ShareItem? NegativePercentAgreementSwapped,
    ImmutableArray<EstimateItem> SpecificAgreements,
    KappaItem Kappa,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] KappaItem? WeightedKappa,
    EstimateItem PrevalenceAdjustedKappa,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] AgreementIndices? Indices,
    ImmutableArray<string> Cautions);
