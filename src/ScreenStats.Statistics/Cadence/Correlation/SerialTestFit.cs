using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Correlation.Search;
using ScreenStats.Statistics.Cadence.Courses.Quadrature;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Cadence.Correlation;

/// <summary>How far misses repeat in a person, fitted to a table of serial tests.</summary>
/// <remarks>
/// <para>A person of effect z, standard normal, is positive on a day of sensitivity s with chance Φ((Φ⁻¹(s) + √ρ z)/√(1 - ρ)), independently of the other tests
/// given z; over people that is s. A cell holds the chance of a positive among its tests for those who took them all, by the assumptions on leavers
/// and on recovery (<see cref="LeaverAssumption"/>, <see cref="EndAssumption"/>). The sensitivities by group and day, ρ, one for all groups, and the chances of staying are those of the greatest product of
/// the cells' binomial likelihoods, for a cell of the table has lost who belongs to it: a composite likelihood. Limits of ρ: profile, its fall
/// divided by what sharing people makes of the variance (<see cref="SerialTestEstimate.SharedPeopleFactor"/>). The share that recovers is taken as
/// exact, and so is who stays. In 480 simulated tables of 150 people who are in several rows the limits of 95 % covered each time: they are wide. Where the profile has not fallen enough by 0 or by <see cref="HighestCorrelation"/> the limit is that end.</para>
/// <para>What a table says of ρ hangs on what cannot be seen in it: it holds people positive by the confirmatory test on the first day, of whom some are over the infection by the
/// next test (then misses seem to repeat), and some leave. So look at all assumptions. A ρ so found is that of people with a positive confirmatory
/// test, from the day of the first on.</para>
/// <para>Source: the probit effect is that of a multivariate probit model with one factor; checked against an own likelihood and optimiser in scipy and against
/// tables simulated with a known ρ.</para>
/// </remarks>
public static class SerialTestFit
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "serial-tests-probit";

    /// <summary>The highest correlation that is looked at.</summary>
    public const double HighestCorrelation = 0.99;

    private static readonly double[] Grid = [0, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.93, 0.96, 0.98, HighestCorrelation];

    /// <summary>Fits a table under one pair of assumptions.</summary>
    /// <param name="table">The table.</param>
    /// <param name="options">What is assumed.</param>
    /// <returns>The correlation with limits, the sensitivities, and each cell beside its fit.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An option outside its domain.</exception>
    public static SerialTestEstimate Of(SerialTests table, SerialTestOptions options)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(options);
        options.Check();
        var model = new SerialModel(table, options);
        var search = new SerialSearch(model);
        var profile = new SerialProfile(search, Starts(model), Grid);
        var repeated = model.Cells.Any(cell => cell.Cell.Tests > 1);
        var (best, height, parameters) = repeated ? profile.Best() : (0, profile.At(0).Height, profile.At(0).Parameters);
        var factor = repeated ? SharedPeople.Factor(model, search, best, parameters) : 1;
        var need = Square(Quantile.Normal(options.Confidence)) / 2;
        return new SerialTestEstimate
        {
            Options = options,
            Correlation = repeated
                ? Estimate.Of(best, profile.Limits(best, height, need * factor), Method, options.Confidence)
                : Estimate.Undefined(UndefinedReason.NoRepeatedTests),
            SharedPeopleFactor = factor,
            ProbabilityIfIndependent = repeated ? IfIndependent(Math.Max(0, 2 * (height - profile.At(0).Height) / factor)) : null,
            Sensitivities = [.. model.Days.Select((day, i) => new SerialSensitivity(day.Group, day.Day, NormalTable.Below(parameters[i])))],
            StayingOddsRatio = options.Leavers == LeaverAssumption.Estimated && model.Cells.Any(cell => cell.Next is not null) ? Math.Exp(parameters[^1]) : null,
            Recoveries =
            [
                .. model.Cells.SelectMany(cell => Enumerable.Range(0, cell.Tests.Length - 1).Select(k => cell.Cell.Day + (k * table.GapDays))).Distinct().Order()
                    .Select(day => new SerialRecovery(day, model.Still[day])),
            ],
            LogLikelihood = height,
            Cells = Cells(table, model, parameters, best, options.Confidence),
        };
    }

    /// <summary>Fits a table under every pair of assumptions: how far apart they lie is what the table leaves open.</summary>
    /// <param name="table">The table.</param>
    /// <param name="confidence">Confidence of the limits, in (0, 1).</param>
    /// <returns>The fits and the lowest and highest of their figures.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A confidence outside its domain.</exception>
    public static SerialTestBounds Bounds(SerialTests table, double confidence = 0.95)
    {
        ImmutableArray<SerialTestEstimate> fits =
        [
            .. from ends in Enum.GetValues<EndAssumption>()
               from leavers in Enum.GetValues<LeaverAssumption>()
               select Of(table, new SerialTestOptions { Ends = ends, Leavers = leavers, Confidence = confidence }),
        ];
        return fits.Any(fit => !fit.Correlation.IsDefined)
            ? new SerialTestBounds(fits, null, null)
            : new SerialTestBounds(
                fits, new Interval(fits.Min(fit => fit.Correlation.Value!.Value), fits.Max(fit => fit.Correlation.Value!.Value)),
                new Interval(fits.Min(fit => fit.Correlation.Lower!.Value), fits.Max(fit => fit.Correlation.Upper!.Value)));
    }

    private static ImmutableArray<SerialCellFit> Cells(SerialTests table, SerialModel model, double[] parameters, double correlation, double confidence)
    {
        var people = new PersonChances(correlation);
        var chances = model.Chances(parameters, people);
        var fitted = model.Cells.ToDictionary(cell => cell.Cell, cell => model.Outcome(cell, parameters, chances, people.Weights).Share);
        return
        [
            .. table.Cells.Where(cell => cell.Infected > 0).Select(cell =>
            {
                var first = Enumerable.Range(0, cell.Tests).Select(k => table.Cells.Where(other =>
                    other.Group == cell.Group && other.Tests == 1 && other.Infected > 0 && other.Day == cell.Day + (k * table.GapDays)).Select(other => (double?)other.Positives / other.Infected).FirstOrDefault());
                return new SerialCellFit(
                    cell, ProportionInterval.ClopperPearson(cell.Positives, cell.Infected, confidence).ToEstimate(), fitted[cell], 1 - first.Aggregate((double?)1, (missed, share) => missed * (1 - share)));
            }),
        ];
    }

    /// <summary>Where the search begins: near what the first tests of the day say, and people already positive staying less and more than the others.</summary>
    private static IEnumerable<double[]> Starts(SerialModel model)
    {
        double[] odds = model.Parameters == model.Sensitivities ? [0] : [-1.5, 1.5];
        foreach (var staying in odds)
        {
            var start = new double[model.Parameters];
            foreach (var cell in model.Cells.Where(cell => cell.Tests.Length == 1))
                start[cell.Tests[0]] = LogitScale.Logit((cell.Positives + 0.5) / (cell.Infected + 1)) / 1.7;
            for (var i = model.Sensitivities; i < model.Parameters - 1; i++) start[i] = 2;
            if (model.Parameters > model.Sensitivities) start[^1] = staying;
            yield return start;
        }
    }

    /// <summary>The fall at a bound: half of the time there is none.</summary>
    private static double IfIndependent(double ratio) => ratio == 0 ? 1 : TailProbability.ChiSquare(ratio, 1) / 2;

    private static double Square(double value) => value * value;
}
