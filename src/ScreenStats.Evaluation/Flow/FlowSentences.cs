using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Flow;

/// <summary>The flow in words.</summary>
internal static class FlowSentences
{
    public static ImmutableArray<Sentence> Of(FlowFindings flow)
    {
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        if (flow.Find(FlowKeys.Runs)!.Count == 0)
        {
            return flow.Find(FlowKeys.Rows) is null
                ? [new Sentence("There is no counted run, so nothing flows.")]
                : [new Sentence("Of {0} rows of the screening export none is a counted run, so nothing flows further.", Count(flow, FlowKeys.Rows))];
        }

        ImmutableArray<FigureReference> outcomes =
            [Count(flow, FlowKeys.Runs), Count(flow, FlowKeys.Positive), Count(flow, FlowKeys.Inconclusive), Count(flow, FlowKeys.Invalid), Count(flow, FlowKeys.Negative)];
        sentences.Add(flow.Find(FlowKeys.Rows) is null
            ? new Sentence("There are {0} counted runs: {1} positive, {2} inconclusive, {3} invalid and {4} negative.", outcomes)
            : new Sentence(
                "Of {5} rows of the screening export {0} are counted runs: {1} positive, {2} inconclusive, {3} invalid and {4} negative.",
                [.. outcomes, Count(flow, FlowKeys.Rows)]));
        foreach (var (key, name) in (ReadOnlySpan<(string, string)>)[(FlowKeys.Positive, "positive"), (FlowKeys.Inconclusive, "inconclusive")])
        {
            if (flow.Find(key)!.Count == 0) continue;
            var (tested, untested) = (FlowKeys.Tested(key), FlowKeys.Untested(key));
            sentences.Add(flow.Find(tested) is null
                ? new Sentence("The program's policy follows up none of the {0} " + name + " runs.", Count(flow, key))
                : new Sentence(
                    "Of {0} " + name + " runs {1} have a confirmatory test ({2} confirmed, {3} refuted, {4} without a conclusion) and {5} have none ({6} still awaited, {7} not to be expected any more).",
                    Count(flow, key), Count(flow, tested), Count(flow, tested + "/confirmed"), Count(flow, tested + "/refuted"), Count(flow, tested + "/unresolved"),
                    Count(flow, untested), Count(flow, untested + "/pending"), Count(flow, untested + "/unverified")));
        }

        var audited = FlowKeys.Tested(FlowKeys.Negative);
        sentences.Add(flow.Find(audited)!.Count == 0
            ? new Sentence("None of {0} negative runs was audited: what a confirmatory test would have said of them nobody knows.", Count(flow, FlowKeys.Negative))
            : new Sentence(
                "Of {0} negative runs {1} were audited by a confirmatory test ({2} infected and missed, {3} not infected by that test, {4} without a conclusion); of the other {5} nobody knows what it would have said.",
                Count(flow, FlowKeys.Negative), Count(flow, audited), Count(flow, audited + "/missed"), Count(flow, audited + "/agreed"), Count(flow, audited + "/unresolved"),
                Count(flow, FlowKeys.Untested(FlowKeys.Negative))));
        if (flow.Find(FlowKeys.NotLinked) is not null)
        {
            sentences.Add(new Sentence(
                "Of {0} counted confirmatory specimens {1} settle a run and {2} settle none: no run of the same person called for them within the hours allowed, or another specimen came first.",
                Count(flow, FlowKeys.Specimens), Count(flow, FlowKeys.Settling), Count(flow, FlowKeys.NotLinked)));
        }

        return sentences.ToImmutable();
    }

    private static FigureReference Count(FlowFindings flow, string key) => Figure.Count(FigurePath.Row("flow.rows", key) + ".count", flow.Find(key)!.Count);
}
