using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Reporting.Tests;

/// <summary>Findings of invented programs. Made once: they do not change.</summary>
internal static class Programs
{
    /// <summary>Names that attack a page, a spreadsheet, a picture, a path or a terminal.</summary>
    public static readonly string[] HostileNames =
    [
        "<script>alert(\"x\")</script>", "=cmd|' /C calc'!A0", "[red]bold[/]", "\"quotes\" & 'apostrophes'", "+1", "-1", "@sum", "\tTab", "line\nbreak, comma",
        "\u202Etxt.exe", "\uFFFE\u0001", "{0}", "](x)", "北京", "上海", "Ünïcødé Λαμία", "a".PadRight(300, 'a'),
    ];

    public static readonly Findings FaultyLot = Evaluator.Evaluate(ExamplePrograms.FaultyLotAndClumsySite().Tally(), ExamplePrograms.Full with { Title = "Harbour Works" });

    public static readonly Findings Published = ExamplePrograms.Evaluated("published");

    public static readonly Findings Hostile = HostileFindings();

    public static readonly (string Name, Findings Findings)[] All =
    [
        .. ExamplePrograms.All.Where(program => program.Name != "published").Select(program => (program.Name, ExamplePrograms.Evaluated(program.Name))),
        ("published", Published),
        ("hostile", Hostile),
    ];

    private static Findings HostileFindings()
    {
        var sketch = new ProgramSketch();
        for (var index = 0; index < HostileNames.Length; index++)
        {
            var name = HostileNames[index];
            sketch.Runs(Outcome.Negative, 300, site: name, lot: name).Runs(Outcome.Positive, 3, FollowUp.Confirmed, name, name)
                .Runs(Outcome.Positive, index == 1 ? 60 : 1, FollowUp.Refuted, name, name).Runs(Outcome.Invalid, index == 0 ? 90 : 2, site: name, lot: name, day: 7);
        }

        return Evaluator.Evaluate(sketch.Tally(), ExamplePrograms.Full with
        {
            Title = "<b>Title & \"more\"</b>",
            Screens = [ExamplePrograms.Full.Screens[0] with { Name = "</svg><script>", Lots = ["*"] }],
        });
    }
}
