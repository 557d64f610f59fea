namespace ScreenStats.Records.PersonLog.Checks;

/// <summary>The codes of what counting finds. Their meaning stands in the catalogue of diagnostics.</summary>
internal static class CountingDiagnostics
{
    public const string Duplicate = "duplicate";

    public const string ConflictingScreenId = "conflicting-screen-id";

    public const string PossibleDuplicate = "possible-duplicate";

    public const string AuditWithoutRun = "audit-without-run";

    public const string AuditStrataOverlap = "audit-strata-overlap";

    public const string AuditStrataUnexplained = "audit-strata-unexplained";

    public const string AuditStrataByName = "audit-strata-by-name";

    public const string NegativesOutsideStrata = "negatives-outside-strata";

    public const string AuditOutsideStratum = "audit-outside-stratum";

    public const string AuditStratumTooSmall = "audit-stratum-too-small";

    public const string ReportBeforeCollection = "report-before-collection";

    public const string TooManyLevels = "too-many-levels";
}
