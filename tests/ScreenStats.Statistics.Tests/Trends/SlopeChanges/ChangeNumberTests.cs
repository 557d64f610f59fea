using ScreenStats.Statistics.Trends;
using ScreenStats.Statistics.Trends.SlopeChanges;

namespace ScreenStats.Statistics.Tests.Trends.SlopeChanges;

public sealed class ChangeNumberTests
{
    [Theory]
    [InlineData(SlopeChangeSelection.Permutation)]
    [InlineData(SlopeChangeSelection.InformationCriterion)]
    [InlineData(SlopeChangeSelection.StrictInformationCriterion)]
    public void Clear_changes_are_counted_and_found(SlopeChangeSelection selection)
    {
        foreach (var (number, parts) in new (int, (double, double)[])[] { (0, [(0, 0.01)]), (1, [(0, 0.06), (50, -0.12)]), (2, [(0, 0.06), (40, -0.12), (70, 0.12)]), (3, [(0, 0.06), (30, -0.12), (55, 0.12), (80, -0.12)]) })
        {
            var counts = SlopeStudy.Draw(7, number, SlopeSeries.Line(104, 800, -3, parts), 0);
            var choice = BrokenLine.Choose(counts, new SlopeChangeOptions { Selection = selection, Permutations = 199 });
            choice.Number.Should().Be(number);
            foreach (var (change, part) in choice.Fit.Changes.Zip(parts.Skip(1))) change.Time.Should().BeApproximately(part.Item1, 3);
            choice.Scores.Sum(score => score.Weight).Should().BeApproximately(1, 1e-12);
            choice.Fits.Select(fit => fit.Number).Should().Equal(Enumerable.Range(0, choice.Fits.Count));
            choice.Tests.Should().HaveCount(selection == SlopeChangeSelection.Permutation ? 3 : 0);
        }
    }

    [Fact]
    public void The_same_seed_gives_the_same_p_values_and_the_tests_go_from_few_and_many_to_where_they_meet()
    {
        var counts = SlopeStudy.Draw(3, 0, SlopeSeries.Line(52, 300, -3, [(0, 0.05), (30, -0.1)]), 0.3);
        var options = new SlopeChangeOptions { Permutations = 199, Seed = 5 };
        var choice = BrokenLine.Choose(counts, options);
        BrokenLine.Choose([.. counts.Reverse()], options).Tests.Should().Equal(choice.Tests);
        var (fewer, more) = (0, 3);
        foreach (var test in choice.Tests)
        {
            (test.Fewer, test.More).Should().Be((fewer, more));
            test.Level.Should().Be(0.05 / (3 - fewer));
            test.Rejected.Should().Be(test.PValue <= test.Level);
            if (test.Rejected) fewer++;
            else more--;
        }

        choice.Number.Should().Be(fewer).And.Be(more);
        (choice.Permutations, choice.Seed).Should().Be((199, 5ul));
    }

    [Fact]
    public void A_test_that_stops_early_decides_as_with_all_permutations_and_its_p_value_is_near()
    {
        foreach (var (seed, slope) in new (ulong, double)[] { (1, 0), (2, 0), (3, -0.02), (4, -0.04), (5, -0.1) })
        {
            var counts = SlopeStudy.Draw(seed, 0, SlopeSeries.Line(52, 300, -3, [(0, 0.05), (30, slope)]), 0.3);
            var all = new SlopeChangeOptions { Permutations = 199 };
            var (whole, early) = (BrokenLine.Choose(counts, all), BrokenLine.Choose(counts, all with { EnoughAsLarge = 10 }));
            early.Number.Should().Be(whole.Number);
            foreach (var (one, other) in early.Tests.Zip(whole.Tests))
            {
                (one.Fewer, one.More, one.Statistic, one.Rejected).Should().Be((other.Fewer, other.More, other.Statistic, other.Rejected));
                one.Rejected.Should().Be(one.PValue <= one.Level);
                if (one.Rejected) one.PValue.Should().Be(other.PValue);
                else one.PValue.Should().BeApproximately(other.PValue, 4 * one.PValue / Math.Sqrt(10), "it rests on 10 as large or more");
            }
        }

        FluentActions.Invoking(() => BrokenLine.Choose([], new SlopeChangeOptions { EnoughAsLarge = -1 })).Should().Throw<ArgumentOutOfRangeException>();
    }

    [Fact]
    public void The_criteria_are_their_formula()
    {
        var counts = SlopeStudy.Draw(4, 0, SlopeSeries.Line(60, 300, -3, [(0, 0.05), (30, -0.1)]), 0.3);
        var choice = BrokenLine.Choose(counts, new SlopeChangeOptions { Selection = SlopeChangeSelection.InformationCriterion });
        var dispersion = Math.Max(1, choice.Fits[^1].Dispersion!.Value);
        foreach (var (score, fit) in choice.Scores.Zip(choice.Fits))
        {
            score.InformationCriterion.Should().BeApproximately((fit.Deviance!.Value / dispersion) + ((2 + (2 * fit.Number)) * Math.Log(60)), 1e-9);
            score.StrictInformationCriterion.Should().BeApproximately((fit.Deviance!.Value / dispersion) + ((2 + (3 * fit.Number)) * Math.Log(60)), 1e-9);
        }

        choice.Number.Should().Be(choice.Scores.MinBy(score => score.InformationCriterion)!.Number);
    }

    [Fact]
    public void A_change_in_the_last_weeks_cannot_be_seen_yet_and_is_not_invented()
    {
        // Rises in the last two of sixty weeks: no segment of four weeks can hold it alone.
        var counts = SlopeStudy.Draw(11, 0, SlopeSeries.Line(60, 400, -3, [(57, 1.2)]), 0);
        var choice = BrokenLine.Choose(counts, new SlopeChangeOptions { Permutations = 199 });
        choice.Fit.Changes.Should().NotBeEmpty().And.OnlyContain(change => change.Time <= 56);
        choice.Fit.Changes[^1].ProfileUpper.Should().BeNull("the counts allow it up to the last place that could hold one");
    }

    [Fact]
    public void Fewer_changes_than_asked_are_tried_where_periods_or_events_are_few()
    {
        BrokenLine.Choose(SlopeStudy.Draw(1, 0, SlopeSeries.Line(8, 400, -2, [(0, 0.05)]), 0)).Fits.Should().HaveCount(2);
        BrokenLine.Choose(SlopeStudy.Draw(1, 0, SlopeSeries.Line(5, 400, -2, [(0, 0.05)]), 0)).Fits.Should().HaveCount(1);
        TimedCount[] two = [.. Enumerable.Range(0, 40).Select(i => new TimedCount(i, i is 3 or 20 ? 1 : 0, 50))];
        BrokenLine.Choose(two).Number.Should().Be(0);
        BrokenLine.Choose([]).Fit.Reason.Should().Be(UndefinedReason.NoTrials);
    }
}
