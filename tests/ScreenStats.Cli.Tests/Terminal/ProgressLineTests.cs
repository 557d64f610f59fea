using ScreenStats.Cli.Terminal;
using ScreenStats.Records;
using ScreenStats.Reporting;

namespace ScreenStats.Cli.Tests.Terminal;

public sealed class ProgressLineTests : IDisposable
{
    private static readonly RunnerEnvironment Smart = new() { ErrorIsTerminal = true };
    private static readonly RunnerEnvironment Dumb = Smart with { Variable = name => name == "TERM" ? "dumb" : null };
    private readonly StringWriter errors = new();
    private readonly Watch watch = new();

    public void Dispose() => errors.Dispose();

    [Fact]
    public void One_line_is_written_over_and_wiped_before_anything_else_is_said()
    {
        var line = new ProgressLine(errors, Smart, watch);

        line.During(() =>
        {
            line.Report(new ReadProgress(1, 4));
            watch.Pass(ProgressLine.Pause);
            line.Report(new ReadProgress(4, 4));
            return 0;
        });

        errors.ToString().Should().Be("\rreading  25 %\rreading 100 %\r             \r");
    }

    [Fact]
    public void Changes_within_a_blink_are_left_out_but_a_new_part_of_the_work_is_shown_at_once()
    {
        var line = new ProgressLine(errors, Smart, watch);

        line.Report(new WriteProgress(1, 100));
        line.Report(new WriteProgress(2, 100));
        line.Report("trend");
        line.Report("worth");

        errors.ToString().Should().Be("\rwriting   1 %\revaluating: trend\revaluating: worth");
    }

    [Fact]
    public void A_shorter_text_covers_the_longer_one_before_it()
    {
        var line = new ProgressLine(errors, Smart, watch);

        line.Report("predictive values");
        line.Report("trend");

        errors.ToString().Split('\r')[^1].Should().Be("evaluating: trend            ");
    }

    [Fact]
    public void A_dumb_terminal_gets_plain_lines_seconds_apart_over_all_parts_of_the_work()
    {
        var line = new ProgressLine(errors, Dumb, watch);

        line.During(() => Reading(line, 4));
        watch.Pass(TimeSpan.FromSeconds(1));
        line.During(() => Reading(line, 4));
        watch.Pass(TimeSpan.FromSeconds(2));
        line.Report("trend");

        errors.ToString().Should().Be("reading  50 %\nevaluating: trend\n", "6 and 11 seconds have passed");
    }

    [Fact]
    public void A_short_run_says_nothing_on_a_dumb_terminal()
    {
        Reading(new ProgressLine(errors, Dumb, watch), 4);

        errors.ToString().Should().BeEmpty();
    }

    [Fact]
    public void Nothing_is_shown_where_no_person_looks()
    {
        var line = new ProgressLine(errors, new RunnerEnvironment(), watch);

        line.During(() => Reading(line, 100));
        line.Report("trend");
        line.Report(new WriteProgress(1, 2));

        errors.ToString().Should().BeEmpty();
    }

    [Fact]
    public void A_wish_to_stop_is_heard_and_the_line_is_wiped()
    {
        using var cancelled = new CancellationTokenSource();
        var line = new ProgressLine(errors, Smart with { Cancelled = cancelled.Token }, watch);

        FluentActions.Invoking(() => line.During<int>(() =>
        {
            line.Report("trend");
            cancelled.Cancel();
            line.Report(new WriteProgress(1, 2));
            return 0;
        })).Should().Throw<OperationCanceledException>();
        errors.ToString().Should().EndWith("\r                 \r");
    }

    // Once a second, for so many seconds.
    private int Reading(ProgressLine line, int seconds)
    {
        for (var second = 1; second <= seconds; second++)
        {
            watch.Pass(TimeSpan.FromSeconds(1));
            line.Report(new ReadProgress(second == 1 ? 50 : 60, 100));
        }

        return 0;
    }

    private sealed class Watch : TimeProvider
    {
        private long now;

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;

        public override long GetTimestamp() => now;

        public void Pass(TimeSpan time) => now += time.Ticks;
    }
}
