using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Positivity;

/// <summary>Positive tests among valid tests, for the program and its parts.</summary>
public sealed record PositivityFindings : IFinding
{
    private readonly Table<PositivityRow> table;

    internal PositivityFindings(Table<PositivityRow> table, ImmutableArray<Sentence> sentences)
    {
        this.table = table;
        Sentences = sentences;
    }

    /// <summary>The whole program over the whole span.</summary>
    public ProportionFinding Program => table.Rows.Single(row => row.Grouping == Grouping.Program).Share;

    /// <summary>By site.</summary>
    public ImmutableArray<PositivityRow> Sites => RowsOf(Grouping.Site);

    /// <summary>By lot.</summary>
    public ImmutableArray<PositivityRow> Lots => RowsOf(Grouping.Lot);

    /// <summary>By operator.</summary>
    public ImmutableArray<PositivityRow> Operators => RowsOf(Grouping.Operator);

    /// <summary>By where the swab was taken.</summary>
    public ImmutableArray<PositivityRow> Specimens => RowsOf(Grouping.Specimen);

    /// <summary>By who collected the swab.</summary>
    public ImmutableArray<PositivityRow> Collections => RowsOf(Grouping.Collection);

    /// <summary>The whole program by reporting period.</summary>
    public ImmutableArray<PositivityRow> Periods => RowsOf(Grouping.Period);

    /// <summary>Each site by reporting period.</summary>
    public ImmutableArray<PositivityRow> SitePeriods => RowsOf(Grouping.SiteAndPeriod);

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [table];

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<Sentence> Sentences { get; }

    /// <summary>The rows of one breakdown as a table.</summary>
    /// <param name="grouping">By what.</param>
    /// <returns>A table; without rows where the data have no such breakdown.</returns>
    public Table<PositivityRow> By(Grouping grouping) => table.Only(row => row.Grouping == grouping);

    private ImmutableArray<PositivityRow> RowsOf(Grouping grouping) => [.. table.Rows.Where(row => row.Grouping == grouping)];
}
