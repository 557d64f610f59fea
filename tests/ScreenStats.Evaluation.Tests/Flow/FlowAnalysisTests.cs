using System.Collections.Immutable;
using CsCheck;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Flow;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Flow;

public class FlowAnalysisTests
{
    private static readonly ProgramSettings Settings = new();

    private static readonly (Outcome Outcome, FollowUp FollowUp)[] Possible =
    [
        .. new[] { Outcome.Positive, Outcome.Inconclusive }.SelectMany(outcome =>
            new[] { FollowUp.Confirmed, FollowUp.Refuted, FollowUp.Unresolved, FollowUp.Pending, FollowUp.Unverified }.Select(followUp => (outcome, followUp))),
        .. new[] { FollowUp.None, FollowUp.Missed, FollowUp.Agreed, FollowUp.Unresolved }.Select(followUp => (Outcome.Negative, followUp)), (Outcome.Invalid, FollowUp.None),
    ];

    private static readonly Gen<(int[] Runs, int[] Ledger, int Settling)> Drawn = Gen.Select(Gen.Int[0, 40].Array[Possible.Length], Gen.Int[0, 20].Array[6], Gen.Int[0, 9]);

    [Fact]
    public void Every_box_is_the_sum_of_the_boxes_that_come_from_it_for_arbitrary_programs() =>
        Drawn.Sample(drawn =>
        {
            var flow = Evaluate(drawn).Flow;

            foreach (var row in flow.Rows)
            {
                var parts = flow.Rows.Where(part => part.ComesFrom == row.Key).ToList();
                if (parts.Count > 0) parts.Sum(part => part.Count).Should().Be(row.Count, row.Key);
                (row.ComesFrom.Length == 0 ? row.FromCount is null : row.FromCount == flow.Find(row.ComesFrom)!.Count).Should().BeTrue(row.Key);
                if (row.Proportion is { } share) (share.Events, share.Trials).Should().Be((row.Count, row.FromCount!.Value), row.Key);
            }

            flow.Rows.Where(row => row.ComesFrom.Length == 0).Select(row => row.Key).Should().OnlyContain(key => key == "rows" || key == "rows/counted" || key == "specimen-rows" || key == "specimen-rows/counted");
        }, iter: 300);

    [Fact]
    public void It_says_of_every_count_what_ledger_follow_up_and_audits_say() =>
        Drawn.Sample(drawn =>
        {
            var found = Evaluate(drawn);
            long Of(string key) => found.Flow.Find(key)?.Count ?? 0;

            foreach (var row in found.Ledger.Rows.Where(row => row.Export == "screening" && found.Ledger.Read > 0)) Of(row.Entry == "read" ? "rows" : "rows/" + row.Entry).Should().Be(row.Rows);
            foreach (var row in found.Ledger.Rows.Where(row => row.Export == "confirmatory")) Of(row.Entry == "read" ? "specimen-rows" : "specimen-rows/" + row.Entry).Should().Be(row.Rows);
            foreach (var (name, followUp) in new[] { ("positive", found.FollowUp.Positive), ("inconclusive", found.FollowUp.Inconclusive) })
            {
                var key = "rows/counted/" + name;
                (Of(key), Of(key + "/tested/confirmed"), Of(key + "/tested/refuted"), Of(key + "/tested/unresolved"), Of(key + "/not-tested/pending"), Of(key + "/not-tested/unverified"))
                    .Should().Be((followUp.Due, followUp.Confirmed, followUp.Refuted, followUp.Unresolved, followUp.Pending, followUp.Unverified));
            }

            const string Audited = "rows/counted/negative/tested";
            (Of("rows/counted/negative"), Of(Audited), Of(Audited + "/missed"), Of(Audited + "/agreed"), Of(Audited + "/unresolved"))
                .Should().Be((found.Audits.NegativeRuns, found.Audits.Program.Audited, found.Audits.Program.Missed, found.Audits.Program.Agreed, found.Audits.Program.Unresolved));
            (Of("rows/counted/inconclusive"), Of("rows/counted/invalid")).Should().Be((found.InvalidRuns.Inconclusive, found.InvalidRuns.Invalid));
        }, iter: 200);

    [Fact]
    public void Outcomes_and_results_have_limits_and_what_was_kept_out_or_not_tested_has_none()
    {
        var flow = Evaluate(([.. Enumerable.Repeat(30, Possible.Length)], [5, 4, 0, 3, 2, 0], 4)).Flow;

        foreach (var row in flow.Rows) (row.Proportion is not null).Should().Be(row.Stage == "runs" || (row.Stage == "confirmatory-result" && !row.ComesFrom.EndsWith("/not-tested", StringComparison.Ordinal)), row.Key);
        var confirmed = flow.Find("rows/counted/positive/tested/confirmed")!;
        (confirmed.Count, confirmed.FromCount, confirmed.Share, confirmed.Proportion!.Estimate).Should().Be((30, 90, 1 / 3.0, 1 / 3.0));
        // Wilson, 1927: 30 of 90, computed by hand from the formula with z = 1.959964.
        confirmed.Proportion.Lower.Should().BeApproximately(0.24454, 5e-6);
        confirmed.Proportion.Upper.Should().BeApproximately(0.43578, 5e-6);
    }

