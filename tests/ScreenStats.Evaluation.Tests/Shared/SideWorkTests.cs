using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Tests.Shared;

public class SideWorkTests
{
    [Fact]
    public void What_is_begun_gives_its_result_where_it_is_asked_for()
    {
        var told = new List<string>();
        using var work = new SideWork(new Teller(told), oneByOne: false);
        var (one, other) = (work.Begin("one", () => 1), work.Begin("other", () => "x"));
        told.Should().BeEmpty();
        other().Should().Be("x");
        one().Should().Be(1);
        told.Should().Equal("other", "one");
    }

    [Fact]
    public void One_by_one_each_is_done_where_it_begins()
    {
        var told = new List<string>();
        using var work = new SideWork(new Teller(told), oneByOne: true);
        var thread = Environment.CurrentManagedThreadId;
        var found = work.Begin("here", () => Environment.CurrentManagedThreadId);
        told.Should().Equal("here");
        found().Should().Be(thread);
    }

    [Fact]
    public void A_fault_is_thrown_as_it_was_and_only_to_who_asks()
    {
        using var work = new SideWork(null, oneByOne: false);
        var broken = work.Begin<int>("broken", () => throw new InvalidTimeZoneException("as it was"));
        work.Begin("whole", () => 2)().Should().Be(2);
        FluentActions.Invoking(broken).Should().ThrowExactly<InvalidTimeZoneException>().WithMessage("as it was");
    }

    [Fact]
    public async Task What_runs_when_the_main_line_is_left_is_waited_for()
    {
        using var running = new ManualResetEventSlim();
        using var leaving = new ManualResetEventSlim();
        var ended = false;
        var work = new SideWork(null, oneByOne: false);
        work.Begin("long", () =>
        {
            running.Set();
            leaving.Wait(TestContext.Current.CancellationToken);
            // Time enough for a line that does not wait to be gone; one that waits does not mind.
            Thread.Sleep(200);
            return ended = true;
        });
        running.Wait(TestContext.Current.CancellationToken);
        var left = Task.Run(work.Dispose, TestContext.Current.CancellationToken);
        leaving.Set();
        await left;
        ended.Should().BeTrue();
    }

    private sealed class Teller(List<string> told) : IProgress<string>
    {
        public void Report(string value) => told.Add(value);
    }
}
