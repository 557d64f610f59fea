using System.Collections.Immutable;

namespace ScreenStats.Statistics.Economics.Uncertainty.Information;

/// <summary>What it would be worth to know everything, or one parameter, before choosing: no study is worth more.</summary>
/// <remarks>
/// <para>Of everything: the mean over draws of the loss, the highest net benefit of the draw minus that of the option best on average; 0 or more draw by draw.</para>
/// <para>Of one parameter: the expected net benefit of each option given the parameter is estimated by least squares on a restricted cubic spline of it (seven knots at
/// quantiles, straight beyond the outer ones), by group means where it has ten values or fewer; the value is the mean gain of choosing by these. The fit
/// follows chance a little, so that a parameter that does not matter has a small value above 0: judge it by the standard error. That error is the one of the mean gain of the rule
/// found, over draws. The value is held at or below that of everything.</para>
/// <para>Sources: Raiffa H, Schlaifer R, Applied Statistical Decision Theory, 1961; Strong M, Oakley JE, Brennan A, Med Decis Making 2014;34:311-326; Harrell FE, Regression
/// Modeling Strategies, 2001, section 2.4 (all from memory).</para>
/// </remarks>
public static class PerfectInformation
{
    /// <summary>The name in tables of the value of knowing everything.</summary>
    public const string Method = "mean-loss";

    /// <summary>The name in tables of the value of knowing one parameter.</summary>
    public const string RegressionMethod = "regression-on-spline";

    /// <summary>The same where the parameter has few values.</summary>
    public const string GroupMethod = "group-means";

    /// <summary>The value of knowing everything.</summary>
    /// <param name="table">Net benefits.</param>
    /// <returns>0 or more; with weights an exact sum without standard error.</returns>
    public static InformationValue OfEverything(NetBenefitTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        var losses = Losses(table);
        var value = WeightedMean.Of(losses, table.Weights);
        return new InformationValue(
            table.Best, table.Means[table.Best], Math.Max(value, 0), table.Weights is null ? StandardError(losses) : null, table.Weights is null ? table.Draws : null, Method);
    }

    /// <summary>What the option best on average loses in each draw against the best of that draw.</summary>
    /// <param name="table">Net benefits.</param>
    /// <returns>One figure for each draw, 0 or more.</returns>
    public static ImmutableArray<double> Losses(NetBenefitTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        return [.. Enumerable.Range(0, table.Draws).Select(draw => table.Rows.Max(row => row[draw]) - table.Rows[table.Best][draw])];
    }

    /// <summary>The value of knowing one parameter.</summary>
    /// <param name="table">Net benefits, drawn.</param>
    /// <param name="parameter">The parameter in the same draws, finite.</param>
    /// <returns>From 0 to the value of knowing everything; 0 where the parameter is fixed.</returns>
    /// <exception cref="ArgumentException">Not as many values as draws, or a table with weights.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value that is not finite.</exception>
    public static InformationValue OfParameter(NetBenefitTable table, IReadOnlyList<double> parameter)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(parameter);
        if (table.Weights is not null) throw new ArgumentException("The value of one parameter needs draws, not states with weights.", nameof(table));
        if (parameter.Count != table.Draws) throw new ArgumentException("There must be a value of the parameter for each draw.", nameof(parameter));
        foreach (var value in parameter) Guard.SignedAmount(value, nameof(parameter));

        var means = ConditionalMeans.Given(parameter);
        var best = table.Rows[table.Best];
        var fitted = new double[table.Options][];
        for (var option = 0; option < table.Options; option++)
        {
            if (option != table.Best) fitted[option] = means.Of([.. table.Rows[option].Zip(best, (own, other) => own - other)]);
        }

        var gain = new double[table.Draws];
        double sum = 0;
        for (var draw = 0; draw < table.Draws; draw++)
        {
            var (highest, chosen) = (0.0, table.Best);
            for (var option = 0; option < table.Options; option++)
            {
                if (option != table.Best && fitted[option][draw] > highest) (highest, chosen) = (fitted[option][draw], option);
            }

            sum += highest;
            gain[draw] = table.Rows[chosen][draw] - best[draw];
        }

        var everything = OfEverything(table).Value;
        return new InformationValue(
            table.Best, table.Means[table.Best], Math.Min(sum / table.Draws, everything), StandardError([.. gain]), table.Draws, means.Grouped ? GroupMethod : RegressionMethod);
    }

    private static double? StandardError(ImmutableArray<double> values)
    {
        if (values.Length < 2) return null;
        var mean = WeightedMean.Of(values);
        double squares = 0;
        foreach (var value in values) squares += (value - mean) * (value - mean);
        return Math.Sqrt(squares / (values.Length - 1.0) / values.Length);
    }
}
