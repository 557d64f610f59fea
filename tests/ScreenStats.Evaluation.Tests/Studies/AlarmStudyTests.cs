using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Alarms;
using ScreenStats.Statistics.Proportions;
using ScreenStats.Testing.Programs;

namespace ScreenStats.Evaluation.Tests.Studies;

/// <summary>
/// How often the alarms that are looked at every day are ever false, and after how many days they come, on drawn programs whose people and sites differ
/// and whose positives are reported late. 40 programs in every run, 2,000 by hand, committed in tests/reference/studies/alarm-study.csv.
/// </summary>
/// <remarks>
/// False is any alarm of the rule on any lot or site at any time in a program whose lots are all sound and whose sites' rates stay what they are;
/// of unusable runs above the limit: on a site whose true rate is not above it. The rise of unusable runs promises a number of false alarms a year, not a chance
/// of any ever, and measures sites against twice the program's rate at most: it is false on a lot, and on a site whose true rate is no more than 1.5 times the mean of all
/// sites; worse sites are what it is to find.
/// </remarks>
public sealed class AlarmStudyTests(ITestOutputHelper output)
{
    private const int Few = 40;
    private const int All = 2_000;
    private const int Faulty = 200;

    private static readonly StudyFile File = new("alarm-study.csv", "study,programs,rule,measure,count,of,share,upper_95,median_days");

    private static readonly AlarmRule[] Rules = [AlarmRule.LotEvidence, AlarmRule.LowYield, AlarmRule.RefutedRise, AlarmRule.InvalidEvidence, AlarmRule.InvalidRise];

    [Fact]
    public void A_sound_lot_ever_has_an_alarm_with_at_most_the_stated_chance()
    {
        var found = new Dictionary<(int Programs, AlarmRule Rule), int>();
        Parallel.For(0, StudyFile.IsFull ? All : Few, number =>
        {
            var random = new RandomNumbers(31_112_500UL + (ulong)number);
            var plan = DrawnPlan.Draw(number, random) with { PersonCorrelation = 0.1, SiteCorrelation = 0.01 };
            var drawn = ProgramDraw.Of(plan, 31_112_500_000UL + (ulong)number);
            var alarms = AlarmReplay.At(Tally.FromCells(drawn.Cells), new ProgramSettings())!.Alarms;
            var usual = drawn.UnusableRates.Values.Average();
            lock (found)
            {
                foreach (var rule in Rules)
                {
                    var isFalse = alarms.Any(alarm => alarm.Rule == rule && rule switch
                    {
                        AlarmRule.InvalidEvidence => alarm.By == "site" && drawn.UnusableRates[alarm.Level] <= 0.05,
                        AlarmRule.InvalidRise => alarm.By == "lot" || drawn.UnusableRates[alarm.Level] <= 1.5 * usual,
                        _ => true,
                    });
                    if (number < Few) found[(Few, rule)] = found.GetValueOrDefault((Few, rule)) + (isFalse ? 1 : 0);
                    if (StudyFile.IsFull) found[(All, rule)] = found.GetValueOrDefault((All, rule)) + (isFalse ? 1 : 0);
                }
            }
        });
        Settle("sound", [.. found.Select(entry => Line("sound", entry.Key.Programs, entry.Key.Rule, "false", entry.Value, entry.Key.Programs, null))]);
        found[(Few, AlarmRule.LotEvidence)].Should().BeLessThanOrEqualTo(2);
        File.Lines("sound").Single(line => line.StartsWith("sound,2000,lot-evidence,", StringComparison.Ordinal)).Split(',')[7].Should().Match(upper => double.Parse(upper, CultureInfo.InvariantCulture) < 0.015);
    }

