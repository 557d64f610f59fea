using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.WhatIf.Grids;

namespace ScreenStats.Evaluation.WhatIf;

/// <summary>What a positive and a negative would be worth.</summary>
/// <param name="People">People screened that the expected numbers are for.</param>
/// <param name="Starts">Where the controls can start: the program first, then each device as stated.</param>
/// <param name="AtStart">What is expected where they start.</param>
/// <param name="Outcomes">The same over some values, the start first.</param>
/// <param name="Grids">The grids that the page looks up.</param>
public sealed record WhatIfPositiveFindings(
    int People, ImmutableArray<WhatIfStart> Starts, ScreenedOutcome AtStart, ImmutableArray<ScreenedOutcome> Outcomes, ImmutableArray<Grid> Grids) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [StartTable, OutcomeTable];

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<Sentence> Sentences => WhatIfSentences.Of(this);

    /// <summary>Where the controls can start, as a table.</summary>
    [JsonIgnore]
    public Table<WhatIfStart> StartTable => WhatIfTables.Starts(Starts);

    /// <summary>What a positive is worth over some values, as a table.</summary>
    [JsonIgnore]
    public Table<ScreenedOutcome> OutcomeTable => WhatIfTables.Screened(Outcomes);
}
