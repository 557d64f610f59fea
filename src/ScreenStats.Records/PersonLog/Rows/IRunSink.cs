namespace ScreenStats.Records.PersonLog.Rows;

/// <summary>Takes the rows of the screening export. One per worker thread; batches may come in any order.</summary>
internal interface IRunSink
{
    /// <summary>Takes valid rows; the span is reused afterwards.</summary>
    void Take(ReadOnlySpan<RunRow> rows);
}