    /// <summary>12 lots, 60,000 runs at 5 sites in 26 weeks; one lot with a tenth of the tests is faulty, from its first day or from the middle of its days.</summary>
    [Theory]
    [InlineData(2, 0)]
    [InlineData(3, 0)]
    [InlineData(5, 0)]
    [InlineData(10, 0)]
    [InlineData(20, 0)]
    [InlineData(5, 0.5)]
    [InlineData(10, 0.5)]
    [InlineData(20, 0.5)]
    public void The_larger_the_fault_the_sooner_the_alarm(double factor, double from)
    {
        var study = FormattableString.Invariant($"fault {factor} from {from}");
        if (!StudyFile.IsFull && factor != 5)
        {
            // By hand only: the committed shares rise with the fault.
            double Share(double size) => double.Parse(File.Lines(FormattableString.Invariant($"fault {size} from {from}")).Select(line => line.Split(',')).Single(line => line[1] == "200")[6], CultureInfo.InvariantCulture);
            Share(factor).Should().BeInRange(factor < 5 ? 0 : Share(5), factor < 5 ? Share(5) : 1);
            return;
        }

        var programs = StudyFile.IsFull ? Faulty : Few;
        var days = new List<int>[2] { [], [] };
        Parallel.For(0, programs, number =>
        {
            // The same seeds for every fault, as far as the schedule allows.
            for (var attempt = 0UL; ; attempt++)
            {
                var plan = new DrawnPlan
                {
                    Lots = 12, Runs = 60_000, Sites = 5, Weeks = 26, FalsePositiveRate = 0.005, PersonCorrelation = 0.1, SiteCorrelation = 0.001, Fault = new LotFault(factor, 0.1, 0, from),
                };
                if (ProgramDraw.TryOf(plan, 41_112_500_000UL + (ulong)number + (attempt * 1_000_000)) is not { } drawn) continue;
                var alarm = AlarmReplay.At(Tally.FromCells(drawn.Cells), new ProgramSettings())!.Alarms.FirstOrDefault(one => one.Rule == AlarmRule.LotEvidence && one.Level == drawn.FaultyLot);
                var wait = alarm is null ? int.MaxValue : alarm.Since.DayNumber - drawn.FaultFrom!.Value.DayNumber;
                lock (days)
                {
                    if (number < Few) days[0].Add(wait);
                    days[1].Add(wait);
                }

                return;
            }
        });
        Settle(study, [.. new[] { days[0], days[1] }.Where((all, index) => all.Count == (index == 0 ? Few : Faulty)).Select(all => Line(study, all.Count, AlarmRule.LotEvidence, "found", all.Count(day => day < int.MaxValue), all.Count, all.Order().ElementAt(all.Count / 2)))]);
    }

    [Fact]
    public void A_tenfold_fault_is_found_in_nine_of_ten_programs_and_within_six_weeks()
    {
        var line = File.Lines("fault 10 from 0").Select(one => one.Split(',')).Single(one => one[1] == "200");
        double.Parse(line[6], CultureInfo.InvariantCulture).Should().BeGreaterThan(0.9);
        int.Parse(line[8], CultureInfo.InvariantCulture).Should().BeLessThan(42);
    }

    private static string Line(string study, int programs, AlarmRule rule, string measure, int count, int of, int? median) => StudyFile.Line(
        study, programs, AlarmNames.Of(rule), measure, count, of, ((double)count / of).ToString("0.0000", CultureInfo.InvariantCulture),
        ProportionInterval.ClopperPearson(count, of).Upper!.Value.ToString("0.0000", CultureInfo.InvariantCulture), median is null or int.MaxValue ? "" : median);

    private void Settle(string study, List<string> lines)
    {
        foreach (var line in lines) output.WriteLine(line);
        File.Settle(study, StudyFile.IsFull ? [.. lines.Order(StringComparer.Ordinal)] : [.. lines.Concat(File.Lines(study).Where(line => !line.StartsWith(FormattableString.Invariant($"{study},{Few},"), StringComparison.Ordinal))).Order(StringComparer.Ordinal)]);
    }
}
