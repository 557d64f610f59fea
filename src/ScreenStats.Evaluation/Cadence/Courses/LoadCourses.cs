using System.Collections.Immutable;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Statistics.Cadence.Answers;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Courses.ViralLoads;
using ScreenStats.Statistics.Cadence.Windows;

namespace ScreenStats.Evaluation.Cadence.Courses;

/// <summary>
/// Individual viral loads, simulated at the centre and with each uncertain figure at some places of its range, the others at their centre; draws are
/// interpolated between these, and the changes of several figures are added up.
/// </summary>
internal sealed class LoadCourses : ICourseModel
{
    private const int People = 4_000;
    private const double LeastLimit = 0.01;
    private const double MostLimit = 12;
    private static readonly Parameter[] Moving =
    [
        Parameter.DetectionLimit, Parameter.Sensitivity, Parameter.Delay, Parameter.ConfirmatoryDelay, Parameter.RepeatedMisses, Parameter.Participation, Parameter.SymptomShare,
        Parameter.SymptomIsolation, Parameter.FollowThrough,
    ];

    private readonly CadenceSettings settings;
    private readonly int? isolationDays;
    private readonly ImmutableArray<ScreeningOption> options;
    private readonly EarlierScreens earlier;
    private readonly double[] centre;
    private readonly double[] byDay;
    private readonly List<(Parameter Parameter, double[] Places, double[][] Changes)> moves = [];

    public LoadCourses(KnownFigures known, OptionList list, ParameterDraws draws)
    {
        settings = known.Settings;
        isolationDays = known.IsolationDays;
        options = [.. list.Computed];
        var places = Moving.Where(parameter => draws.Ends(parameter) is not null).Select(parameter => (Parameter: parameter, Values: Places(parameter, draws))).ToList();
        var longest = places.Where(place => place.Parameter == Parameter.DetectionLimit).SelectMany(place => place.Values.Select(value => draws.Centre.With(Parameter.DetectionLimit, value)))
            .Append(draws.Centre).Max(at => ViralLoadExposure.LongestDays(Loads(at)));
        var days = Math.Min(ScreenCounts.LongestDays, Math.Ceiling(longest) + 1);
        earlier = EarlierScreens.Together([.. known.Data.SiteGaps.Select(site => EarlierScreens.Of(site.People, site.Gaps, days))]);
        centre = Simulated(draws.Centre);
        byDay = [.. new ViralLoadModel(Loads(draws.Centre)).InfectiousnessByDay()];
        foreach (var (parameter, values) in places)
        {
            moves.Add((parameter, values, [.. values.Select(value => Simulated(draws.Centre.With(parameter, value)).Zip(centre, (there, here) => there - here).ToArray())]));
        }
    }

    public bool KnowsInfectious => true;

    public CourseFigures Of(ParameterSet at)
    {
        var figures = (double[])centre.Clone();
        foreach (var (parameter, places, changes) in moves)
        {
            var (below, share) = Place(places, at.Known(parameter));
            for (var index = 0; index < figures.Length; index++) figures[index] += ((1 - share) * changes[below][index]) + (share * changes[below + 1][index]);
        }

        double[] Part(int part, double most = 1) => [.. options.Select((_, index) => Math.Clamp(figures[(part * options.Length) + index], 0, most))];
        return new CourseFigures(
            Part(0), Part(1), Part(2), Math.Clamp(figures[^4], 0, 1), Math.Max(0, figures[^3]), isolationDays is { } days ? Part(3, 2 * days) : [], Math.Clamp(figures[^2], 0, isolationDays ?? 0),
            Math.Exp(figures[^1]));
    }

    public double[] InfectiousnessByDay(ParameterSet at) => byDay;

