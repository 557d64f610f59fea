using ScreenStats.Statistics.Cadence.Courses.Quadrature;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Cadence.Correlation.Search;

/// <summary>The greatest composite likelihood over all parameters at a given correlation, by damped Fisher scoring.</summary>
internal sealed class SerialSearch(SerialModel model)
{
    /// <summary>Sensitivities are looked for within this distance of 0 on the normal scale; logits of staying within three times as much.</summary>
    public const double Widest = 4;

    private const double Step = 1e-4;

    /// <summary>The greatest logarithm of the likelihood, from parameters that are moved to where it is.</summary>
    public double Climb(double correlation, double[] parameters)
    {
        var people = new PersonChances(correlation);
        var (height, gradient, information) = Slopes(people, parameters);
        var damping = 1e-3;
        for (var step = 0; step < 200 && damping < 1e12; step++)
        {
            var next = Moved(parameters, gradient, information, damping);
            var reached = Height(people, next);
            if (!(reached > height))
            {
                damping = Math.Max(damping * 8, 1e-6);
                continue;
            }

            var gain = reached - height;
            next.CopyTo(parameters, 0);
            (height, gradient, information) = Slopes(people, parameters);
            damping = Math.Max(damping / 8, 1e-12);
            if (gain < 1e-10) break;
        }

        return height;
    }

    /// <summary>The chance of a positive in each cell, and how it moves with each parameter.</summary>
    public (double Share, double[] Slopes)[] Shares(PersonChances people, double[] parameters) =>
        [.. Outcomes(people, parameters).Select(outcome => (outcome.Share, outcome.ShareSlopes))];

    /// <summary>The parameters that a limit does not hold.</summary>
    public bool[] Free(double[] parameters) => [.. parameters.Select((value, i) => Math.Abs(value) < Limit(i) - 1e-6)];

    private double Height(PersonChances people, double[] parameters)
    {
        var chances = model.Chances(parameters, people);
        var sum = 0.0;
        foreach (var cell in model.Cells)
        {
            var (share, staying) = model.Outcome(cell, parameters, chances, people.Weights);
            sum += Log(cell.Positives, cell.Infected, share);
            if (cell.Next is { } next) sum += Log(next, cell.Cell.Infected, staying);
        }

        return sum;
    }

    private (double Height, double[] Gradient, double[,] Information) Slopes(PersonChances people, double[] parameters)
    {
        var (height, gradient, information) = (0.0, new double[parameters.Length], new double[parameters.Length, parameters.Length]);
        void Add(double events, double trials, double share, double[] slopes)
        {
            height += Log(events, trials, share);
            var spread = Math.Max(share * (1 - share), 1e-12);
            for (var i = 0; i < slopes.Length; i++)
            {
                if (slopes[i] == 0) continue;
                gradient[i] += (events - (trials * share)) * slopes[i] / spread;
                for (var j = 0; j <= i; j++) information[i, j] += trials * slopes[i] * slopes[j] / spread;
            }
        }

        var outcomes = Outcomes(people, parameters);
        for (var c = 0; c < outcomes.Length; c++)
        {
            var cell = model.Cells[c];
            Add(cell.Positives, cell.Infected, outcomes[c].Share, outcomes[c].ShareSlopes);
            if (cell.Next is { } next) Add(next, cell.Cell.Infected, outcomes[c].Staying, outcomes[c].StayingSlopes);
        }

        return (height, gradient, information);
    }

    private (double Share, double[] ShareSlopes, double Staying, double[] StayingSlopes)[] Outcomes(PersonChances people, double[] parameters)
    {
        var chances = model.Chances(parameters, people);
        double[] up = [.. parameters.Select(value => value + Step)], down = [.. parameters.Select(value => value - Step)];
        var (higher, lower) = (model.Chances(up, people), model.Chances(down, people));
        return [.. model.Cells.Select(cell =>
        {
            var (share, staying) = model.Outcome(cell, parameters, chances, people.Weights);
            var (shareSlopes, stayingSlopes) = (new double[parameters.Length], new double[parameters.Length]);
            foreach (var i in cell.Tests.Concat(Enumerable.Range(model.Sensitivities, parameters.Length - model.Sensitivities)))
            {
                var (own, kept) = (parameters[i], i < chances.Length ? chances[i] : []);
                (double Share, double Staying) At(double value, double[][] moved)
                {
                    parameters[i] = value;
                    if (i < chances.Length) chances[i] = moved[i];
                    var outcome = model.Outcome(cell, parameters, chances, people.Weights);
                    parameters[i] = own;
                    if (i < chances.Length) chances[i] = kept;
                    return outcome;
                }

                var (after, before) = (At(up[i], higher), At(down[i], lower));
                shareSlopes[i] = (after.Share - before.Share) / (2 * Step);
                stayingSlopes[i] = (after.Staying - before.Staying) / (2 * Step);
            }

            return (share, shareSlopes, staying, stayingSlopes);
        })];
    }

    private double[] Moved(double[] parameters, double[] gradient, double[,] information, double damping)
    {
        var size = parameters.Length;

        // What is at a limit and would go beyond stays there.
        int[] free = [.. Enumerable.Range(0, size).Where(i => Math.Abs(parameters[i]) < Limit(i) || gradient[i] * parameters[i] < 0)];
        var damped = new double[free.Length, free.Length];
        for (var i = 0; i < free.Length; i++)
        {
            for (var j = 0; j <= i; j++) damped[i, j] = information[free[i], free[j]];
            damped[i, i] += (damping * damped[i, i]) + 1e-9;
        }

        var next = (double[])parameters.Clone();
        if (SymmetricMatrix.Factor(damped, 1e-14, out _) is not { } factor) return next;
        var step = SymmetricMatrix.Solve(factor, [.. free.Select(i => gradient[i])]);
        for (var i = 0; i < free.Length; i++) next[free[i]] = Math.Clamp(parameters[free[i]] + Math.Clamp(step[i], -2, 2), -Limit(free[i]), Limit(free[i]));
        return next;
    }

    private double Limit(int parameter) => parameter < model.Sensitivities ? Widest : 3 * Widest;

    private static double Log(double events, double trials, double share) =>
        (events == 0 ? 0 : events * Math.Log(Math.Max(share, 1e-300))) + (trials == events ? 0 : (trials - events) * Math.Log(Math.Max(1 - share, 1e-300)));
}
