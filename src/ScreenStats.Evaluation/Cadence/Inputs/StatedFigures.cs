using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Evaluation.Cadence.Inputs;

/// <summary>Figures as the program file states them.</summary>
internal static class StatedFigures
{
    /// <summary>An accuracy: counts by a beta distribution with half a success and half a failure more, an interval by the beta distribution matched to it.</summary>
    public static Uncertain Of(StatedAccuracy stated)
    {
        if (stated is { Successes: { } successes, Trials: { } trials })
            return Uncertain.Drawn(stated.Value, stream => stream.Beta(successes + 0.5, trials - successes + 0.5));
        if (stated is { Lower: { } lower, Upper: { } upper } && upper > lower)
        {
            var matched = BetaDistribution.Matching(stated.Value, lower, upper);
            return new Uncertain(stated.Value, lower, upper, stream => stream.Beta(matched.Alpha, matched.Beta));
        }

        return Uncertain.Exact(stated.Value);
    }

    /// <summary>What is stated of several devices, weighted by their runs.</summary>
    public static Uncertain Weighted(IReadOnlyList<(double Weight, Uncertain Figure)> devices)
    {
        var all = devices.Sum(device => device.Weight);
        var centre = devices.Sum(device => device.Weight * device.Figure.Centre) / all;
        return devices.All(device => device.Figure.Draw is null)
            ? Uncertain.Exact(centre)
            : Uncertain.Drawn(centre, stream => devices.Sum(device => device.Weight * (device.Figure.Draw?.Invoke(stream) ?? device.Figure.Centre)) / all);
    }

    /// <summary>A figure of the section cadence; null where it is not stated.</summary>
    public static KnownFigure? Of(Parameter parameter, StatedRange? stated, string fallbackSource, bool share)
    {
        if (stated is null) return null;
        var figure = share ? Uncertain.Share(stated.Value, stated.Lower, stated.Upper) : Uncertain.Positive(stated.Value, stated.Lower, stated.Upper);
        return new KnownFigure(parameter, figure, CadenceOrigin.Stated, Source(stated.Source, fallbackSource, figure.Draw is null), MethodNames.Stated);
    }

    public static string Source(string own, string fallback, bool exact)
    {
        var source = own.Length > 0 ? own : fallback.Length > 0 ? fallback : "program file";
        return exact ? source + "; taken as exact" : source;
    }
}
