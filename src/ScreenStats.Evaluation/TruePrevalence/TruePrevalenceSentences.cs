using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.TruePrevalence;

/// <summary>True prevalence in words.</summary>
internal static class TruePrevalenceSentences
{
    private const string Root = "truePrevalence";

    public static ImmutableArray<Sentence> Of(TruePrevalenceFindings findings, ReportPeriod period)
    {
        var program = findings.Program;
        var lead = program.Lead;
        if (lead.Estimate is null) return [new Sentence($"The prevalence behind the positivity is undefined: {lead.EstimateUndefined}.")];
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        sentences.Add(Whole(program));
        if (program.BelowFalsePositiveRate) sentences.Add(Below());
        if (program.BelowConfirmed) sentences.Add(Confirmed(program));
        var word = period switch { ReportPeriod.Day => "day", ReportPeriod.Month => "month", _ => "week" };
        if (findings.Periods.Length > 1)
        {
            if (Highest(findings) is { } highest) sentences.Add(Peak(highest, word));
            if (findings.PeriodsAtZero > 0)
            {
                sentences.Add(new Sentence(
                    "In {0} of {1} " + word + "s fewer tests were positive than the stated false positives alone would give; there it is 0.",
                    Figure.Count(Root + ".periodsAtZero", findings.PeriodsAtZero), Figure.Count(Root + ".periodCount", findings.Periods.Length)));
            }
        }

        if (program.Devices.Length > 1)
        {
            sentences.Add(new Sentence(
                $"Where several devices were used, their stated accuracies are weighted by their valid tests in each {word}, as if people tested with each were infected as often."));
        }

        if (program.TestsWithoutAccuracy > 0)
        {
            sentences.Add(new Sentence(
                "{0} valid " + Figure.Plural(program.TestsWithoutAccuracy, "test is", "tests are") + " left out: no accuracy is stated for the device.",
                Figure.Count(Root + ".program.testsWithoutAccuracy", program.TestsWithoutAccuracy)));
        }

        return sentences.ToImmutable();
    }

    private static Sentence Whole(TruePrevalenceFinding program) => new(
        "{0} of valid tests were positive; by the stated accuracy of the devices {1} were done on infected people ({2} interval {3} to {4}){5}.".Replace("{5}", ShareWords.Few(program.Apparent), StringComparison.Ordinal),
        Say.Share(Root + ".program.apparent.estimate", program.Apparent.Estimate),
        Estimate(Root + ".program", program, "estimate", value => value.Estimate),
        Say.Confidence($"{Path(Root + ".program", program)}.confidence", program.Lead.Confidence),
        Estimate(Root + ".program", program, "widenedLower", value => value.WidenedLower),
        Estimate(Root + ".program", program, "widenedUpper", value => value.WidenedUpper));

    private static Sentence Below() => new(
        "Fewer tests were positive than the stated false positives alone would give: the prevalence is given as 0, and the stated specificity is not compatible with these data, or only by chance.");

    private static Sentence Confirmed(TruePrevalenceFinding program) => new(
        "Yet {0} of valid tests were positive and confirmed, which is more: the stated accuracy expects more false positives than were seen, so the stated specificity is too low for these data, or only by chance so few were seen.",
        Say.Share(Root + ".program.confirmedShare", program.ConfirmedShare));

    private static Sentence Peak(TruePrevalenceFinding highest, string word)
    {
        var path = FigurePath.Row(Root + ".periods", highest.Key);
        return new Sentence(
            $"It was highest in the {word} from {{0}}: {{1}} ({{2}} to {{3}}){ShareWords.Few(highest.Apparent)}.",
            Figure.Day(path + ".periodStart", highest.PeriodStart),
            Estimate(path, highest, "estimate", value => value.Estimate),
            Estimate(path, highest, "widenedLower", value => value.WidenedLower),
            Estimate(path, highest, "widenedUpper", value => value.WidenedUpper));
    }

    /// <summary>The period with the highest estimate among those that are not read from a handful of tests.</summary>
    private static TruePrevalenceFinding? Highest(TruePrevalenceFindings findings) => findings.Periods
        .Where(period => period.Lead.Estimate > 0 && period.Apparent.Trials >= 100)
        .MaxBy(period => period.Lead.Estimate);

    private static string Path(string part, TruePrevalenceFinding finding) => FigurePath.Row(part + ".estimates", finding.Lead.Method);

    private static FigureReference Estimate(string part, TruePrevalenceFinding finding, string name, Func<PrevalenceEstimate, double?> of) =>
        Say.Share($"{Path(part, finding)}.{name}", of(finding.Lead));
}
