using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Flagging;

namespace ScreenStats.Evaluation.Tests.Flagging;

public class JudgementsTests
{
    private static readonly string[] Sites = ["East", "North", "South", "West"];
    private static readonly string[] Lots = ["A", "B", "C", "D"];

    [Fact]
    public void A_bad_lot_at_two_sites_is_flagged_and_does_not_make_these_sites_look_bad()
    {
        var counts = Program((lot, site) => lot == "B" && site is "East" or "South" ? (40, 2) : (1, 2));

        var judged = Judgements.Of(counts, true);

        Flagged(judged.LotsRefuted).Should().Equal("B");
        Flagged(judged.SitesRefuted).Should().BeEmpty();
        Flagged(judged.LotsInvalid).Should().BeEmpty();
        Flagged(judged.SitesInvalid).Should().BeEmpty();
        // The check can fail: with the bad lot's runs left in, both sites would be flagged.
        var naive = StepDown.Judge(counts.GroupBy(entry => entry.Site).Select(site => new FlagCandidate(site.Key, site.Sum(e => e.Tests), site.Sum(e => e.Refuted))), _ => "");
        Flagged(naive).Should().Equal("East", "South");
    }

    [Fact]
    public void A_clumsy_site_is_flagged_and_does_not_make_its_lots_look_bad()
    {
        // Lot C is used at the clumsy site nearly alone.
        var counts = Program((lot, site) => site == "West" ? (1, 80) : (1, 2))
            .Select(entry => entry is { Lot: "C", Site: not "West" } ? entry with { Runs = 60, Tests = 60, Inconclusive = 0, Invalid = 0, Refuted = 0 } : entry).ToList();

        var judged = Judgements.Of(counts, true);

        Flagged(judged.SitesInvalid).Should().Equal("West");
        Flagged(judged.LotsInvalid).Should().BeEmpty();
        judged.LotsInvalid["C"].Trials.Should().Be(180, "runs of the flagged site left the pool");
        var naive = StepDown.Judge(counts.GroupBy(entry => entry.Lot).Select(lot => new FlagCandidate(lot.Key, lot.Sum(e => e.Runs), lot.Sum(e => e.Unusable))), _ => "");
        Flagged(naive).Should().Equal("C");
    }

    [Fact]
    public void A_bad_lot_and_a_clumsy_site_are_told_apart_when_both_are_there()
    {
        var judged = Judgements.Of(Program((lot, site) => (lot == "B" ? 15 : 1, site == "West" ? 80 : 2)), true);

        Flagged(judged.LotsRefuted).Should().Equal("B");
        Flagged(judged.SitesRefuted).Should().BeEmpty();
        Flagged(judged.SitesInvalid).Should().Equal("West");
        Flagged(judged.LotsInvalid).Should().BeEmpty();
    }

    [Fact]
    public void Runs_without_a_lot_are_shown_and_not_tested_but_count_for_their_site()
    {
        var counts = Program((_, _) => (1, 2)).Append(new LotSiteCounts(Levels.None, "East", 1000, 150, 50, 800, 100, 20, 80)).ToList();

        var judged = Judgements.Of(counts, true);

        judged.LotsRefuted[Levels.None].P.Should().BeNull();
        judged.LotsInvalid[Levels.None].PUndefined.Should().Contain("not tested");
        judged.LotsRefuted["A"].PoolEvents.Should().Be(16);
        Flagged(judged.SitesRefuted).Should().Equal("East");
        Flagged(judged.SitesInvalid).Should().Equal("East");
    }

    [Fact]
    public void A_lot_used_only_at_a_flagged_site_is_not_tested_for_unusable_runs_and_says_why()
    {
        var counts = Program((_, site) => site == "West" ? (1, 80) : (1, 2)).Append(new LotSiteCounts("E", "West", 500, 20, 20, 460, 2, 1, 1)).ToList();

        var judged = Judgements.Of(counts, true);

        judged.LotsInvalid["E"].P.Should().BeNull();
        judged.LotsInvalid["E"].PUndefined.Should().Contain("sites flagged");
        judged.LotsRefuted["E"].P.Should().NotBeNull();
    }

    [Fact]
    public void Without_a_confirmatory_export_nothing_is_judged_by_refuted_positives()
    {
        var judged = Judgements.Of(Program((_, _) => (0, 2)), false);

        judged.LotsRefuted.Values.Concat(judged.SitesRefuted.Values).Should().OnlyContain(test => test.P == null && test.PUndefined!.Contains("no confirmatory export"));
        judged.SitesInvalid.Values.Should().OnlyContain(test => test.P != null);
    }

