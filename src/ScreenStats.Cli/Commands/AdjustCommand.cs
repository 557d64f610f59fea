using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Multiplicity;

namespace ScreenStats.Cli.Commands;

/// <summary><c>adjust 0.0001,0.0004</c>: p-values of comparisons made at once.</summary>
internal sealed class AdjustCommand : RunnerCommand
{
    private readonly Argument<string> pValues;
    private readonly Option<string> method;
    private readonly Option<string> level;

    public AdjustCommand()
        : base("adjust", "P-values adjusted for the number of comparisons made at once",
            "screenstats adjust 0.0001,0.0004,0.0019,0.0095,0.0201",
            "screenstats adjust 0.004,0.03,0.2 --method all --level 0.01")
    {
        pValues = TakeArgument("p-values", "P-values separated by commas, such as 0.004,0.03,0.2.");
        method = TakeOption("--method", "name", string.Join(", ", AdjustmentMethods.All.Select(one => one.Name())) + ", or all. Default holm.");
        method.CompletionSources.Add([.. AdjustmentMethods.All.Select(one => one.Name()), "all"]);
        level = TakeOption("--level", "fraction", "The adjusted values at or below it are counted. Default 0.05.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var values = Figures.PValues("<p-values>", invocation.Text(pValues));
        var methods = Methods(invocation.Text(method) ?? "holm");
        var most = Figures.Confidence("--level", invocation.Text(level) ?? "0.05");
        var result = new AdjustResult(values, most, [.. methods.Select(one =>
        {
            var adjusted = MultipleComparisons.Adjust(one, values);
            return new AdjustedItem(one.Name(), [.. adjusted], adjusted.Count(p => p <= most));
        })]);

        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(result));
        else Render(result, methods, invocation.Screen);
        return ExitCode.Done;
    }

    private static ImmutableArray<AdjustmentMethod> Methods(string name)
    {
        if (name == "all") return [.. AdjustmentMethods.All];
        var found = AdjustmentMethods.All.Where(one => string.Equals(one.Name(), name, StringComparison.Ordinal)).ToImmutableArray();
        return found.IsEmpty
            ? throw new UsageException($"--method: \"{name}\" is not known; write one of {string.Join(", ", AdjustmentMethods.All.Select(one => one.Name()))}, or all.")
            : found;
    }

    private static void Render(AdjustResult result, ImmutableArray<AdjustmentMethod> methods, Screen screen)
    {
        screen.Title($"{Show.Count(result.PValues.Length)} comparisons");
        screen.Line();
        screen.Table(
            [new("p", true), .. result.Adjusted.Select(one => new TableColumnPlan(one.Method, true))],
            result.PValues.Select((p, i) => (string[])[Show.Number(p), .. result.Adjusted.Select(one => Show.Number(one.Values[i]))]));
        screen.Line();
        for (var i = 0; i < methods.Length; i++)
        {
            screen.Line(string.Create(
                CultureInfo.InvariantCulture,
                $"{methods[i].Name()}: {result.Adjusted[i].AtOrBelowLevel} at or below {result.Level}; keeps below it the {methods[i].Controls()}"));
        }

        screen.Caution();
    }
}
