using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Flagging;
using ScreenStats.Statistics.Proportions;
using ScreenStats.Testing.Programs;

namespace ScreenStats.Evaluation.Tests.Studies;

/// <summary>
/// How often flags are false, and how often a faulty lot is found, on drawn programs from 3 lots and 2,000 runs to 60 lots and 1,000,000 runs.
/// 40 programs a line in every run; 2,000 by hand (SCREENSTATS_FULL_STUDIES=1), committed in tests/reference/studies/flag-study.csv.
/// </summary>
/// <remarks>
/// <para>
/// False is, of a lot: flagged although it is sound. Of a site: flagged although its own true rate is not above that of all others in the pool of that
/// round (their true rates, weighted with their runs). Sites of such a program do differ: one whose true rate is above the others' is rightly
/// flagged, and how much above the column of the ratio of 1.5 tells: "trivial" is a site flagged whose true rate is less than 1.5 times the others'.
/// </para>
/// <para>Rule "pool": the first p-value alone, every run like every other. Rule "flag": the rule in force, the widened one too.</para>
/// </remarks>
public sealed class FlagStudyTests(ITestOutputHelper output)
{
    private const int Few = 40;
    private const int All = 2_000;
    private const double PersonCorrelation = 0.1;
    private const double SiteCorrelation = 0.01;

    private static readonly StudyFile File = new(
        "flag-study.csv", "study,programs,person_correlation,site_correlation,fault,table,kind,rule,measure,count,of,share,upper_95");

    private static readonly string[] Rules = ["pool", "flag"];

    /// <summary>With neither correlation, each alone, and both.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(PersonCorrelation, 0)]
    [InlineData(0, SiteCorrelation)]
    [InlineData(PersonCorrelation, SiteCorrelation)]
    public void In_sound_programs_flags_are_false_in_at_most_one_of_a_hundred(double person, double site)
    {
        var study = FormattableString.Invariant($"sound {person} {site}");

        // With both, 40 programs in every run; the others by hand only.
        if (StudyFile.IsFull || (person > 0 && site > 0))
        {
            var found = Study(study, person, site, 1);

            // Of 40 programs none may have a false flag but by a chance of 1 %: three have a probability of 0.008.
            foreach (var (key, count) in found.Where(entry => entry.Key is { Programs: Few, Rule: "flag", Measure: "false" })) count.Count.Should().BeLessThanOrEqualTo(2, key.ToString());
        }

        Committed(study).Count(line => line.Programs == All && line is { Rule: "flag", Measure: "false" }).Should().Be(4);
        foreach (var line in Committed(study).Where(line => line.Programs == All && line is { Rule: "flag", Measure: "false" })) line.Upper.Should().BeLessThan(0.015, line.ToString());
    }

    /// <summary>A lot with 8 to 12 % of the tests, five times as many false positives, and at least 20 refuted positives more for it, as expected.</summary>
    [Fact]
    public void A_lot_with_a_tenth_of_the_tests_and_a_fivefold_fault_is_found_in_nine_of_ten_programs()
    {
        const string Faulty = "fivefold";
        var found = Study(Faulty, PersonCorrelation, SiteCorrelation, 5);

        // 90 % of 40 is 36; 31 has a chance of 0.015 at that share.
        found[new(Few, "lots", "refuted", "flag", "found")].Count.Should().BeGreaterThan(31);
        Committed(Faulty).Single(line => line is { Programs: All, Rule: "flag", Measure: "found" }).Share.Should().BeGreaterThanOrEqualTo(0.9);
        foreach (var line in Committed(Faulty).Where(line => line is { Programs: All, Rule: "flag", Measure: "false" })) line.Upper.Should().BeLessThan(0.015, line.ToString());
    }

