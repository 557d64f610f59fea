using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>clusters</c> answers; the second group and the tests only where two were given.</summary>
internal sealed record ClustersResult(
    double Confidence,
    ClusterGroup Group,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ClusterGroup? Against,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ImmutableArray<ClusterTest>? Tests);
