using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Evaluation.Tests.Sketches;

/// <summary>Small invented programs that between them make every sentence speak.</summary>
internal static class ExamplePrograms
{
    public static readonly ProgramSettings Full = new()
    {
        TimeZone = "Etc/UTC",
        Screens =
        [
            new ScreenSettings
            {
                Name = "Kit [one]", Lots = ["A*"], Sensitivity = new StatedAccuracy(61 / 97.0, 61, 97, null, null),
                Specificity = new StatedAccuracy(2391 / 2400.0, 2391, 2400, null, null),
            },
            new ScreenSettings
            {
                Name = "Kit two", Sensitivity = new StatedAccuracy(0.8, null, null, null, null), Specificity = new StatedAccuracy(0.97, null, null, null, null),
            },
        ],
        ConfirmatoryTest = new ConfirmatoryTestSettings
        {
            Sensitivity = new StatedAccuracy(0.98, null, null, null, null), Specificity = new StatedAccuracy(0.999, null, null, null, null),
        },
        Prevalence = new PrevalenceSettings(0.004, 0.002, 0.008, "survey"),
    };

    public static IReadOnlyList<(string Name, Tally Tally, ProgramSettings Settings)> All { get; } =
    [
        ("empty", new ProgramSketch().Tally(), new ProgramSettings()),
        ("empty, no confirmatory export", new ProgramSketch().WithoutConfirmatory().Tally(), Full),
        ("no confirmatory export", new ProgramSketch().Runs(Outcome.Negative, 500).Runs(Outcome.Positive, 7, FollowUp.Unverified).WithoutConfirmatory().Tally(), Full),
        ("no positive", new ProgramSketch().Runs(Outcome.Negative, 500).Runs(Outcome.Invalid, 3).Tally(), Full),
        ("faulty lot and clumsy site", FaultyLotAndClumsySite().Tally(), Full),
        ("strata by site, one not audited", FaultyLotAndClumsySite().Runs(Outcome.Negative, 100, site: "Yard").Strata(StratumOrigin.Site).Tally(), Full),
        ("strata that nothing explains", FaultyLotAndClumsySite().Runs(Outcome.Negative, 9, FollowUp.Missed, "East").Strata(StratumOrigin.Unexplained).Tally(), Full),
        ("none missed", new ProgramSketch().Runs(Outcome.Negative, 50, FollowUp.Agreed).Runs(Outcome.Negative, 900).Runs(Outcome.Positive, 9, FollowUp.Confirmed).Tally(), Full),
        ("how often, bounds", Tests.Cadence.CadenceSketch.Program(unsettled: 2), Full with { Cadence = Tests.Cadence.CadenceSketch.Ranged with { Incidence = null, BroughtIn = null, Worthwhile = null } }),
        ("how often, chosen", Tests.Cadence.CadenceSketch.Program(), Full with { Cadence = Tests.Cadence.CadenceSketch.Ranged with { Incidence = null, Planned = new() { Name = "weekly", EveryDays = 7 } } }),
        ("how often, not worth it", Tests.Cadence.CadenceSketch.Program(), Full with { Cadence = Tests.Cadence.CadenceSketch.Ranged with { Worthwhile = 1000 } }),
        ("published", PublishedProgram.Sketch().Tally(), new ProgramSettings()),
    ];

    private static readonly Dictionary<string, Lazy<Findings>> evaluated =
        All.ToDictionary(program => program.Name, program => new Lazy<Findings>(() => Evaluator.Evaluate(program.Tally, program.Settings)), StringComparer.Ordinal);

    /// <summary>The findings of one of them, evaluated once for all tests that look at them.</summary>
    public static Findings Evaluated(string name) => evaluated[name].Value;

    public static ProgramSketch FaultyLotAndClumsySite()
    {
        var sketch = new ProgramSketch();
        foreach (var site in new[] { "East", "North", "South", "West" })
        {
            foreach (var lot in new[] { "A1", "A2", "A]3", Levels.None })
            {
                for (var week = 0; week < 4; week++)
                {
                    sketch.Runs(Outcome.Negative, 240, site: site, lot: lot, day: week * 7, person: "op-1");
                    sketch.Runs(Outcome.Negative, 2, FollowUp.Agreed, site, lot, week * 7, "op-1");
                    sketch.Runs(Outcome.Positive, 2, FollowUp.Confirmed, site, lot, week * 7, "op-1");
                    sketch.Runs(Outcome.Positive, 1, lot == "A2" ? FollowUp.Refuted : FollowUp.Unverified, site, lot, week * 7, "op-1");
                    sketch.Runs(Outcome.Invalid, site == "West" ? 30 : 1, site: site, lot: lot, day: week * 7, person: "op-1");
                    sketch.Runs(Outcome.Inconclusive, 1, FollowUp.Refuted, site, lot, week * 7, "op-1");
                }
            }
        }

        return sketch
            .Runs(Outcome.Negative, 1, FollowUp.Missed)
            .Runs(Outcome.Positive, 40, FollowUp.Refuted, "East", "A]3", 8, "op-2")
            .Runs(Outcome.Positive, 15, FollowUp.Pending, "South", "A1", 27, "op-2")
            .Delay(DelayKind.RunToSpecimen, 24, 5, wholeDays: true).Delay(DelayKind.RunToSpecimen, 7, 60)
            .Delay(DelayKind.SpecimenToReport, 20, 90).Delay(DelayKind.SpecimenToReport, null, 1)
            .Retests(Outcome.Positive, 1, lot: "A2").Retests(Outcome.Negative, 1, FollowUp.Refuted, lot: "A2", retestLot: "C9").Retests(Outcome.Invalid, 2)
            .Retests(Outcome.Negative, 4, FollowUp.Refuted, "East", "A]3", 8)
            .Specimens(SpecimenReason.FollowUp, 1, 0, 0, 0, 40).Specimens(SpecimenReason.FollowUp, 0, 1, 0, 0, 60).Specimens(SpecimenReason.FollowUp, 2, 1, 1, 0, 5)
            .Specimens(SpecimenReason.Audit, 0, 1, 0, 0, 128).Specimens(SpecimenReason.Audit, 1, 0, 0, 0, 1).Specimens(SpecimenReason.NotRecorded, 0, 0, 0, 1, 2)
            .IntervalCases(2, 3);
    }
}