    /// <summary>What the second p-value is for: with the first alone these would be false far more often than one of a hundred.</summary>
    [Fact]
    public void The_first_p_value_alone_would_be_false_far_more_often_where_sites_or_people_differ()
    {
        double Share(string study, string table, string kind) => Committed(study).Single(line => line.Programs == All && line.Table == table && line.Kind == kind && line is { Rule: "pool", Measure: "false" }).Share;

        Share("sound 0 0.01", "lots", "refuted").Should().BeGreaterThan(0.1);
        Share("sound 0.1 0", "sites", "invalid").Should().BeGreaterThan(0.1);
        // Here sites differ only in how many of their positives are followed up.
        Share("sound 0 0", "lots", "refuted").Should().BeLessThan(0.05);
    }

    private Dictionary<Key, (int Count, int Of)> Study(string study, double person, double site, double factor)
    {
        var found = new Dictionary<Key, (int Count, int Of)>();
        Parallel.For(0, StudyFile.IsFull ? All : Few, number =>
        {
            var outcome = Judge(Draw(number, person, site, factor));
            lock (found)
            {
                foreach (var (key, yes) in outcome)
                {
                    foreach (var programs in (int[])[Few, All])
                    {
                        if (programs == Few ? number >= Few : !StudyFile.IsFull) continue;
                        var (count, of) = found.GetValueOrDefault(key with { Programs = programs });
                        found[key with { Programs = programs }] = (count + (yes ? 1 : 0), of + 1);
                    }
                }
            }
        });
        var lines = found.Select(entry =>
        {
            var ((programs, table, kind, rule, measure), (count, of)) = entry;
            var upper = ProportionInterval.ClopperPearson(count, of).Upper!.Value;
            return StudyFile.Line(
                study, programs, person, site, factor, table, kind, rule, measure, count, of,
                ((double)count / of).ToString("0.0000", CultureInfo.InvariantCulture), upper.ToString("0.0000", CultureInfo.InvariantCulture));
        }).Order(StringComparer.Ordinal).ToList();
        foreach (var line in lines) output.WriteLine(line);
        File.Settle(study, StudyFile.IsFull ? lines : [.. lines.Concat(File.Lines(study).Where(line => !line.StartsWith(FormattableString.Invariant($"{study},{Few},"), StringComparison.Ordinal))).Order(StringComparer.Ordinal)]);
        return found;
    }

    private static DrawnProgram Draw(int number, double person, double site, double factor)
    {
        var random = new RandomNumbers(26_112_500UL + (ulong)number);
        for (var attempt = 0UL; ; attempt++)
        {
            // The two ends of sizes are drawn where every lot is sound.
            var plan = DrawnPlan.Draw(factor > 1 ? number + 2 : number, random) with { PersonCorrelation = person, SiteCorrelation = site };
            if (factor > 1) plan = plan with { Lots = Math.Min(plan.Lots, 15), Fault = new LotFault(factor, 0.1, 20) };
            if (ProgramDraw.TryOf(plan, 26_112_500_000UL + (ulong)number + (attempt * 1_000_000)) is { } drawn) return drawn;
        }
    }

    private static List<(Key Key, bool Yes)> Judge(DrawnProgram drawn)
    {
        var tally = Tally.FromCells(drawn.Cells);
        var counts = new LotSiteTable(tally).Counts;
        var outcome = new List<(Key, bool)>();
        foreach (var rule in Rules)
        {
            // Without what is known of people, and with all sites as one, the second p-value is the first.
            var judged = rule == "pool"
                ? Pooled(counts)
                : Of(Judgements.Of(counts, true, new PersonEffects(new PersonSums(tally), counts)));
            foreach (var (table, kind, levels) in judged)
            {
                var flagged = levels.Where(one => one.Value.Flagged).Select(one => (one.Key, Ratio: Ratio(drawn, table, kind, levels, one.Key))).ToList();
                outcome.Add((new(Few, table, kind, rule, "false"), flagged.Exists(one => one.Ratio <= 1)));
                if (table == "sites") outcome.Add((new(Few, table, kind, rule, "trivial"), flagged.Exists(one => one.Ratio is > 1 and < 1.5)));
                if (table == "sites") outcome.Add((new(Few, table, kind, rule, "flagged"), flagged.Count > 0));
                if (table == "lots" && kind == "refuted" && drawn.FaultyLot is { } faulty) outcome.Add((new(Few, table, kind, rule, "found"), flagged.Exists(one => one.Key == faulty)));
                if (table == "lots" && kind == "refuted" && drawn is { FaultyLot: { } few, ExpectedFaultyRefuted: < 50 }) outcome.Add((new(Few, table, kind, rule, "found with 20 to 50"), flagged.Exists(one => one.Key == few)));
            }
        }

        return outcome;
    }

