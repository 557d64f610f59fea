using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Cadence;

public class CadenceSwingTests
{
    private static readonly CadenceSettings FromCases = new()
    {
        Course = new CourseSettings { Kind = CourseKind.Windows, DetectableFrom = new StatedRange(2), DetectableTo = new StatedRange(12), InfectiousFrom = new StatedRange(3), InfectiousTo = new StatedRange(9) },
        Sensitivity = new StatedAccuracy(0.6, null, null, 0.4, 0.8),
        DelayDays = new StatedRange(0.5),
        BroughtIn = new StatedRange(1),
        Worthwhile = 3,
    };

    [Theory]
    [InlineData(4)]
    [InlineData(0)]
    public void The_ends_of_an_incidence_from_cases_are_infections_per_person_day_and_not_cases(int confirmed)
    {
        var found = Cadence(FromCases, confirmed);
        var (swing, incidence) = (found.Swings.Single(row => row.Assumption == "incidence"), found.Assumptions.Single(row => row.Assumption == "incidence"));

        swing.AtLower.Should().BeGreaterThanOrEqualTo(0).And.BeLessThanOrEqualTo(incidence.Value!.Value);
        swing.AtUpper.Should().BeGreaterThan(incidence.Value.Value).And.BeLessThan(0.02, "that would be one in fifty each day");
    }

    [Fact]
    public void A_stated_incidence_is_told_as_stated()
    {
        var swing = Cadence(FromCases with { Incidence = new StatedRange(0.0005, 0.0003, 0.0008) }, 2).Swings.Single(row => row.Assumption == "incidence");
        swing.AtLower.Should().BeApproximately(0.0003, 1e-12);
        swing.AtUpper.Should().BeApproximately(0.0008, 1e-12);
    }

    /// <summary>Forty people, screened each week for fourteen weeks; the first of them end with a confirmed positive, three more with a refuted one.</summary>
    private static CadenceFindings Cadence(CadenceSettings settings, int confirmed)
    {
        var builder = new TallyCellsBuilder();
        for (var person = 0; person < 40; person++)
        {
            for (var week = 0; week < 14; week++)
            {
                var positive = week == 13 && person < confirmed + 3;
                builder.Add(
                    "p" + person.ToString(CultureInfo.InvariantCulture), positive ? Outcome.Positive : Outcome.Negative,
                    !positive ? FollowUp.None : person < confirmed ? FollowUp.Confirmed : FollowUp.Refuted, lot: "L-1", day: 7 * week);
            }
        }

        return Evaluator.Evaluate(Tally.FromCells(builder.Cells() with { HasConfirmatory = true }), new ProgramSettings { Cadence = settings }).Cadence;
    }
}
