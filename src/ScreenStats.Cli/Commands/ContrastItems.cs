using System.Collections.Immutable;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Cli.Commands;

/// <summary>Contrasts as result items and as a table.</summary>
internal static class ContrastItems
{
    /// <summary>The item of a measure, or null where it was not asked for.</summary>
    public static ContrastItem? Of(ImmutableArray<ContrastEstimate> estimates, ContrastMeasure measure)
    {
        var own = estimates.Where(one => one.Measure == measure).ToImmutableArray();
        return own.IsEmpty ? null : new(Value(own[0]), [.. own.Select(Interval)]);
    }

    /// <summary>The odds ratio of two groups, whose exact interval has an estimate of its own.</summary>
    public static OddsRatioItem? OddsRatio(ImmutableArray<ContrastEstimate> estimates) =>
        Of(estimates, ContrastMeasure.OddsRatio) is { } item
            ? new(item.Estimate, item.Intervals, Value(estimates.Single(one => one.Method == ContrastMethod.ConditionalExact)))
            : null;

    /// <summary>The table of all, between empty lines, with the reasons of what is missing under it.</summary>
    public static void Table(ImmutableArray<ContrastEstimate> estimates, Screen screen)
    {
        screen.Line();
        screen.Table(
            [new("measure"), new("estimate", true), new("lower", true), new("upper", true), new("method")],
            estimates.Select(one =>
            {
                var interval = Interval(one);
                return new[] { one.Measure.Name(), Show.Number(Value(one)), Show.Number(interval.Lower), Show.Number(interval.Upper), one.Method.Name() };
            }));
        var reasons = estimates.SelectMany(one => new[] { one.Reason, one.UpperReason, one.LowerReason }.Select(reason =>
            (reason == UndefinedReason.NoStandardError ? one.Method.Name() : one.Measure.Name(), reason?.Describe())));
        foreach (var line in Show.Reasons([.. reasons])) screen.Line(line);
        screen.Line();
    }

    private static Figure Value(ContrastEstimate one) => Figure.Of(one.Value, one.Reason?.Describe());

    private static IntervalItem Interval(ContrastEstimate one) =>
        new(null, one.Method.Name(), Figure.Of(one.Lower, one.LowerReason?.Describe()), Figure.Of(one.Upper, one.UpperReason?.Describe()));
}
