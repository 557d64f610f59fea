using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;

namespace ScreenStats.Records.PersonLog.Codes;

/// <summary>The device of each lot code, looked up once. One for each thread.</summary>
internal sealed class DeviceOfLot(ProgramSettings settings, Vocabularies vocabularies)
{
    private ScreenSettings?[] devices = [];
    private bool[] known = [];

    /// <summary>True where any device states a reading window.</summary>
    public bool AnyReadingWindow { get; } = settings.Screens.Any(screen => screen.ReadFromMinutes is not null || screen.ReadToMinutes is not null);

    /// <summary>True where any device states what a kit holds.</summary>
    public bool AnyKitContents { get; } = settings.Screens.Any(screen => screen.RunsPerKit is not null);

    public ScreenSettings? Of(int lot)
    {
        if (lot >= known.Length)
        {
            var length = Math.Max(lot + 1, 2 * known.Length);
            Array.Resize(ref known, length);
            Array.Resize(ref devices, length);
        }

        if (known[lot]) return devices[lot];
        known[lot] = true;
        return devices[lot] = DeviceRule.Of(vocabularies.Lots[lot], settings.Screens);
    }
}
