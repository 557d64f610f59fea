using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Courses;

namespace ScreenStats.Statistics.Cadence.Answers;

/// <summary>A model whose outcomes between two sensitivities are interpolated, so that thousands of draws cost a few outcomes.</summary>
/// <remarks>
/// Outcomes are polynomials of the sensitivity, or near them: the interpolating polynomial through nine Chebyshev points of the range (barycentric form) is
/// as good as they need be for limits (tested). A simulated course draws the same people for each sensitivity.
/// </remarks>
internal sealed record SmoothModel(CourseModel Inner, double Lower, double Upper) : CourseModel
{
    private const int Points = 9;
    private readonly Dictionary<(ScreeningSchedule Schedule, ScreeningRules Rules), CourseOutcome[]> known = [];
    private ImmutableArray<double>? profile;

    public override bool HoldsDetection => Inner.HoldsDetection;

    public override bool KnowsInfectiousness => Inner.KnowsInfectiousness;

    public override ImmutableArray<double> InfectiousnessByDay() => profile ??= Inner.InfectiousnessByDay();

    public override CourseOutcome? Outcome(ScreeningSchedule schedule, ScreeningRules rules, double? sensitivity)
    {
        if (sensitivity is not { } at) return Inner.Outcome(schedule, rules, null);
        if (!known.TryGetValue((schedule, rules), out var nodes))
            known.Add((schedule, rules), nodes = [.. Enumerable.Range(0, Points).Select(point => Inner.Outcome(schedule, rules, Node(point))!)]);
        var weights = Weights(at);
        double Of(Func<CourseOutcome, double> figure) => nodes.Select((node, point) => weights[point] * figure(node)).Sum();
        double Share(Func<CourseOutcome, Estimate> figure) => Of(node => figure(node).Value ?? 0);
        return new CourseOutcome(
            nodes[0].Method, Of(node => node.DetectionProbability), Of(node => node.ScreensTaken), nodes[0].InfectiousDays, Share(node => node.FractionRemoved),
            Share(node => node.FractionRemovedBySymptoms), Share(node => node.FractionRemovedByScreening), Share(node => node.CaughtBeforeInfectious),
            nodes[0].FoundBeforeOnset.IsDefined ? Share(node => node.FoundBeforeOnset) : null,
            nodes[0].DaysAway.IsDefined ? (Share(node => node.DaysAway), Share(node => node.DaysAwayBySymptoms)) : null);
    }

    // Points of the second kind: both ends are among them.
    private double Node(int point) => ((Lower + Upper) / 2) - ((Upper - Lower) / 2 * Math.Cos(Math.PI * point / (Points - 1)));

    private double[] Weights(double at)
    {
        at = Math.Clamp(at, Lower, Upper);
        var weights = new double[Points];
        for (var point = 0; point < Points; point++)
        {
            var distance = at - Node(point);
            if (distance == 0) return [.. Enumerable.Range(0, Points).Select(other => other == point ? 1.0 : 0)];
            weights[point] = (point % 2 == 0 ? 1 : -1) * (point is 0 or Points - 1 ? 0.5 : 1) / distance;
        }

        var sum = weights.Sum();
        return [.. weights.Select(weight => weight / sum)];
    }
}
