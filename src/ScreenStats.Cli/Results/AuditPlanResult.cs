namespace ScreenStats.Cli.Results;

/// <summary>What <c>plan audit</c> answers.</summary>
internal sealed record AuditPlanResult(
    string Question, double Sensitivity, double Specificity, double Prevalence, double Width, long Screens, double Confidence,
    long ExpectedPositives, long ExpectedNegatives, AuditSampleResult AllPositives, AuditSampleResult Fewest);