    /// <summary>The true rate over that of the others in the pool: of lots the fault's factor or 1.</summary>
    private static double Ratio(DrawnProgram drawn, string table, string kind, IReadOnlyDictionary<string, FlagTest> levels, string level)
    {
        if (table == "lots") return kind == "refuted" && level == drawn.FaultyLot ? drawn.Plan.Fault!.Factor : 1;
        var rates = kind == "refuted" ? drawn.RefutedRates : drawn.UnusableRates;
        var others = levels.Where(one => one.Key != level && one.Value.Round >= levels[level].Round).ToList();
        return rates[level] * others.Sum(one => one.Value.Trials) / others.Sum(one => one.Value.Trials * rates[one.Key]);
    }

    private static (string Table, string Kind, IReadOnlyDictionary<string, FlagTest> Levels)[] Of(Judgements judged) =>
    [
        ("lots", "refuted", judged.LotsRefuted), ("sites", "refuted", judged.SitesRefuted),
        ("lots", "invalid", judged.LotsInvalid), ("sites", "invalid", judged.SitesInvalid),
    ];

    private static (string Table, string Kind, IReadOnlyDictionary<string, FlagTest> Levels)[] Pooled(IReadOnlyCollection<LotSiteCounts> counts)
    {
        static IReadOnlyDictionary<string, FlagTest> Judge(IEnumerable<IGrouping<string, LotSiteCounts>> levels, Func<LotSiteCounts, bool> inPool, Func<LotSiteCounts, (long Trials, long Events)> of) =>
            StepDown.Judge(levels.Select(level => new FlagCandidate(level.Key, level.Where(inPool).Sum(entry => of(entry).Trials), level.Where(inPool).Sum(entry => of(entry).Events))), _ => "");

        var (byLot, bySite) = (counts.GroupBy(entry => entry.Lot).ToList(), counts.GroupBy(entry => entry.Site).ToList());
        var lotsRefuted = Judge(byLot, _ => true, entry => (entry.Tests, entry.Refuted));
        var sitesInvalid = Judge(bySite, _ => true, entry => (entry.Runs, entry.Unusable));
        return
        [
            ("lots", "refuted", lotsRefuted), ("sites", "refuted", Judge(bySite, entry => !lotsRefuted[entry.Lot].Flagged, entry => (entry.Tests, entry.Refuted))),
            ("lots", "invalid", Judge(byLot, entry => !sitesInvalid[entry.Site].Flagged, entry => (entry.Runs, entry.Unusable))), ("sites", "invalid", sitesInvalid),
        ];
    }

    private static IEnumerable<Line> Committed(string study) => File.Lines(study).Select(line => line.Split(',')).Select(part => new Line(
        int.Parse(part[1], CultureInfo.InvariantCulture), part[5], part[6], part[7], part[8], double.Parse(part[11], CultureInfo.InvariantCulture), double.Parse(part[12], CultureInfo.InvariantCulture)));

    private sealed record Key(int Programs, string Table, string Kind, string Rule, string Measure);

    private sealed record Line(int Programs, string Table, string Kind, string Rule, string Measure, double Share, double Upper);
}
