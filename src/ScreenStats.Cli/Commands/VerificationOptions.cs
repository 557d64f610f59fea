using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Verification;

namespace ScreenStats.Cli.Commands;

/// <summary>The counts of a partly verified screen as <c>accuracy</c> and <c>bounds</c> take them.</summary>
internal sealed record VerificationOptions(
    Option<string> Positives, Option<string> Negatives, Option<string> UnverifiedPositives, Option<string> UnverifiedNegatives,
    Option<string> ConfirmatorySensitivity, Option<string> ConfirmatorySpecificity)
{
    /// <summary>The counts as written; negatives left out are none verified.</summary>
    public VerificationCounts Counts(Invocation invocation)
    {
        var positives = Figures.Counts("--positives", invocation.Text(Positives)!);
        var negatives = Figures.Counts("--negatives", invocation.Text(Negatives) ?? "0/0");
        var morePositives = Count(invocation, UnverifiedPositives);
        var moreNegatives = Count(invocation, UnverifiedNegatives);
        if (positives.Trials > Most || negatives.Trials > Most) throw new UsageException($"--positives and --negatives: a count may be {Most} at most.");
        return new VerificationCounts(
            positives.Trials + morePositives, positives.Successes, positives.Trials - positives.Successes,
            negatives.Trials + moreNegatives, negatives.Successes, negatives.Trials - negatives.Successes);
    }

    /// <summary>The stated accuracy of the confirmatory test: both or neither.</summary>
    public (ProbabilityFigure Sensitivity, ProbabilityFigure Specificity)? Confirmatory(Invocation invocation)
    {
        var sensitivity = invocation.Text(ConfirmatorySensitivity);
        var specificity = invocation.Text(ConfirmatorySpecificity);
        if (sensitivity is null && specificity is null) return null;
        if (sensitivity is null || specificity is null)
            throw new UsageException($"--confirmatory-{(sensitivity is null ? "sensitivity" : "specificity")} is missing: state both, or neither for a confirmatory test taken as the truth.");
        return (Stated("--confirmatory-sensitivity", sensitivity), Stated("--confirmatory-specificity", specificity));
    }

    private const long Most = 1_000_000_000_000_000;

    private static ProbabilityFigure Stated(string name, string text)
    {
        var figure = Figures.Probability(name, text);
        return figure.Statement is null ? throw new UsageException($"{name}: 0/0 states no accuracy; write a fraction or counts such as 98/134.") : figure;
    }

    private static long Count(Invocation invocation, Option<string> option) =>
        invocation.Text(option) is { } text ? Figures.Whole(option.Name, text, 0, Most) : 0;

    /// <summary>The statement of a figure that was checked to be one.</summary>
    public static AccuracyStatement Statement(ProbabilityFigure figure) => figure.Statement ?? AccuracyStatement.Exact(1);
}
