using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Conduct;

/// <summary>What each measure of conduct counts, and of how many runs it could be told.</summary>
internal sealed class ConductMeasures(TallyCells cells, ProgramSettings settings)
{
    public const string RepeatNotDone = "repeat-not-done";
    public const string SelfCollected = "self-collected";
    public const string Unusable = "unusable";

    private readonly Dictionary<string, ScreenSettings?> devices = new(StringComparer.Ordinal);

    /// <summary>The measure's counts.</summary>
    /// <remarks>
    /// Runs whose reading time is not recorded are no trials of <c>read-outside-window</c>, nor runs without a lot of <c>expired-lot</c>, nor
    /// runs without a kit of <c>beyond-kit-contents</c>. A run within isolation counts on no day: it became known on another than its own.
    /// </remarks>
    public IEnumerable<ConductCount> Of(ConductKind kind) => kind switch
    {
        ConductKind.ExpiredLot => [.. Screens(cell => cell.Lot != Levels.None), .. Found(kind).Where(cell => cell.Lot != Levels.None)],
        ConductKind.ReadOutsideWindow =>
        [
            .. Screens(cell => Device(cell.Lot) is { } device && (device.ReadFromMinutes ?? device.ReadToMinutes) is not null),
            .. cells.Conduct.Where(cell => cell.Kind == ConductKind.ReadingNotRecorded).Select(cell => new ConductCount(cell.Site, cell.Lot, "", cell.Day, -cell.Runs, 0)),
            .. Found(kind),
        ],
        ConductKind.BeyondKitContents =>
        [
            .. cells.Kits.Where(cell => Device(cell.Lot)?.RunsPerKit is not null).Select(cell => new ConductCount(cell.Site, cell.Lot, "", cell.Day, cell.Runs, 0)),
            .. Found(kind),
        ],
        ConductKind.WithinIsolation => [.. Screens(_ => true).Select(cell => cell with { Day = default }), .. Found(kind).Select(cell => cell with { Day = default })],
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a measure of conduct."),
    };

    /// <summary>Repeats due after an unusable run, and those that were not done on the same day.</summary>
    public IEnumerable<ConductCount> Repeats() => cells.Repeats.Select(cell => new ConductCount(cell.Site, "", "", cell.Day, cell.Due, cell.Due - cell.Done));

    /// <summary>Runs with a record of who collected, and those that people collected from themselves.</summary>
    public IEnumerable<ConductCount> Collection() => cells.Screens.Where(cell => cell.Collection != CollectedBy.NotRecorded)
        .Select(cell => new ConductCount(cell.Site, cell.Lot, "", cell.Day, cell.Runs, cell.Collection == CollectedBy.Self ? cell.Runs : 0));

    /// <summary>Runs by operator, and the inconclusive and invalid ones.</summary>
    public IEnumerable<ConductCount> Operators() => cells.Operators.Select(cell =>
        new ConductCount(cell.Site, "", cell.Operator, cell.Day, cell.Runs, cell.Outcome.IsUnusable() ? cell.Runs : 0));

    private IEnumerable<ConductCount> Screens(Func<ScreenCell, bool> keep) =>
        cells.Screens.Where(keep).Select(cell => new ConductCount(cell.Site, cell.Lot, "", cell.Day, cell.Runs, 0));

    private IEnumerable<ConductCount> Found(ConductKind kind) =>
        cells.Conduct.Where(cell => cell.Kind == kind).Select(cell => new ConductCount(cell.Site, cell.Lot, "", cell.Day, 0, cell.Runs));

    private ScreenSettings? Device(string lot)
    {
        if (!devices.TryGetValue(lot, out var device)) devices.Add(lot, device = DeviceRule.Of(lot, settings.Screens));
        return device;
    }
}
