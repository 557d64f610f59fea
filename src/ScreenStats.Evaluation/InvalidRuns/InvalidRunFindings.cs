using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.InvalidRuns;

/// <summary>Inconclusive and invalid runs among all runs, for the program and its parts.</summary>
public sealed record InvalidRunFindings : IFinding
{
    private readonly Table<InvalidRunRow> table;

    internal InvalidRunFindings(Table<InvalidRunRow> table, ImmutableArray<Sentence> sentences)
    {
        this.table = table;
        Sentences = sentences;
    }

    /// <summary>The whole program over the whole span.</summary>
    public ProportionFinding Program => table.Rows.Single(row => row.Grouping == Grouping.Program).Share;

    /// <summary>Runs of the whole program with a test line and no control line.</summary>
    public long Inconclusive => table.Rows.Single(row => row.Grouping == Grouping.Program).Inconclusive;

    /// <summary>Runs of the whole program with neither line.</summary>
    public long Invalid => table.Rows.Single(row => row.Grouping == Grouping.Program).Invalid;

    /// <summary>By site.</summary>
    public ImmutableArray<InvalidRunRow> Sites => RowsOf(Grouping.Site);

    /// <summary>By lot.</summary>
    public ImmutableArray<InvalidRunRow> Lots => RowsOf(Grouping.Lot);

    /// <summary>By operator.</summary>
    public ImmutableArray<InvalidRunRow> Operators => RowsOf(Grouping.Operator);

    /// <summary>By where the swab was taken.</summary>
    public ImmutableArray<InvalidRunRow> Specimens => RowsOf(Grouping.Specimen);

    /// <summary>By who collected the swab.</summary>
    public ImmutableArray<InvalidRunRow> Collections => RowsOf(Grouping.Collection);

    /// <summary>The whole program by reporting period.</summary>
    public ImmutableArray<InvalidRunRow> Periods => RowsOf(Grouping.Period);

    /// <summary>Each site by reporting period.</summary>
    public ImmutableArray<InvalidRunRow> SitePeriods => RowsOf(Grouping.SiteAndPeriod);

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [table];

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<Sentence> Sentences { get; }

    /// <summary>The rows of one breakdown as a table.</summary>
    /// <param name="grouping">By what.</param>
    /// <returns>A table; without rows where the data have no such breakdown.</returns>
    public Table<InvalidRunRow> By(Grouping grouping) => table.Only(row => row.Grouping == grouping);

    private ImmutableArray<InvalidRunRow> RowsOf(Grouping grouping) => [.. table.Rows.Where(row => row.Grouping == grouping)];
}
