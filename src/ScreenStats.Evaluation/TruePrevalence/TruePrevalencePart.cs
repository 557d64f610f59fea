using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Evaluation.TruePrevalence;

/// <summary>The valid tests of one part and period, by device.</summary>
internal sealed class TruePrevalencePart(string by, string level, DateOnly? start)
{
    private readonly Dictionary<ScreenSettings, long> tests = new(ReferenceEqualityComparer.Instance);

    public string By { get; } = by;

    public string Level { get; } = level;

    public DateOnly? Start { get; } = start;

    public ClusterCounter Counter { get; } = new();

    public long WithoutAccuracy { get; private set; }

    /// <summary>Confirmed among the tests of the counter.</summary>
    public long Confirmed { get; private set; }

    /// <summary>Adds valid tests of a cell.</summary>
    /// <param name="cell">A cell of negative or positive runs.</param>
    /// <param name="device">The device of its lot; null where none claims it.</param>
    public void Add(ScreenCell cell, ScreenSettings? device)
    {
        if (device is not { Sensitivity: not null, Specificity: not null })
        {
            WithoutAccuracy += cell.Runs;
            return;
        }

        Counter.Add(cell.Site, cell.Day, cell.Runs, cell.Outcome == Outcome.Positive ? cell.Runs : 0);
        if (cell is { Outcome: Outcome.Positive, FollowUp: FollowUp.Confirmed }) Confirmed += cell.Runs;
        tests[device] = tests.GetValueOrDefault(device) + cell.Runs;
    }

    /// <summary>The devices with a test here, in the order of the program file.</summary>
    public IEnumerable<ScreenSettings> Devices(ProgramSettings settings) => settings.Screens.Where(tests.ContainsKey);

    /// <summary>A stated accuracy of the devices, weighted by their valid tests here. There is at least one test.</summary>
    public AccuracyStatement Mixed(ProgramSettings settings, Func<ScreenSettings, AccuracyStatement> of) =>
        AccuracyMixture.Of(Devices(settings).Select(device => (of(device), (double)tests[device])));
}
