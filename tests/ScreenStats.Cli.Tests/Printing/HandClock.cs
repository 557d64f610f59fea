using System.Collections.Concurrent;

namespace ScreenStats.Cli.Tests.Printing;

/// <summary>A clock whose timers go off when the test says so, and only then.</summary>
internal sealed class HandClock : TimeProvider
{
    private readonly ConcurrentQueue<Action> timers = new();

    public ConcurrentQueue<TimeSpan> Asked { get; } = new();

    public void GoOff()
    {
        foreach (var timer in timers) timer();
    }

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        Asked.Enqueue(dueTime);
        timers.Enqueue(() => callback(state));
        return new Timer();
    }

    private sealed class Timer : ITimer
    {
        public bool Change(TimeSpan dueTime, TimeSpan period) => true;

        public void Dispose()
        {
        }

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}
