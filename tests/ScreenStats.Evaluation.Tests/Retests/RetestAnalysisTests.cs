using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Retests;

public class RetestAnalysisTests
{
    [Fact]
    public void Concordance_is_positive_of_positive_and_negative_retests()
    {
        var program = Evaluator.Evaluate(ExamplePrograms.FaultyLotAndClumsySite().Tally(), ExamplePrograms.Full).Retests.Program;

        program.Pairs.Should().Be(8);
        program.Unusable.Should().Be(2);
        (program.Concordant.Events, program.Concordant.Trials).Should().Be((1, 6));
        program.Discordant.Should().Be(5);
        (program.ConcordantConfirmed, program.ConcordantRefuted, program.DiscordantConfirmed, program.DiscordantRefuted).Should().Be((1, 0, 0, 5));
    }

    [Fact]
    public void Devices_are_those_of_the_positive_run_apart_by_whether_the_retest_used_the_same()
    {
        var rows = Evaluator.Evaluate(ExamplePrograms.FaultyLotAndClumsySite().Tally(), ExamplePrograms.Full).Retests.Rows.Where(row => row.By == "device").ToList();

        rows.Select(row => (row.Level, row.With, row.Pairs)).Should().Equal(("Kit [one]", "any", 8), ("Kit [one]", "same", 7), ("Kit [one]", "other", 1));
    }

    [Fact]
    public void It_says_that_the_two_are_not_independent_and_that_nothing_is_cancelled() =>
        Evaluator.Evaluate(ExamplePrograms.FaultyLotAndClumsySite().Tally(), ExamplePrograms.Full).Retests.Sentences[^1].Text
            .Should().Contain("not independent").And.Contain("does not cancel a positive run");

    [Fact]
    public void Without_a_pair_there_is_one_sentence() =>
        Evaluator.Evaluate(new ProgramSketch().Runs(Outcome.Positive, 5).Tally(), ExamplePrograms.Full).Retests.Sentences.Should().ContainSingle();
}