    /// <summary>The ends of the draws, of the range, and the centre.</summary>
    private static double[] Places(Parameter parameter, ParameterDraws draws)
    {
        var (lower, upper) = draws.Ends(parameter)!.Value;
        var drawn = draws.Drawn(parameter);
        var all = Enumerable.Range(0, draws.Count).Select(index => drawn(index)!.Value).ToList();
        double[] places = [.. new[] { all.Min(), lower, draws.Centre.Known(parameter), upper, all.Max() }.Distinct().Order()];
        return places.Length > 1 ? places : [places[0], places[0] + 1];
    }

    private static (int Below, double Share) Place(double[] places, double value)
    {
        var below = 0;
        while (below < places.Length - 2 && places[below + 1] <= value) below++;
        return (below, Math.Clamp((value - places[below]) / (places[below + 1] - places[below]), 0, 1));
    }

    /// <summary>What any schedules give, at one value of each figure.</summary>
    public static ImmutableArray<CourseOutcome> Screened(CadenceSettings settings, ParameterSet at, ImmutableArray<ScreeningSchedule> schedules, ScreeningRules rules) =>
        [.. ViralLoadYield.Simulate(Loads(settings, at), schedules, rules, new ViralLoadSettings { People = People, Seed = settings.Seed }).Select(one => one.Outcome)];

    private ViralLoadCourses Loads(ParameterSet at) => Loads(settings, at);

    private static ViralLoadCourses Loads(CadenceSettings settings, ParameterSet at)
    {
        var function = settings.Course!.Infectiousness switch
        {
            InfectiousnessKind.Proportional => InfectiousnessFunction.Proportional,
            InfectiousnessKind.Step => InfectiousnessFunction.Step,
            _ => InfectiousnessFunction.LogAboveThreshold,
        };
        return ViralLoadExample.Respiratory(Math.Clamp(at.Known(Parameter.DetectionLimit), LeastLimit, MostLimit), function) with
        {
            SensitivityAboveLimit = at[Parameter.Sensitivity] ?? 1,
            SymptomShare = at.Known(Parameter.SymptomShare),
            SymptomIsolationShare = at[Parameter.SymptomIsolation] ?? 1,
        };
    }

    private double[] Simulated(ParameterSet at)
    {
        var loads = Loads(at);
        var rules = new ScreeningRules { DelayDays = CourseParts.DaysToIsolation(at, settings.IsolateOn), MissCorrelation = CourseParts.Correlation(at), IsolationDays = isolationDays };
        var how = new ViralLoadSettings { People = People, Seed = settings.Seed };
        var outcomes = new CourseOutcome[options.Length];
        foreach (var alike in options.Select((option, index) => (Option: option, Index: index)).GroupBy(one => (Share: one.Option.Acted(at, settings.IsolateOn), Leaves: one.Option.LeavesOn(settings.IsolateOn))))
        {
            var group = alike.ToList();
            var simulated = ViralLoadYield.Simulate(
                loads, [.. group.Select(one => one.Option.Schedule with { Participation = one.Option.IsAsDone ? 1 : at.Known(Parameter.Participation) })], rules with { FollowThrough = alike.Key.Share, DelayDays = CourseParts.DaysToIsolation(at, alike.Key.Leaves) }, how);
            for (var index = 0; index < group.Count; index++) outcomes[group[index].Index] = simulated[index].Outcome;
        }

        return
        [
            .. outcomes.Select(outcome => outcome.DetectionProbability), .. outcomes.Select(outcome => outcome.FractionRemoved.Value ?? 0), .. outcomes.Select(outcome => outcome.CaughtBeforeInfectious.Value ?? 0),
            .. outcomes.Select(outcome => outcome.DaysAway.Value ?? 0), outcomes[0].FractionRemovedBySymptoms.Value ?? 0, outcomes[0].InfectiousDays, outcomes[0].DaysAwayBySymptoms.Value ?? 0, Math.Log(Math.Max(double.Epsilon, ViralLoadExposure.Of(loads, earlier, People, settings.Seed))),
        ];
    }
}