    [Fact]
    public void Other_names_change_no_number()
    {
        var counts = Program((lot, site) => (lot == "B" ? 15 : 1, site == "West" ? 80 : 2));
        static string Other(string name) => "z" + (char)('a' + ('Z' - name[0]));
        var renamed = counts.Select(entry => entry with { Lot = Other(entry.Lot), Site = Other(entry.Site) }).Reverse().ToList();

        var (before, after) = (Judgements.Of(counts, true), Judgements.Of(renamed, true));

        // Unequal counts, so that no tie is broken by name.
        foreach (var lot in Lots)
        {
            after.LotsRefuted[Other(lot)].Should().Be(before.LotsRefuted[lot]);
            after.LotsInvalid[Other(lot)].Should().Be(before.LotsInvalid[lot]);
        }

        foreach (var site in Sites)
        {
            after.SitesRefuted[Other(site)].Should().Be(before.SitesRefuted[site]);
            after.SitesInvalid[Other(site)].Should().Be(before.SitesInvalid[site]);
        }
    }

    [Fact]
    public void A_lot_is_not_flagged_for_the_rate_of_the_site_that_uses_it_most()
    {
        // West refutes ten times as many with every lot, and uses mostly lot C.
        var counts = Program((_, site) => site == "West" ? (20, 2) : (2, 2))
            .Select(entry => (entry.Lot == "C") == (entry.Site == "West") ? entry with { Runs = 8 * entry.Runs, Tests = 8 * entry.Tests, Refuted = 8 * entry.Refuted, Positives = (8 * entry.Refuted) + 2 } : entry).ToList();

        var judged = Judgements.Of(counts, true);

        judged.LotsRefuted["C"].PHolm.Should().BeLessThan(StepDown.Threshold, "as if every run were like every other");
        judged.LotsRefuted["C"].PWidened.Should().BeGreaterThan(0.3, "within sites it is like the others");
        Flagged(judged.LotsRefuted).Should().BeEmpty();
        Flagged(judged.SitesRefuted).Should().Equal("West");
    }

    [Fact]
    public void A_lot_that_is_alone_at_its_sites_is_still_judged_against_all_others()
    {
        var counts = Program((lot, _) => lot == "B" ? (20, 2) : (1, 2)).Where(entry => (entry.Lot == "B") == (entry.Site == "East")).ToList();

        Flagged(Judgements.Of(counts, true).LotsRefuted).Should().Equal("B");
    }

    [Fact]
    public void A_few_people_with_the_same_result_again_and_again_make_no_lot_or_site_look_bad()
    {
        // 60 people at West are tested 20 times with each lot; three of them have 8 unusable runs with lot C. Elsewhere nobody has more than one.
        var cells = new Sketches.TallyCellsBuilder();
        foreach (var site in Sites)
        {
            for (var person = 0; person < 60; person++)
            {
                for (var run = 0; run < 20; run++)
                {
                    var few = site == "West" && person < 3 && run % 4 == 2 || person == 10 + run && run % 4 != 3;
                    var often = site == "West" && person < 3 && run % 4 == 2;
                    cells.Add($"{site}-{person}", often || (few && site != "West") ? Outcome.Invalid : Outcome.Negative, site: site, lot: Lots[run % 4], day: run);
                    if (often) cells.Add($"{site}-{person}", Outcome.Invalid, site: site, lot: "C", day: run + 30);
                }
            }
        }

        var tally = cells.Tally();
        var counts = new LotSiteTable(tally).Counts;

        var alike = Judgements.Of(counts, true);
        var judged = Judgements.Of(counts, true, new PersonEffects(new Evaluation.Clusters.PersonSums(tally), counts));

        Flagged(alike.LotsInvalid).Should().Equal("C");
        Flagged(judged.LotsInvalid).Should().BeEmpty();
        judged.LotsInvalid["C"].DesignEffect.Should().BeGreaterThan(5);
        judged.LotsInvalid["C"].P.Should().Be(alike.LotsInvalid["C"].P, "the first p-value is the design's");
    }

    /// <summary>Every lot at every site: 1,000 runs and a few more, with so many refuted positives and unusable runs.</summary>
    private static List<LotSiteCounts> Program(Func<string, string, (long Refuted, long Unusable)> what)
    {
        var counts = new List<LotSiteCounts>();
        foreach (var lot in Lots)
        {
            foreach (var site in Sites)
            {
                var (refuted, unusable) = what(lot, site);
                var runs = 1000 + (10 * Array.IndexOf(Lots, lot)) + Array.IndexOf(Sites, site);
                counts.Add(new LotSiteCounts(lot, site, runs, unusable / 2, unusable - (unusable / 2), runs - unusable, refuted + 2, 2, refuted));
            }
        }

        return counts;
    }

    private static IEnumerable<string> Flagged(IReadOnlyDictionary<string, FlagTest> judged) =>
        judged.Where(entry => entry.Value.Flagged).Select(entry => entry.Key).Order(StringComparer.Ordinal);
}
