using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Tests.Cadence;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Tests.Worth;

public class WorthInconclusiveTests
{
    private static readonly ProgramSettings Exact = new() { Cadence = WorthSketch.Cadence, Costs = WorthSketch.Exact, Policy = new PolicySettings { IsolationDays = 7 } };

    // 40 people, 14 screens each; the last of 10 of them inconclusive: 6 refuted, 1 unresolved, 3 never tested; 4 of 10 repeated.
    private static Tally Program(int inconclusive = 10)
    {
        var builder = new TallyCellsBuilder();
        for (var person = 0; person < 40; person++)
        {
            for (var screen = 0; screen < 14; screen++)
            {
                var (last, name) = (screen == 13, "p" + person.ToString(System.Globalization.CultureInfo.InvariantCulture));
                if (last && person < inconclusive) builder.Add(name, Outcome.Inconclusive, person < 6 ? FollowUp.Refuted : person < 7 ? FollowUp.Unresolved : FollowUp.Unverified, day: screen * 7);
                else if (last && person is >= 20 and < 25) builder.Add(name, Outcome.Positive, person < 22 ? FollowUp.Confirmed : FollowUp.Refuted, day: screen * 7);
                else builder.Add(name, Outcome.Negative, day: screen * 7);
            }
        }

        return Tally.FromCells(builder.Cells() with
        {
            Repeats = inconclusive == 0 ? [] : [new RepeatCell("North", TallyCellsBuilder.Monday.AddDays(13 * 7), Outcome.Inconclusive, inconclusive, 4)],
            Specimens = inconclusive == 0 ? [] : [new SpecimenCell(SpecimenReason.FollowUp, 1, 0, 0, 0, 2), new SpecimenCell(SpecimenReason.FollowUp, 0, 1, 0, 0, 9), new SpecimenCell(SpecimenReason.FollowUp, 0, 0, 1, 0, 1), new SpecimenCell(SpecimenReason.FollowUp, 0, 1, 1, 0, 1)],
        });
    }

    [Fact]
    public void Inconclusive_screens_cost_the_tests_and_repeats_that_follow_them_in_the_data()
    {
        var findings = Evaluator.Evaluate(Program(), Exact);
        foreach (var option in (string[])["weekly", "daily"])
        {
            var does = findings.Cadence;
            var screens = does.Value(option, CadenceMeasure.Screens);
            var unclear = screens * 10 / 560;
            does.Value(option, CadenceMeasure.Inconclusive).Should().BeApproximately(unclear, 1e-9);
            does.Value(option, CadenceMeasure.InconclusiveTests).Should().BeApproximately(unclear * 0.7, 1e-9);
            does.Value(option, CadenceMeasure.InconclusiveRepeats).Should().BeApproximately(unclear * 0.4, 1e-9);
            var (found, alarms) = (does.Value(option, CadenceMeasure.TruePositives), does.Value(option, CadenceMeasure.FalseAlarms));
            var rest = (200 * does.Value(option, CadenceMeasure.DaysAwayAdded)) + (5 * (screens + (unclear * 0.4)));
            findings.Worth.Option(option).Spending.Estimate!.Value.Should().BeApproximately(rest + (60 * (found + alarms + (unclear * 0.7))) + (250 * does.Value(option, CadenceMeasure.DaysLost)), 1e-6);
            findings.Worth.Option(option, WorthConfirmation.Without).Spending.Estimate!.Value.Should().BeApproximately(rest + (250 * 7 * alarms), 1e-6, "without a confirmatory test none of these is done either");
        }

        findings.Worth.Information.Should().Contain(row => row.Parameter == "inconclusive");
        findings.Cadence.Assumption("inconclusive").Should().Match<CadenceAssumption>(row => row.Value == 10 / 560.0 && row.Origin == CadenceOrigin.Data && row.Lower < row.Value && row.Upper > row.Value);
        findings.Cadence.Assumption("inconclusive-tested").Value.Should().Be(0.7);
        findings.Cadence.Assumption("inconclusive-repeated").Value.Should().Be(0.4);
    }

    [Fact]
    public void Where_none_was_seen_none_is_made_up()
    {
        var findings = Evaluator.Evaluate(Program(inconclusive: 0), Exact);
        findings.Cadence.Value("weekly", CadenceMeasure.Inconclusive).Should().Be(0);
        findings.Cadence.Assumptions.Should().NotContain(row => row.Assumption == "inconclusive-tested");
        findings.Worth.Option("weekly").Spending.Lower.Should().Be(findings.Worth.Option("weekly").Spending.Estimate);
    }

    [Fact]
    public void What_was_paid_for_tests_is_split_by_what_they_followed()
    {
        var costs = Evaluator.Evaluate(Program(), Exact).Worth.Costs;
        costs.Where(row => row.Item.EndsWith("-tests", StringComparison.Ordinal)).Select(row => (row.Item, row.Units.Estimate)).Should().Equal(("confirmatory-tests", 5.0), ("inconclusive-tests", 7.0), ("further-tests", 2.0));
        costs.Should().OnlyHaveUniqueItems(row => row.Item);
    }
}
