namespace ScreenStats.Records.PersonLog;

/// <summary>The codes of what counting finds. Their meaning stands in the catalogue of diagnostics.</summary>
internal static class CountingDiagnostics
{
    public const string Duplicate = "duplicate";

    public const string ConflictingScreenId = "conflicting-screen-id";

    public const string PossibleDuplicate = "possible-duplicate";

    public const string AuditWithoutRun = "audit-without-run";

    public const string ReportBeforeCollection = "report-before-collection";

    public const string TooManyLevels = "too-many-levels";
}
