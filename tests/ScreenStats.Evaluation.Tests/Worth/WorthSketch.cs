using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Counting.Programs.Costs;
using ScreenStats.Evaluation.Tests.Cadence;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Tests.Worth;

/// <summary>Programs that state what screening costs.</summary>
internal static class WorthSketch
{
    /// <summary>Everything priced, nothing uncertain.</summary>
    public static readonly CostSettings Exact = new()
    {
        Currency = "EUR",
        PriceYear = 2025,
        Screen = new StatedRange(5),
        ConfirmatoryTest = new StatedRange(60),
        IsolationDay = new StatedRange(200),
        WorkingDay = new StatedRange(250),
        InfectionAverted = new StatedRange(4000),
        InfectiousDay = new StatedRange(600),
    };

    /// <summary>The same in parts and with ranges.</summary>
    public static readonly CostSettings Ranged = Exact with
    {
        Screen = null,
        Kit = new StatedRange(3, 2, 5),
        OperatorMinutes = new StatedRange(4, 2, 6),
        OperatorHour = new StatedRange(30, 25, 40),
        Supervision = new StatedRange(0.5, 0.2, 1),
        Waste = new StatedRange(0.1),
        ConfirmatoryTest = new StatedRange(60, 40, 90),
        IsolationDay = new StatedRange(200, 150, 260),
        WorkingDay = new StatedRange(250, 200, 300),
        Illness = new StatedRange(1000, 500, 2000),
        Outbreak = new StatedRange(9000, 4000, 20000),
        InfectionAverted = new StatedRange(4000, 2000, 8000),
    };

    /// <summary>As in the sketch of how often, exact, with a share that spreads inside, and three ways of screening.</summary>
    public static readonly CadenceSettings Cadence = CadenceSketch.Exact with { BroughtIn = new StatedRange(0.6), Options = [.. CadenceWords.Usual.Where(option => option.Name is "none" or "weekly" or "twice-weekly" or "daily")], Planned = CadenceWords.Usual.Single(option => option.Name == "weekly") };

    /// <summary>The same with ranges.</summary>
    public static readonly CadenceSettings RangedCadence = CadenceSketch.Ranged with { Options = Cadence.Options, Planned = Cadence.Planned };

    public static WorthFindings Worth(this Tally tally, CostSettings? costs = null, CadenceSettings? cadence = null, Func<ProgramSettings, ProgramSettings>? more = null)
    {
        var settings = new ProgramSettings { Cadence = cadence ?? Cadence, Costs = costs ?? Exact, Policy = new PolicySettings { IsolationDays = 7 } };
        return Evaluator.Evaluate(tally, more is null ? settings : more(settings)).Worth;
    }

    public static WorthOption Option(this WorthFindings findings, string option, WorthConfirmation confirmation = WorthConfirmation.Confirmed) =>
        findings.Options.Single(row => row.Option == option && row.Confirmation == confirmation);

    /// <summary>The options to choose from: all but what was done.</summary>
    public static IEnumerable<WorthOption> Choices(this WorthFindings findings) => findings.Options.Where(row => !row.IsAsDone);

    public static string Text(this WorthFindings findings) => string.Join(' ', findings.Sentences.Select(sentence => sentence.Text));
}