    [Fact]
    public void An_outcome_that_the_policy_does_not_follow_up_ends_there()
    {
        var settings = Settings with { Policy = new PolicySettings { FollowUp = [Outcome.Positive] } };

        var flow = Evaluator.Evaluate(new ProgramSketch().Runs(Outcome.Positive, 2, FollowUp.Confirmed).Runs(Outcome.Inconclusive, 7).Tally(), settings).Flow;

        flow.Find("rows/counted/inconclusive/not-followed-up")!.Count.Should().Be(7);
        flow.Find("rows/counted/inconclusive/tested").Should().BeNull();
        flow.Sentences.Select(sentence => sentence.Text).Should().Contain("The program's policy follows up none of the 7 inconclusive runs.");
    }

    [Fact]
    public void Specimens_that_settle_no_run_are_counted_and_said()
    {
        var cells = new ProgramSketch().Runs(Outcome.Negative, 4).Runs(Outcome.Positive, 3, FollowUp.Confirmed)
            .Specimens(SpecimenReason.FollowUp, 1, 0, 0, 0, 5).Specimens(SpecimenReason.Other, 0, 2, 0, 0, 2).Tally().Cells with { SettlingSpecimens = 3 };

        var flow = Evaluator.Evaluate(Tally.FromCells(cells), Settings).Flow;

        (flow.Find("specimen-rows/counted")!.Count, flow.Find("specimen-rows/counted/settling")!.Count, flow.Find("specimen-rows/counted/not-linked")!.Count).Should().Be((9, 3, 6));
        flow.Sentences[^1].Text.Should().StartWith("Of 9 counted confirmatory specimens 3 settle a run and 6 settle none");
    }

    [Fact]
    public void Without_a_run_or_a_ledger_it_says_that_nothing_flows()
    {
        Evaluator.Evaluate(new ProgramSketch().Tally(), Settings).Flow.Sentences.Single().Text.Should().Be("There is no counted run, so nothing flows.");
        var kept = Tally.FromCells(new ProgramSketch().Tally().Cells with { Ledger = [new(ExportKind.Screening, LedgerEntry.Counted, 0), new(ExportKind.Screening, LedgerEntry.SetAside, 4)] });
        Evaluator.Evaluate(kept, Settings).Flow.Sentences.Single().Text.Should().Be("Of 4 rows of the screening export none is a counted run, so nothing flows further.");
    }

    private static Findings Evaluate((int[] Runs, int[] Ledger, int Settling) drawn)
    {
        var sketch = new ProgramSketch();
        for (var index = 0; index < Possible.Length; index++)
        {
            sketch.Runs(Possible[index].Outcome, drawn.Runs[index], Possible[index].FollowUp, $"S{index % 3}", $"L{index % 2}", 7 * (index % 4));
        }

        var resting = Possible.Select((kind, index) => kind.FollowUp is FollowUp.None or FollowUp.Pending or FollowUp.Unverified ? 0 : drawn.Runs[index]).Sum();
        if (resting > 0) sketch.Specimens(SpecimenReason.FollowUp, 1, 0, 0, 0, resting).Specimens(SpecimenReason.NotRecorded, 0, 1, 0, 0, 2);
        var cells = sketch.Tally().Cells;
        var specimens = cells.Specimens.Sum(cell => cell.Specimens * cell.Persons);
        ImmutableArray<LedgerCell> ledger =
        [
            new(ExportKind.Screening, LedgerEntry.Counted, cells.Screens.Sum(cell => cell.Runs)),
            new(ExportKind.Screening, LedgerEntry.SetAside, drawn.Ledger[0]), new(ExportKind.Screening, LedgerEntry.Duplicate, drawn.Ledger[1]),
            new(ExportKind.Screening, LedgerEntry.KeptOutSymptomatic, drawn.Ledger[2]), new(ExportKind.Screening, LedgerEntry.KeptOutExposed, drawn.Ledger[3]),
            new(ExportKind.Confirmatory, LedgerEntry.Counted, specimens), new(ExportKind.Confirmatory, LedgerEntry.Duplicate, drawn.Ledger[4]),
        ];
        // Every other drawn program has no ledger, as a tally from another source may.
        return Evaluator.Evaluate(Tally.FromCells(cells with { Ledger = drawn.Ledger[5] % 2 == 0 ? ledger : [], SettlingSpecimens = Math.Min(drawn.Settling, Math.Max(0, resting)) }), Settings);
    }
}
