using ScreenStats.Synthesis.Planning;

namespace ScreenStats.Synthesis;

/// <content>The plan that is used where none is given.</content>
public sealed partial record SynthesisPlan
{
    /// <summary>
    /// A plain program: three sites with three schedules, two devices, four sound lots, audits of one negative run in 200,
    /// clean exports with ten columns, about 16,000 runs in 13 weeks.
    /// </summary>
    public static SynthesisPlan Standard { get; } = new()
    {
        Title = "A synthetic program",
        FirstDay = new DateOnly(2024, 9, 2),
        Weeks = 13,
        Sites =
        [
            new SynthesisSite { Name = "Site A", People = 240, Schedule = SynthesisSchedule.Daily, Operators = 3 },
            new SynthesisSite { Name = "Site B", People = 200, Schedule = SynthesisSchedule.MondayAndThursday },
            new SynthesisSite { Name = "Site C", People = 160, Schedule = SynthesisSchedule.Weekly },
        ],
        Kits =
        [
            new SynthesisKit { Name = "Device one", StatedSensitivity = "160/200", StatedSpecificity = "998/1000", Source = "fictional study" },
            new SynthesisKit { Name = "Device two", PeakSensitivity = 0.75, StatedSensitivity = "150/200", StatedSpecificity = "998/1000", Source = "fictional study" },
        ],
        Lots =
        [
            new SynthesisLot { Name = "L-101", Kit = "Device one" },
            new SynthesisLot { Name = "L-102", Kit = "Device one", From = new DateOnly(2024, 10, 7) },
            new SynthesisLot { Name = "M-201", Kit = "Device two", To = new DateOnly(2024, 11, 1) },
            new SynthesisLot { Name = "M-202", Kit = "Device two", From = new DateOnly(2024, 10, 21) },
        ],
        Infection = new SynthesisInfection { BackgroundIncidence = 0.0005 },
        Audits = [new SynthesisAudit { Share = 0.005 }],
    };
}
