using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Alarms;
using ScreenStats.Evaluation.Controls;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Alarms;

/// <summary>The alarms on controls are told day by day, the pages on controls look back: both must say the same of the same day.</summary>
public class AlarmsAndControlPagesTests
{
    private static readonly DateOnly Day = ProgramSketch.FirstDay;

    [Fact]
    public void A_failed_control_stands_as_an_alarm_where_its_bracket_is_open()
    {
        var random = new Random(20_261_125);
        var seen = 0;
        for (var program = 0; program < 40; program++)
        {
            var tally = Drawn(random);
            foreach (var day in Enumerable.Range(0, 20).Select(Day.AddDays))
            {
                var known = tally.AsOf(day);
                if (known.Screens.IsEmpty) continue;
                var open = ControlBrackets.Of(known.Controls, known.Screens).Where(bracket => bracket.NextPassedDay is null)
                    .Select(bracket => $"{bracket.Site}, {bracket.Lot}").Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
                var alarms = AlarmReplay.At(tally, new ProgramSettings(), day)!.Alarms.Where(alarm => alarm.Rule == AlarmRule.ControlFailed)
                    .Select(alarm => alarm.Level).Order(StringComparer.Ordinal).ToList();

                alarms.Should().Equal(open, "program {0}, {1:yyyy-MM-dd}", program, day);
                seen += open.Count;
            }
        }

        seen.Should().BeGreaterThan(100);
    }

    [Fact]
    public void A_missing_control_stands_as_an_alarm_only_where_the_page_counts_a_start_without_one()
    {
        var random = new Random(20_261_126);
        var settings = new ProgramSettings { Policy = new PolicySettings { ControlsRequired = [ControlTrigger.NewLot] } };
        var seen = 0;
        for (var program = 0; program < 40; program++)
        {
            var tally = Drawn(random);
            foreach (var day in Enumerable.Range(0, 20).Select(Day.AddDays))
            {
                var known = tally.AsOf(day);
                if (known.Screens.IsEmpty || ControlStarts.Unknown(ControlTrigger.NewLot, known.Controls) is not null) continue;
                var without = ControlStarts.Of(ControlTrigger.NewLot, known.Controls, known.Screens, known.Operators)
                    .Where(start => start.IsOpen)
                    .Select(start => $"{start.Site}, {start.Level}").Order(StringComparer.Ordinal).ToList();
                var alarms = AlarmReplay.At(tally, settings, day)!.Alarms.Where(alarm => alarm.Rule == AlarmRule.ControlMissing)
                    .Select(alarm => alarm.Level).Order(StringComparer.Ordinal).ToList();

                alarms.Should().Equal(without, "program {0}, {1:yyyy-MM-dd}", program, day);
                seen += without.Count;
            }
        }

        seen.Should().BeGreaterThan(100);
    }

    private static Tally Drawn(Random random)
    {
        var sketch = new ProgramSketch();
        var controls = new List<ControlCell>();
        for (var day = 0; day < 20; day++)
        {
            foreach (var (site, lot) in new[] { ("North", "A1"), ("North", "A2"), ("South", "A1") })
            {
                if (random.Next(3) == 0) sketch.Runs(Outcome.Negative, 1 + random.Next(20), site: site, lot: lot, day: day);
                for (var control = random.Next(-5, 3); control > 0; control--)
                {
                    var expected = random.Next(2) == 0 ? ControlExpectation.Positive : ControlExpectation.Negative;
                    var observed = random.Next(3) == 0 ? Outcome.Invalid : expected == ControlExpectation.Positive ? Outcome.Positive : Outcome.Negative;
                    controls.Add(new ControlCell(site, lot, "k1", Day.AddDays(day), random.Next(4) == 0 ? null : new TimeOnly(random.Next(24), 0), "op-1", expected, observed, 1));
                }
            }
        }

        sketch.Runs(Outcome.Negative, 1, site: "South", lot: "A1", day: 19);
        return Tally.FromCells(sketch.Tally().Cells with { Controls = [.. controls] });
    }
}
