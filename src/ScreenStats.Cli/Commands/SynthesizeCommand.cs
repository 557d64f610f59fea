using System.CommandLine;
using System.Globalization;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Synthesis;

namespace ScreenStats.Cli.Commands;

/// <summary><c>synthesize DIR --seed N</c>: a synthetic program with known truth.</summary>
internal sealed class SynthesizeCommand : RunnerCommand
{
    private readonly Argument<string> folder;
    private readonly Option<string> seed;
    private readonly Option<string> plan;
    private readonly Option<string> runs;

    public SynthesizeCommand()
        : base("synthesize", "A synthetic program with known truth, to try things on",
            "screenstats synthesize made-up --seed 1", "screenstats synthesize made-up --seed 1 --plan plan.json --runs 100000")
    {
        folder = TakeArgument("folder", "Where the exports, program.json, plan.json and truth.json are written.");
        seed = TakeOption("--seed", "number", "The same seed and plan give the same bytes.", required: true);
        plan = TakeOption("--plan", "file", "What is true of the program, as JSON. Default: a plain program of three sites.");
        runs = TakeOption("--runs", "number", "About how many screening runs: the plan's people are multiplied.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var number = Seed(invocation.Text(seed)!);
        var planned = invocation.Text(plan) is { } file ? SynthesisPlan.Read(invocation.Environment.PathOf(file)) : SynthesisPlan.Standard;
        if (invocation.Text(runs) is { } wanted)
        {
            var count = Figures.Whole("--runs", wanted, 1, 10_000_000_000);
            try
            {
                planned = planned.ScaledTo(count);
            }
            catch (ArgumentOutOfRangeException)
            {
                throw new UsageException("--runs: so many runs need more than 16,000,000 people; give the plan more weeks.");
            }
        }

        var place = invocation.Environment.OutputPathOf("<folder>", invocation.Text(folder));
        var truth = SyntheticProgram.Write(planned, number, place, invocation.Environment.Cancelled);

        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(truth));
        else Render(truth, invocation.Text(folder), invocation.Screen);
        return ExitCode.Done;
    }

    private static ulong Seed(string text) =>
        ulong.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var seed)
            ? seed
            : throw new UsageException($"--seed: \"{text}\" must be a whole number from 0 to 18446744073709551615.");

    private static void Render(SynthesisTruth truth, string written, Screen screen)
    {
        screen.Title("A synthetic program: nothing in it happened to anybody");
        screen.Table(
            [new("what is true"), new("number", true)],
            [
                ["rows of the screening export", Show.Count(truth.Rows)],
                ["counted runs", Show.Count(truth.Counted)],
                ["positive, with a detectable infection", Show.Count(truth.DetectedPositive)],
                ["positive, without one", Show.Count(truth.FalsePositive)],
                ["inconclusive or invalid", Show.Count(truth.Inconclusive + truth.Invalid)],
                ["people", Show.Count(truth.People)],
                ["rows of the confirmatory export", Show.Count(truth.ConfirmatoryRows)],
            ]);
        screen.Line();
        screen.Line($"Written to {written}; the whole truth is in truth.json.");
        screen.Line($"Next: screenstats evaluate {written}");
    }
}
