using ScreenStats.Warehouse.Contract;

namespace ScreenStats.Warehouse.Sql;

/// <summary>The queries of the confirmatory view: it is read in full, as there are few specimens beside the runs.</summary>
internal sealed class ConfirmatorySql(View view, Dialect dialect)
{
    /// <summary>Every row, in the order in which <c>SpecimenFetch</c> reads the columns; those the view lacks are NULL.</summary>
    public Statement Rows() => new($"SELECT {Columns} FROM {view.Quoted}") { What = "the specimens" };

    private string Columns => string.Join(", ",
    [
        "person", "collected_on IS NULL", "CASE WHEN collected_on < " + ScreeningSql.FirstDate + " OR collected_on > " + ScreeningSql.LastDate + " THEN NULL ELSE " + Dialect.Day("collected_on") + " END",
        dialect.Seconds("collected_at"), "result",
        view.Has(ViewContract.ReportedAt) ? dialect.Seconds(ViewContract.ReportedAt) : "NULL",
        view.Has(ViewContract.ReportedOn) ? Dialect.Day(ViewContract.ReportedOn) : "NULL",
        Or(ViewContract.Method), Or(ViewContract.Reason), Or(ViewContract.SamplingStratum), Or(ViewContract.RowNumber),
    ]);

    private string Or(string column) => view.Has(column) ? column : "NULL";
}
