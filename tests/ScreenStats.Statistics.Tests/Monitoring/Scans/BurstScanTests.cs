using System.Globalization;
using ScreenStats.Statistics.Monitoring.Scans;

namespace ScreenStats.Statistics.Tests.Monitoring.Scans;

public sealed class BurstScanTests
{
    private static readonly Gen<BurstCell[]> Cells = Gen.Select(Gen.Int[0, 4], Gen.Int[0, 3], Gen.Int[0, 40], Gen.Long[0, 60], Gen.Double[0, 1])
        .Select((lot, site, day, trials, part) => new BurstCell(lot, site, day, trials, (long)(part * part * part * part * trials))).Array[1, 40];

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("bursts"), row =>
    {
        var options = new BurstScanOptions { LongestDays = (int)row.Count("longest"), Replicates = row.Has("chance") ? 4999 : 0 };
        var result = BurstScan.Strongest(Read(row.Text("cells")), options);
        var burst = result.Strongest!;
        var messages = new List<string?> { row.Mismatch("score", burst.LogLikelihoodRatio) };
        if (LikelihoodRatioScore.Bernoulli(burst.Observed, burst.Trials, result.Events, result.Trials) != burst.LogLikelihoodRatio) messages.Add($"{row}: counts and score differ");
        if (row.Has("chance"))
        {
            // Simulated: within 3.5 standard errors of the chance over all ways to place the events.
            var chance = row.Number("chance");
            var error = (3.5 * Math.Sqrt(chance * (1 - chance) / 5000)) + (1.0 / 5000);
            if (Math.Abs(result.ChanceUnderNoBurst!.Value - chance) > error) messages.Add($"{row}: chance {result.ChanceUnderNoBurst}, not {chance}");
        }

        return messages;
    });

    [Fact]
    public void There_are_at_least_fifty_independent_rows() => ReferenceTable.Load("bursts").Count.Should().BeGreaterThanOrEqualTo(50);

    [Fact]
    public void Neither_order_nor_names_nor_split_cells_matter() => Cells.Sample(cells =>
    {
        var options = new BurstScanOptions { Replicates = 19, LongestDays = 9 };
        var one = BurstScan.Strongest(cells, options);
        var other = BurstScan.Strongest(
            [.. cells.Reverse().SelectMany(c => new[] { new BurstCell(c.Lot, c.Site, c.Day - 1000, c.Events, c.Events), new BurstCell(c.Lot, c.Site, c.Day - 1000, c.Trials - c.Events, 0) })], options);
        return one.Reason == other.Reason && one.ChanceUnderNoBurst == other.ChanceUnderNoBurst && one.Strongest?.LogLikelihoodRatio == other.Strongest?.LogLikelihoodRatio
            && one.Strongest?.FirstDay == other.Strongest?.FirstDay + 1000 && one.Strongest?.Lot == other.Strongest?.Lot;
    }, iter: 50);

    [Fact]
    public void A_longer_window_or_the_whole_program_never_weakens_the_strongest() => Cells.Sample(cells =>
    {
        double Score(int days, bool all) => BurstScan.Strongest(cells, new BurstScanOptions { Replicates = 0, LongestDays = days, WholeProgram = all }).Strongest?.LogLikelihoodRatio ?? 0;
        return Score(3, false) <= Score(30, false) + 1e-12 && Score(30, false) <= Score(30, true) + 1e-12;
    });

    [Fact]
    public void The_chance_is_the_same_for_the_same_seed_and_another_for_another()
    {
        var cells = Program(8, 4, 60, 30_000, 40, burst: 0);
        double Chance(ulong seed) => BurstScan.Strongest(cells, new BurstScanOptions { Seed = seed }).ChanceUnderNoBurst!.Value;
        Chance(5).Should().Be(Chance(5));
        new[] { Chance(1), Chance(2), Chance(3), Chance(4) }.Distinct().Should().HaveCountGreaterThan(1);
    }

    [Fact]
    public void What_the_first_simulated_programs_say_is_enough_only_where_the_burst_is_nothing_special()
    {
        var options = new BurstScanOptions { FirstReplicates = 39, Replicates = 199 };
        var nothing = Enumerable.Range(0, 8).Select(seed => BurstScan.Strongest(Program(8, 4, 60, 30_000, 40, burst: 0, seed), options)).ToList();
        nothing.Should().Contain(result => result.Simulated == 39).And.OnlyContain(result => result.Simulated == 199 || (result.Simulated == 39 && result.ChanceUnderNoBurst > 0.2));

        var cells = Program(8, 4, 60, 30_000, 40, burst: 20);
        var burst = BurstScan.Strongest(cells, new BurstScanOptions { FirstReplicates = 39 });
        (burst.Simulated, burst.ChanceUnderNoBurst).Should().Be((999, BurstScan.Strongest(cells).ChanceUnderNoBurst));
    }

    // As the published workplace program: most false positives from one lot at two sites within two weeks.
    [Fact]
    public void A_burst_in_a_program_of_a_million_tests_is_found_where_it_is()
    {
        var cells = Program(60, 20, 365, 1_000_000, 300, burst: 40);
        var result = BurstScan.Strongest(cells);
        result.Trials.Should().BeGreaterThan(900_000);
        result.ChanceUnderNoBurst.Should().Be(0.001);
        var burst = result.Strongest!;
        (burst.Lot, burst.Site).Should().Be((17, 3));
        burst.FirstDay.Should().BeInRange(198, 202);
        burst.LastDay.Should().BeInRange(209, 216);
        burst.Observed.Should().BeGreaterThan(35);
        burst.Expected.Should().BeLessThan(2);
    }

    // Exact test by simulation: under no burst the chance is below a level about as often as the level says; here at 0.1, within 4 standard errors.
    [Fact]
    public void Without_a_burst_a_small_chance_is_as_rare_as_it_says()
    {
        var small = Enumerable.Range(0, 200).Count(seed =>
            BurstScan.Strongest(Program(4, 3, 30, 3000, 15, burst: 0, seed), new BurstScanOptions { Replicates = 99, Seed = (ulong)seed }).ChanceUnderNoBurst <= 0.1);
        small.Should().BeInRange(4, 37);
    }

    [Fact]
    public void What_has_no_burst_says_why()
    {
        foreach (var (cells, reason) in new (BurstCell[], UndefinedReason)[]
        {
            ([], UndefinedReason.NoTrials), ([new(0, 0, 1, 0, 0)], UndefinedReason.NoTrials), ([new(0, 0, 1, 50, 0)], UndefinedReason.NoEvents),
            ([new(0, 0, 1, 5, 5)], UndefinedReason.OnlyEvents), ([new(0, 0, 1, 50, 3)], UndefinedReason.NoWindowWithExcess),
        })
        {
            var result = BurstScan.Strongest(cells);
            (result.Reason, result.Strongest, result.ChanceUnderNoBurst).Should().Be((reason, null, null));
        }
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        foreach (var (call, name) in new (Action, string)[]
        {
            (() => _ = new BurstCell(-1, 0, 0, 1, 0), "lot"), (() => _ = new BurstCell(0, -1, 0, 1, 0), "site"), (() => _ = new BurstCell(0, 0, 0, -1, 0), "trials"), (() => _ = new BurstCell(0, 0, 0, 1, 2), "events"),
            (() => BurstScan.Strongest([], new BurstScanOptions { LongestDays = 0 }), "LongestDays"), (() => BurstScan.Strongest([], new BurstScanOptions { Replicates = -1 }), "Replicates"),
        })
        {
            call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
        }
    }

    private static BurstCell[] Read(string text) => [.. text.Split(' ').Select(cell =>
    {
        var n = cell.Split(':').Select(part => int.Parse(part, CultureInfo.InvariantCulture)).ToArray();
        return new BurstCell(n[0], n[1], n[2], n[3], n[4]);
    })];

    /// <summary>A program drawn by a small generator of its own: each lot is used for some weeks at all sites; a burst of lot 17 at site 3 from day 200.</summary>
    private static BurstCell[] Program(int lots, int sites, int days, long tests, int events, int burst, int seed = 0)
    {
        var state = 88172645463325252UL + (ulong)(seed * 7919);
        int Draw(int limit)
        {
            state ^= state << 13;
            state ^= state >> 7;
            state ^= state << 17;
            return (int)(state % (ulong)limit);
        }

        var each = Math.Max(1, tests / ((long)days * sites * 4));
        var counts = new SortedDictionary<(int Lot, int Site, int Day), (long Trials, long Events)>();
        for (var day = 0; day < days; day++)
        {
            for (var site = 0; site < sites; site++)
            {
                for (var i = 0; i < 4; i++)
                {
                    var lot = ((day * lots / days) + (i * 5) + lots) % lots;
                    counts.TryGetValue((lot, site, day), out var count);
                    counts[(lot, site, day)] = (count.Trials + each, count.Events);
                }
            }
        }

        for (var day = 200; burst > 0 && day < 214; day++) counts[(17, 3, day)] = (counts.GetValueOrDefault((17, 3, day)).Trials + each, 0);
        var keys = counts.Keys.ToArray();
        for (var i = 0; i < events; i++)
        {
            var key = keys[Draw(keys.Length)];
            if (counts[key].Events < counts[key].Trials) counts[key] = (counts[key].Trials, counts[key].Events + 1);
        }

        for (var i = 0; i < burst; i++) counts[(17, 3, 200 + (i % 14))] = (counts[(17, 3, 200 + (i % 14))].Trials, counts[(17, 3, 200 + (i % 14))].Events + 1);
        return [.. counts.Select(pair => new BurstCell(pair.Key.Lot, pair.Key.Site, pair.Key.Day, pair.Value.Trials, pair.Value.Events))];
    }
}
