namespace ScreenStats.Cli.Results;

/// <summary>One way to verify results.</summary>
internal sealed record AuditSampleResult(
    Figure VerifiedPositives, Figure AuditedNegatives, Figure ConfirmatoryTests, Figure ExpectedMissed, Figure Achieved, Figure Lower, Figure Upper);
