using System.Diagnostics;
using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Worth;

namespace ScreenStats.Benchmarks;

/// <summary>
/// How often to screen, and whether it is worth it, for a program: from its counts through all draws to the sentences, with the draws that the program
/// file states and with 10,000, in turn, in one run; against the whole evaluation and a bare loop over as many exponentials as there are days of options.
/// </summary>
internal static class ChoiceTimes
{
    private const int Rounds = 5;
    private const int Many = 10_000;

    public static int Run(string sample)
    {
        var program = ScreeningProgram.Open(sample);
        var (tally, settings) = (program.Read().Tally, program.Settings);
        var many = settings with { Cadence = settings.Cadence with { Draws = Many } };
        var findings = Evaluator.Evaluate(tally, settings);
        string[] flagged = [.. findings.Lots.Where(lot => lot.Flag.HasFlag(Flag.Refuted)).Select(lot => lot.Lot)];
        var options = findings.Cadence.Options.Length;
        var times = new SortedDictionary<string, List<double>>(StringComparer.Ordinal);
        for (var round = 0; round <= Rounds; round++)
        {
            Take("floor", () => Exponentials((long)Many * options * settings.Cadence.Days));
            Take("whole", () => Evaluator.Evaluate(tally, settings));
            Rooms("as stated", settings);
            Rooms("many", many);

            void Rooms(string name, ProgramSettings with)
            {
                CadenceFindings? cadence = null;
                Take($"often, {name}", () => cadence = CadenceAnalysis.Of(tally, with, flagged, findings.Accuracy));
                Take($"worth, {name}", () => WorthAnalysis.Of(tally, with, cadence!, findings.Yield, findings.PredictiveValue));
            }

            void Take(string name, Action work)
            {
                var clock = Stopwatch.StartNew();
                work();
                if (round == 0) return;
                if (!times.TryGetValue(name, out var list)) times[name] = list = [];
                list.Add(clock.Elapsed.TotalSeconds);
            }
        }

        var floor = Median(times["floor"]);
        Print($"{options} options, {settings.Cadence.Days} days; bare loop of {(long)Many * options * settings.Cadence.Days} exponentials {floor:0.000} s on one thread; whole evaluation with {settings.Cadence.Draws} draws {Median(times["whole"]):0.00} s");
        foreach (var (name, draws) in new[] { ("as stated", settings.Cadence.Draws), ("many", Many) })
        {
            var (often, worth) = (Median(times[$"often, {name}"]), Median(times[$"worth, {name}"]));
            Print($"{draws} draws: how often {often:0.00} s, worth {worth:0.00} s; together {(often + worth) / floor:0.0} times the loop, {(often + worth) / Median(times["whole"]):0.00} of the whole evaluation");
        }

        return 0;
    }

    private static double Exponentials(long count)
    {
        var sum = 0.0;
        for (var i = 0L; i < count; i++) sum += Math.Exp(-i / (double)count);
        return sum;
    }

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);

    private static void Print(FormattableString line) => Console.Out.WriteLine(line.ToString(CultureInfo.InvariantCulture));
}
