namespace ScreenStats.Evaluation.Completeness;

/// <summary>How much of one column is recorded.</summary>
/// <param name="Key">Export and column joined by a colon.</param>
/// <param name="Export">Which export.</param>
/// <param name="Column">Canonical name of the column.</param>
/// <param name="Mapped">False where no heading of the export was taken for this column.</param>
/// <param name="Rows">Rows.</param>
/// <param name="Recorded">Rows with a usable value.</param>
public sealed record CompletenessRow(string Key, string Export, string Column, bool Mapped, long Rows, long Recorded)
{
    /// <summary>Rows without a usable value.</summary>
    public long NotRecorded => Rows - Recorded;

    /// <summary>Rows without a usable value among all, in [0, 1]; null without rows.</summary>
    public double? NotRecordedShare => Rows == 0 ? null : (double)NotRecorded / Rows;

    /// <summary>Why there is no share; null where there is one.</summary>
    public string? NotRecordedShareUndefined => Rows == 0 ? "the export has no rows" : null;
}
