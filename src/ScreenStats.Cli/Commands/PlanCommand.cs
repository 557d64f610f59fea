using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Planning;
using ScreenStats.Statistics;

namespace ScreenStats.Cli.Commands;

/// <summary><c>plan</c>: how many tests, verified results or runs a question needs.</summary>
internal sealed class PlanCommand : RunnerCommand
{
    private readonly Argument<string> question;
    private readonly Dictionary<string, Option<string>> options = [];

    /// <summary>The questions, and the options of each: those it needs, then those it may have.</summary>
    private static readonly Dictionary<string, (string[] Needs, string[] May)> Questions = new(StringComparer.Ordinal)
    {
        ["width"] = (["--proportion", "--width"], ["--confidence", "--design-effect"]),
        ["zero-events"] = (["--rate"], ["--confidence", "--design-effect"]),
        ["audit"] = (["--sensitivity", "--specificity", "--prevalence", "--width", "--screens"], ["--confidence"]),
        ["lot"] = (["--rate", "--excess", "--lots"], ["--other-runs", "--power"]),
    };

    public PlanCommand()
        : base(
            "plan",
            "How many tests, verified results or runs a question needs",
            "screenstats plan width --proportion 0.01 --width 0.005",
            "screenstats plan zero-events --rate 0.01",
            "screenstats plan audit --sensitivity 0.7 --specificity 0.997 --prevalence 0.01 --width 0.2 --screens 60000",
            "screenstats plan lot --rate 0.0005 --excess 0.005 --lots 20 --power 0.8")
    {
        question = TakeArgument("question", "width: tests for a Wilson interval of a width at a proportion. zero-events: tests of which none positive rules out a rate. "
            + "audit: results to verify for a sensitivity of a width. lot: runs of a lot that show an excess of false positives.");
        question.CompletionSources.Add([.. Questions.Keys]);
        Take("--proportion", "fraction", "width: the expected proportion.");
        Take("--width", "fraction", "width, audit: upper minus lower limit.");
        Take("--rate", "fraction", "zero-events: the rate to rule out. lot: refuted positives per valid test in the other lots.");
        Take("--sensitivity", "fraction", "audit: the expected sensitivity.");
        Take("--specificity", "fraction", "audit: the expected specificity.");
        Take("--prevalence", "fraction", "audit: the expected prevalence among those screened.");
        Take("--screens", "count", "audit: screens in the time in question.");
        Take("--excess", "fraction", "lot: how much higher the rate of the one lot is.");
        Take("--lots", "count", "lot: lots compared at once, this one among them.");
        Take("--other-runs", "count", "lot: valid tests of all other lots together. Default: each has as many as this one.");
        Take("--power", "fraction", "lot: the chance with which it is flagged. Default 0.8.");
        Take("--confidence", "fraction", "width, zero-events, audit: default 0.95; of zero-events one-sided.");
        Take("--design-effect", "number", "width, zero-events: 1 or more. Default 1.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var name = invocation.Text(question);
        if (!Questions.TryGetValue(name, out var takes))
            throw new UsageException($"<question>: \"{name}\" is not known; write {string.Join(", ", Questions.Keys.SkipLast(1))} or {Questions.Keys.Last()}.");
        foreach (var (option, value) in options)
        {
            var written = invocation.Text(value) is not null;
            if (written && !takes.Needs.Contains(option) && !takes.May.Contains(option)) throw new UsageException($"{option} does not belong to plan {name}.");
            if (!written && takes.Needs.Contains(option)) throw new UsageException($"{option} is missing.");
        }

        return name switch
        {
            "width" => Width(invocation),
            "zero-events" => ZeroEvents(invocation),
            "audit" => Audit(invocation),
            _ => Lot(invocation),
        };
    }

    private int Width(Invocation invocation)
    {
        var plan = SampleSize.ForWidth(Fraction(invocation, "--proportion"), Inside(invocation, "--width"), Confidence(invocation), DesignEffect(invocation));
        var why = plan.Reason?.Describe();
        var result = new WidthPlanResult(
            "width", plan.Proportion, plan.Width, plan.Confidence, plan.DesignEffect, Figure.Of(plan.Tests, why), Figure.Of(plan.Achieved, why),
            Figure.Of(plan.Interval?.Lower, why), Figure.Of(plan.Interval?.Upper, why), Figure.Of(plan.WidthWithOneFewer, why ?? "one test is enough"));
        if (Written(invocation, result) is { } done) return done;
        PlanScreen.Write(result, invocation.Screen);
        return ExitCode.Done;
    }

    private int ZeroEvents(Invocation invocation)
    {
        var plan = SampleSize.ForZeroEvents(Inside(invocation, "--rate"), Confidence(invocation), DesignEffect(invocation));
        var why = plan.Reason?.Describe();
        var result = new ZeroEventsPlanResult(
            "zero-events", plan.Rate, plan.Confidence, plan.DesignEffect, Figure.Of(plan.Tests, why), Figure.Of(plan.Achieved, why),
            Figure.Of(plan.UpperLimit, why ?? "a one-sided limit needs a confidence above 0.5"), Figure.Of(plan.ConfidenceWithOneFewer, why ?? "one test is enough"));
        if (Written(invocation, result) is { } done) return done;
        PlanScreen.Write(result, invocation.Screen);
        return ExitCode.Done;
    }

    private int Audit(Invocation invocation)
    {
        var plan = AuditPlanning.ForSensitivity(new AuditQuestion
        {
            Sensitivity = Inside(invocation, "--sensitivity"), Specificity = Inside(invocation, "--specificity"), Prevalence = Inside(invocation, "--prevalence"),
            Width = Inside(invocation, "--width"), Screens = Count(invocation, "--screens", 1, SampleSize.Largest), Confidence = Confidence(invocation),
        });
        var why = plan.Reason?.Describe();
        AuditSampleResult Sample(AuditSample? sample) => new(
            Figure.Of(sample?.VerifiedPositives, why), Figure.Of(sample?.AuditedNegatives, why), Figure.Of(sample?.ConfirmatoryTests, why), Figure.Of(sample?.ExpectedMissed, why),
            Figure.Of(sample?.Achieved, why), Figure.Of(sample?.Interval.Lower, why), Figure.Of(sample?.Interval.Upper, why));
        var asked = plan.Question;
        var result = new AuditPlanResult(
            "audit", asked.Sensitivity, asked.Specificity, asked.Prevalence, asked.Width, asked.Screens, asked.Confidence,
            plan.ExpectedPositives, plan.ExpectedNegatives, Sample(plan.AllPositives), Sample(plan.Fewest));
        if (Written(invocation, result) is { } done) return done;
        PlanScreen.Write(result, invocation.Screen);
        return ExitCode.Done;
    }

    private int Lot(Invocation invocation)
    {
        var (rate, excess) = (Fraction(invocation, "--rate"), Inside(invocation, "--excess"));
        if (rate + excess > 1 || rate == 1) throw new UsageException("--rate and --excess add up to more than 1; together they are the rate of the one lot.");
        var plan = LotPower.Runs(new LotQuestion
        {
            ExpectedRate = rate, Excess = excess, Lots = (int)Count(invocation, "--lots", 2, 100_000),
            OtherRuns = Text(invocation, "--other-runs") is null ? null : Count(invocation, "--other-runs", 1, LotPower.LargestPopulation),
            Power = Text(invocation, "--power") is null ? 0.8 : Inside(invocation, "--power"),
        });
        var why = plan.Reason?.Describe();
        var asked = plan.Question;
        var result = new LotPlanResult(
            "lot", asked.ExpectedRate, asked.Excess, asked.Lots, asked.OtherRuns, asked.Power, asked.Threshold, Figure.Of(plan.Runs, why), Figure.Of(plan.Achieved, why),
            Figure.Of(plan.PowerWithOneFewer, why ?? "one run is enough"), Figure.Of(plan.CheckedTo, why), Figure.Of(plan.FlaggedFrom, why), Figure.Of(plan.RefutedInOtherLots, why));
        if (Written(invocation, result) is { } done) return done;
        PlanScreen.Write(result, invocation.Screen);
        return ExitCode.Done;
    }

    private int? Written<T>(Invocation invocation, T result)
    {
        if (!WantsJson(invocation)) return null;
        invocation.Output.Write(ResultJson.Write(result));
        return ExitCode.Done;
    }

    private void Take(string name, string value, string meaning) => options.Add(name, TakeOption(name, value, meaning));

    private string? Text(Invocation invocation, string name) => invocation.Text(options[name]);

    private double Fraction(Invocation invocation, string name) =>
        Figures.Probability(name, Text(invocation, name) ?? "").Value ?? throw new UsageException($"{name}: 0/0 is no fraction to plan with.");

    private double Inside(Invocation invocation, string name)
    {
        var value = Fraction(invocation, name);
        return value is > 0 and < 1 ? value : throw new UsageException($"{name} must lie between 0 and 1, both excluded.");
    }

    private long Count(Invocation invocation, string name, long least, long most) => Figures.Whole(name, Text(invocation, name) ?? "", least, most);

    private double Confidence(Invocation invocation) => Figures.Confidence("--confidence", Text(invocation, "--confidence") ?? "0.95");

    private double DesignEffect(Invocation invocation)
    {
        var value = Figures.Finite("--design-effect", Text(invocation, "--design-effect") ?? "1");
        return value >= 1 ? value : throw new UsageException("--design-effect must be 1 or more: 1 stands for independent tests.");
    }
}
