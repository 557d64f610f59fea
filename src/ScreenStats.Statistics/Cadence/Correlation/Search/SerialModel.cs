using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Courses.Quadrature;

namespace ScreenStats.Statistics.Cadence.Correlation.Search;

/// <summary>The cells of a table of serial tests with the parameters that they depend on.</summary>
/// <remarks>
/// Parameters: the sensitivity of each group and day on the normal scale; where leaving is estimated, the logit of staying of people not yet positive after one test, two
/// tests …, and what is added to it for people already positive.
/// </remarks>
internal sealed class SerialModel
{
    private readonly SerialTestOptions options;

    public SerialModel(SerialTests table, SerialTestOptions options)
    {
        this.options = options;
        Still = StillInfected(table, options.Ends);
        Days = [.. table.Cells.Where(cell => cell.Infected > 0).SelectMany(cell => Enumerable.Range(0, cell.Tests).Select(k => (cell.Group, cell.Day + (k * table.GapDays)))).Distinct()];
        Sensitivities = Days.Length;
        var widest = table.Cells.Max(cell => cell.Tests);
        Parameters = Sensitivities + (options.Leavers == LeaverAssumption.Estimated ? widest : 0);
        Cells = [.. table.Cells.Where(cell => cell.Infected > 0).Select(cell => Cell(table, cell))];
    }

    public ImmutableArray<(string Group, int Day)> Days { get; }

    /// <summary>How many of the parameters are sensitivities; they come first.</summary>
    public int Sensitivities { get; }

    public int Parameters { get; }

    public ImmutableArray<ModelCell> Cells { get; }

    /// <summary>By day, the share still infected a test later.</summary>
    public IReadOnlyDictionary<int, double> Still { get; }

    /// <summary>The chance to stay after so many tests for people already positive and for the others.</summary>
    public (double Positive, double Other) Stay(ReadOnlySpan<double> parameters, int tests)
    {
        if (options.Leavers != LeaverAssumption.Estimated) return (1, 1);
        var logit = parameters[Sensitivities + tests - 1];
        return (1 / (1 + Math.Exp(-logit - parameters[^1])), 1 / (1 + Math.Exp(-logit)));
    }

    /// <summary>The chance of a positive among the tests of those who took all of them, and the chance to stay for another.</summary>
    public (double Share, double Staying) Outcome(ModelCell cell, ReadOnlySpan<double> parameters, double[][] chances, double[] weights)
    {
        Span<(double Positive, double Other)> stay = stackalloc (double, double)[cell.Tests.Length];
        for (var k = 0; k < stay.Length; k++) stay[k] = k + 1 < stay.Length || cell.Next is not null ? Stay(parameters, k + 1) : (1, 1);
        double found = 0, others = 0;
        for (var level = 0; level < weights.Length; level++)
        {
            double open = 1, over = 0, positive = 0;
            for (var k = 0; k < cell.Tests.Length; k++)
            {
                if (k > 0)
                {
                    positive *= stay[k - 1].Positive;
                    over = (over + (open * (1 - cell.Still[k - 1]))) * stay[k - 1].Other;
                    open *= cell.Still[k - 1] * stay[k - 1].Other;
                }

                var chance = chances[cell.Tests[k]][level];
                positive += open * chance;
                open *= 1 - chance;
            }

            found += weights[level] * positive;
            others += weights[level] * (open + over);
        }

        var all = found + others;
        return (found / all, ((found * stay[^1].Positive) + (others * stay[^1].Other)) / all);
    }

    public double[][] Chances(ReadOnlySpan<double> parameters, PersonChances people)
    {
        var chances = new double[Sensitivities][];
        for (var i = 0; i < Sensitivities; i++) chances[i] = people.Of(NormalTable.Below(parameters[i]));
        return chances;
    }

    private ModelCell Cell(SerialTests table, SerialCell cell)
    {
        var row = table.Cells.Where(other => other.Group == cell.Group && other.Day == cell.Day).ToDictionary(other => other.Tests);
        var all = options.Leavers == LeaverAssumption.AllFound;
        int[] days = [.. Enumerable.Range(0, cell.Tests).Select(k => cell.Day + (k * table.GapDays))];
        return new ModelCell(
            cell, [.. days.Select(day => Days.IndexOf((cell.Group, day)))], [.. days.Select(day => Still[day])],
            all ? cell.Positives + row[1].Infected - cell.Infected : cell.Positives,
            all ? row[1].Infected : cell.Infected,
            options.Leavers == LeaverAssumption.Estimated && row.TryGetValue(cell.Tests + 1, out var next) ? next.Infected : null);
    }

    private static SortedDictionary<int, double> StillInfected(SerialTests table, EndAssumption ends)
    {
        var last = table.Cells.Max(cell => cell.Day + (cell.Tests * table.GapDays));
        var shares = new SortedDictionary<int, double>();
        for (var (day, before) = (0, 1.0); day <= last; day++)
        {
            // The last share known goes on for the days after it that the table says nothing of.
            var again = table.Cells.Where(cell => cell.Day == day && cell.Tests == 2).Sum(cell => (double)cell.Infected);
            var later = table.Cells.Where(cell => cell.Day == day + table.GapDays && cell.Tests == 1).ToList();
            if (ends == EndAssumption.SomeRecover && again > 0 && later.Count > 0) before = Math.Min(1, later.Sum(cell => (double)cell.Infected) / again);
            shares[day] = before;
        }

        return shares;
    }
}
