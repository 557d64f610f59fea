using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Flow;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Flow;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Pages.Flow;

/// <summary>The picture of the flow.</summary>
internal static class FlowFigures
{
    private static readonly (string Key, string Name)[] KeptOut =
    [
        ("set-aside", "set aside"), ("duplicate", "repeats of a row"), ("control-run", "control swabs"), ("kept-out-symptomatic", "with symptoms"),
        ("kept-out-exposed", "contacts of a case"),
    ];

    /// <summary>What stands in the place of the diagram where most of it would be hidden; empty where it is drawn, or nothing flows.</summary>
    public static string Instead(Findings findings) => Counted(findings) && MostlyHidden(findings)
        ? "The flow of rows and runs is left out: small counts are hidden, and most of its boxes would say only that. What of it may be seen stands in the sentences and tables of this report."
        : "";

    /// <summary>The flow diagram; nothing where no run was counted, or where more than half of its counts are hidden.</summary>
    public static ImmutableArray<Chart> Of(Findings findings)
    {
        var flow = findings.Flow;
        if (!Counted(findings) || MostlyHidden(findings)) return [];
        var bands = new Bands(findings);
        return
        [
            FlowChart.Of(
                new ChartFrame(
                    "flow",
                    "The way of every row and run",
                    See(flow) + " Boxes are runs (the last ones: confirmatory specimens), not people; boxes that come from one add up to it. All are drawn alike: their size means nothing.",
                    Describe(flow, bands), "flow"),
                bands.All()),
        ];
    }

    private static bool Counted(Findings findings) => findings.Flow.Find(FlowKeys.Runs)!.Count > 0;

    private static bool MostlyHidden(Findings findings) =>
        findings.Disclosure is { } disclosure && 2 * findings.Flow.Rows.Count(row => !disclosure.Shows(row, nameof(FlowRow.Count))) > findings.Flow.Rows.Length;

    // What the picture is for: of how much nobody knows what a confirmatory test would have said.
    private static Caption See(FlowFindings flow)
    {
        Caption see = new Sentence(
            "{0} of {1} negative runs have no audit: of these nobody knows what a confirmatory test would have said.",
            Number(flow, FlowKeys.Untested(FlowKeys.Negative)), Number(flow, FlowKeys.Negative));
        return flow.Find(FlowKeys.Untested(FlowKeys.Positive)) is null || flow.Find(FlowKeys.Positive)!.Count == 0 ? see
            : new Sentence("{0} of {1} positive runs have no confirmatory test.", Number(flow, FlowKeys.Untested(FlowKeys.Positive)), Number(flow, FlowKeys.Positive)) + see;
    }

    private static FigureReference Number(FlowFindings flow, string key) => new(FigurePath.Row("flow.rows", key) + ".count", Cell.Count(flow.Find(key)!.Count), Unit.Count);

    private static string Describe(FlowFindings flow, Bands bands) => string.Join(" ", flow.Rows.Where(row => bands.Count(row.Key) != "0").GroupBy(row => row.ComesFrom)
        .Select(group => (group.Key.Length == 0 ? "Begins with: " : "Of " + group.Key.Replace('/', ' ') + ": ")
            + string.Join(", ", group.Select(row => $"{row.Outcome} {bands.Count(row.Key)}")) + "."));

    /// <summary>The boxes by what the findings have, with the counts that may be seen.</summary>
    private sealed class Bands(Findings findings)
    {
        private readonly FlowFindings flow = findings.Flow;

        public string Count(string key) => flow.Find(key) is not { } row ? ""
            : findings.Disclosure is { } disclosure && !disclosure.Shows(row, nameof(FlowRow.Count)) ? "hidden"
            : row.Count.ToString("N0", CultureInfo.InvariantCulture);

        public ImmutableArray<FlowBand> All()
        {
            var bands = ImmutableArray.CreateBuilder<FlowBand>();
            var read = flow.Find(FlowKeys.Rows) is not null;
            if (read) bands.Add(new(Box("Rows read", FlowKeys.Rows), FlowBand.FlowStep.Start, [Listed("Kept out, by reason", FlowKeys.Rows, KeptOut)]));
            bands.Add(new(Box("Runs counted", FlowKeys.Runs), read ? FlowBand.FlowStep.Next : FlowBand.FlowStep.Start, []));
            bands.Add(Followed("Positive", FlowKeys.Positive));
            bands.Add(Followed("Inconclusive", FlowKeys.Inconclusive));
            bands.Add(new(Box("Invalid", FlowKeys.Invalid), FlowBand.FlowStep.Branch, []));
            bands.Add(new(Box("Negative", FlowKeys.Negative), FlowBand.FlowStep.Branch,
            [
                Box("Audited", FlowKeys.Tested(FlowKeys.Negative), ("missed", "infected: missed"), ("agreed", "not infected"), ("unresolved", "no conclusion")),
                Box("Not audited", FlowKeys.Untested(FlowKeys.Negative)),
            ]));
            AddSpecimens(bands);
            return bands.ToImmutable();
        }

        private void AddSpecimens(ImmutableArray<FlowBand>.Builder bands)
        {
            if (flow.Find(FlowKeys.Specimens) is null) return;
            var read = flow.Find(FlowKeys.SpecimenRows) is not null;
            if (read) bands.Add(new(Box("Specimen rows", FlowKeys.SpecimenRows), FlowBand.FlowStep.Start, [Listed("Kept out, by reason", FlowKeys.SpecimenRows, KeptOut)]));
            bands.Add(new(
                Box("Specimens counted", FlowKeys.Specimens), read ? FlowBand.FlowStep.Next : FlowBand.FlowStep.Start,
                flow.Find(FlowKeys.Settling) is null ? [] : [Box("Settle a run", FlowKeys.Settling), Box("Settle no run", FlowKeys.NotLinked)]));
        }

        private FlowBand Followed(string name, string key) => new(
            Box(name, key), FlowBand.FlowStep.Branch,
            flow.Find(FlowKeys.Tested(key)) is null ? [Box("Not followed up", key + "/not-followed-up")] :
            [
                Box("Confirmatory test", FlowKeys.Tested(key), ("confirmed", "confirmed"), ("refuted", "refuted"), ("unresolved", "no conclusion")),
                Box("No confirmatory test", FlowKeys.Untested(key), ("pending", "still awaited"), ("unverified", "none to be expected")),
            ]);

        private FlowBox Listed(string name, string key, params (string Key, string Name)[] lines) => Box("", key, lines) with { Name = name, Count = "" };

        private FlowBox Box(string name, string key, params (string Key, string Name)[] lines) => new(name, Count(key))
        {
            Lines = [.. lines.Where(line => flow.Find($"{key}/{line.Key}") is not null).Select(line => (line.Name, Count($"{key}/{line.Key}")))],
        };
    }
}
