using ScreenStats.Cli.Printing;

namespace ScreenStats.Cli.Tests.Printing;

/// <summary>A browser that does not end, for which a shell script stands: it leaves no process, no room and no half print.</summary>
public sealed class ChromiumPrinterTests : IDisposable
{
    // A child that outlives its parent unless it is ended too, writes into the room all the time, and is told of in a file when all stands.
    private const string Sleeps = """
        here=$(dirname "$0")
        (while :; do : > "$PWD/busy$((n=n+1))"; sleep 0.01; done) &
        echo $! > "$here/child"
        pwd > "$here/room.new"; mv "$here/room.new" "$here/room"
        wait
        """;

    private readonly string root = Directory.CreateTempSubdirectory("printer").FullName;

    public void Dispose() => Directory.Delete(root, true);

    [Fact]
    public async Task When_its_time_is_over_the_browser_is_ended_with_its_children_and_its_room_is_gone()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The script that stands for Chromium is one of a shell.");
        var clock = new HandClock();
        var print = Begin(Sleeps, clock, TestContext.Current.CancellationToken);
        var room = await Room();
        clock.GoOff();

        (await print).Should().Be("Chromium was not done after 5 minutes and was ended.");
        clock.Asked.Should().Equal(ChromiumPrinter.Patience);
        NothingIsLeft(room);
    }

    [Fact]
    public async Task When_it_is_cancelled_the_browser_is_ended_with_its_children_and_its_room_is_gone()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The script that stands for Chromium is one of a shell.");
        using var wish = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        var print = Begin(Sleeps, new HandClock(), wish.Token);
        var room = await Room();
        await wish.CancelAsync();

        await print.Invoking(task => task).Should().ThrowAsync<OperationCanceledException>();
        NothingIsLeft(room);
    }

    [Fact]
    public async Task A_print_takes_the_place_of_one_of_before_and_leaves_nothing_beside_it()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The script that stands for Chromium is one of a shell.");
        await File.WriteAllTextAsync(Target, "of before", TestContext.Current.CancellationToken);
        var print = Begin("pwd > \"$(dirname \"$0\")/room\"; for one in \"$@\"; do case \"$one\" in --print-to-pdf=*) printf '%%PDF-1.4' > \"${one#*=}\";; esac; done", new HandClock(), TestContext.Current.CancellationToken);

        (await print).Should().BeNull();
        (await File.ReadAllTextAsync(Target, TestContext.Current.CancellationToken)).Should().Be("%PDF-1.4");
        Directory.Exists(await Room()).Should().BeFalse();
        Directory.GetFiles(Path.GetDirectoryName(Target)!).Should().Equal(Target);
    }

    [Fact]
    public async Task A_print_that_cannot_be_put_in_its_place_leaves_no_half_of_one()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The script that stands for Chromium is one of a shell.");
        Directory.CreateDirectory(Path.Combine(Target, "in the way"));
        var print = Begin("for one in \"$@\"; do case \"$one\" in --print-to-pdf=*) printf '%%PDF-1.4' > \"${one#*=}\";; esac; done", new HandClock(), TestContext.Current.CancellationToken);

        await print.Invoking(task => task).Should().ThrowAsync<Exception>();
        Directory.GetFileSystemEntries(Path.GetDirectoryName(Target)!).Should().Equal(Target);
    }

    private string Target => Path.Combine(Directory.CreateDirectory(Path.Combine(root, "report")).FullName, "report.pdf");

    private Task<string?> Begin(string script, TimeProvider time, CancellationToken cancelled)
    {
        var browser = Path.Combine(root, "browser.sh");
        File.WriteAllText(browser, "#!/bin/sh\n" + script + "\n");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(browser, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        var target = Target;
        return Task.Factory.StartNew(() => ChromiumPrinter.Print(browser, Path.Combine(root, "report.html"), target, time, cancelled), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
    }

    // However long the script takes to begin.
    private async Task<string> Room()
    {
        var told = Path.Combine(root, "room");
        while (!File.Exists(told)) await Task.Delay(10, TestContext.Current.CancellationToken);
        return (await File.ReadAllTextAsync(told, TestContext.Current.CancellationToken)).TrimEnd('\n');
    }

    private void NothingIsLeft(string room)
    {
        Directory.Exists(room).Should().BeFalse();
        File.Exists(Target).Should().BeFalse();
        var child = File.ReadAllText(Path.Combine(root, "child")).Trim();
        // A process that was ended and that nobody has asked after yet is a name without a body.
        (!File.Exists($"/proc/{child}/stat") || File.ReadAllText($"/proc/{child}/stat").Contains(") Z ", StringComparison.Ordinal)).Should().BeTrue("the child was ended too");
    }
}
