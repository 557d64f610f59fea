using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Conduct;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Conduct;

public class ConductRatesTests
{
    private static readonly ProgramSettings Stated = new()
    {
        Screens = [new ScreenSettings { Name = "Kit", Lots = ["L-*"], ReadFromMinutes = 10, ReadToMinutes = 20, RunsPerKit = 40 }],
        Policy = new PolicySettings { IsolationDays = 10 },
    };

    [Fact]
    public void A_share_is_of_the_runs_of_which_it_could_be_told()
    {
        var found = Evaluate(Program(), [
            Cell(ConductKind.ReadOutsideWindow, "North", "L-1", 6), Cell(ConductKind.ReadingNotRecorded, "North", "L-1", 10), Cell(ConductKind.ReadingNotRecorded, "South", "L-1", 4),
            Cell(ConductKind.ExpiredLot, "South", "L-2", 3),
        ]);

        // North has 40 runs of L-1 and 5 without a lot, South 20 of L-1 and 20 of L-2.
        Share(found, "read-outside-window|program|").Should().Be((6, 66));
        Share(found, "read-outside-window|site|North").Should().Be((6, 30));
        Share(found, "read-outside-window|lot|L-1").Should().Be((6, 46));
        Share(found, "expired-lot|program|").Should().Be((3, 80));
        Share(found, "expired-lot|site|North").Should().Be((0, 40));
        Share(found, "beyond-kit-contents|program|").Should().Be((0, 0));
        Share(found, "within-isolation|program|").Should().Be((0, 85));
        Rate(found, "read-outside-window|site|North").Comparison!.Should().Match<ScreenStats.Evaluation.Shared.LevelComparison>(one => one.Compared == 2 && one.Expected > 2.7 && one.Expected < 2.8);
        found.Places.Should().NotContain(place => place.Kind == "reading-not-recorded");
    }

    [Fact]
    public void Operators_of_a_bad_site_do_not_stand_out_among_themselves_but_a_bad_operator_does()
    {
        var program = new TallyCellsBuilder();
        void Add(string site, string by, int runs, int unusable)
        {
            for (var run = 0; run < runs; run++) program.Add($"{by}-{run}", run < unusable ? Outcome.Invalid : Outcome.Negative, site: site, by: by, day: run % 5);
        }

        Add("North", "op-1", 300, 3);
        Add("North", "op-2", 300, 3);
        Add("North", "op-3", 300, 24);
        Add("South", "op-4", 200, 20);
        Add("South", "op-5", 200, 20);
        var found = Evaluate(program, []);

        found.Rates.Where(rate => rate.Comparison?.StandsOut == true).Select(rate => rate.Key).Should().Equal("unusable|operator|op-3");
        found.Sentences.Select(sentence => sentence.Text).Should().Contain(text => text.StartsWith("Operator op-3 has 24 unusable runs of 300, where the other operators of the same site would have 10", StringComparison.Ordinal)
            && text.EndsWith("For training, not for discipline.", StringComparison.Ordinal));
    }

    [Fact]
    public void Ways_of_collecting_are_compared_within_the_site_weeks_that_used_both()
    {
        var program = new TallyCellsBuilder();
        for (var run = 0; run < 100; run++)
        {
            program.Add($"a{run}", run < 5 ? Outcome.Invalid : Outcome.Negative, collection: CollectedBy.Supervised);
            program.Add($"b{run}", run < 15 ? Outcome.Invalid : Outcome.Negative, collection: CollectedBy.Self);
            program.Add($"c{run}", Outcome.Negative, site: "South", collection: CollectedBy.Supervised);
        }

        var found = Evaluate(program, []);

        var contrast = found.Contrasts.Single(one => one.Measure == PersonMeasure.InvalidRuns);
        (contrast.First, contrast.Second, contrast.Within.Strata).Should().Be(("supervised", "self", 1));
        contrast.Within.Estimate.Should().BeApproximately(-0.10, 1e-12);
        contrast.Crude.Estimate.Should().BeApproximately(-0.125, 1e-12);
        Share(found, "self-collected|program|").Should().Be((100, 300));
    }

    private static (long, long) Share(ConductFindings found, string key) => (Rate(found, key).Share.Events, Rate(found, key).Share.Trials);

    private static ConductRate Rate(ConductFindings found, string key) => found.Rates.Single(rate => rate.Key == key);

    private static ConductCell Cell(ConductKind kind, string site, string lot, long runs) => new(kind, site, lot, TallyCellsBuilder.Monday, runs);

    private static TallyCellsBuilder Program()
    {
        var program = new TallyCellsBuilder();
        void Add(string site, string lot, int runs)
        {
            for (var run = 0; run < runs; run++) program.Add($"{site}{lot}{run}", Outcome.Negative, site: site, lot: lot);
        }

        Add("North", "L-1", 40);
        Add("North", Levels.None, 5);
        Add("South", "L-1", 20);
        Add("South", "L-2", 20);
        return program;
    }

    private static ConductFindings Evaluate(TallyCellsBuilder program, ImmutableArray<ConductCell> conduct) => Evaluator.Evaluate(
        Tally.FromCells(program.Cells() with
        {
            Conduct = conduct,
            Completeness = [.. new[] { "lot_expiry", "read_at", "kit" }.Select(column => new CompletenessCell(ExportKind.Screening, column, true, 3, 2))],
        }), Stated).Conduct;
}
