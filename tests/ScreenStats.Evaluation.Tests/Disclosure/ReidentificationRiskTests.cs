using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Disclosure;

public class ReidentificationRiskTests
{
    // Toy classes of the project's reference notes (section 8): sizes 2, 2, 1, 1, 1, 3, and coarsened to age bands 3, 2, 4, 1.
    [Fact]
    public void The_toy_classes_have_the_stated_risks()
    {
        var fine = ReidentificationRisk.Of([2, 2, 1, 1, 1, 3]);

        (fine.SmallestGroup, fine.SingleRows, fine.LargestRisk).Should().Be((1, 3, 1.0));
        fine.MeanRisk.Should().BeApproximately(0.6, 1e-12);
        ReidentificationRisk.Of([3, 2, 4, 1]).Should().Be(new ReidentificationRisk(10, 4, 1, 1));
    }

    [Fact]
    public void Rows_that_agree_in_site_week_and_lot_are_a_group()
    {
        var tally = new ProgramSketch().Runs(Outcome.Negative, 5).Runs(Outcome.Positive, 1, FollowUp.Refuted, day: 1).Runs(Outcome.Negative, 3, day: 7).Runs(Outcome.Negative, 4, lot: "B2").Tally();

        var risk = ReidentificationRisk.Of(tally);

        risk.Should().Be(new ReidentificationRisk(13, 3, 3, 0));
        risk.LargestRisk.Should().BeApproximately(1 / 3.0, 1e-12);
    }

    [Fact]
    public void Without_rows_there_is_no_risk() => ReidentificationRisk.Of([]).Should().Match<ReidentificationRisk>(risk => risk.LargestRisk == null && risk.MeanRisk == null);
}
