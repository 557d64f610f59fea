using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Comparisons;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Comparisons;

public class ComparisonAnalysisTests
{
    [Fact]
    public void A_site_that_tested_in_the_wave_is_not_blamed_and_the_report_names_the_truly_highest()
    {
        // The truth: 0.5 % before the wave and 5 % in it at every site; at Quarry twice that. Harbour tested mostly in the wave, Quarry mostly before.
        var findings = Compare(Wave());
        var summary = Summary(findings, ComparisonMeasure.Positivity);

        (summary.HighestRaw, summary.HighestAdjusted).Should().Be(("Harbour", "Quarry"));
        summary.Differ.Should().BeTrue();
        summary.AdjustedFor.Should().Equal("period");
        summary.StandingOut.Should().NotContain("Harbour");
        var harbour = Row(findings, ComparisonMeasure.Positivity, "Harbour");
        harbour.Ratio.Estimate.Should().BeInRange(0.7, 1.1);
        harbour.Place.RawStanding.Should().Be(ComparisonStanding.Above);
        harbour.Place.Standing.Should().Be(ComparisonStanding.Within);
        Row(findings, ComparisonMeasure.Positivity, "Quarry").Rank!.Place.Should().Be(1);
        Row(findings, ComparisonMeasure.Positivity, "Quarry").Rank!.ProbabilityHighest.Should().BeGreaterThan(0.9);
        Texts(findings).Should().ContainSingle(text =>
            text.StartsWith("As counted, Harbour is the highest (", StringComparison.Ordinal) && text.Contains("once adjusted, Quarry is the highest (", StringComparison.Ordinal)
            && text.EndsWith("The adjusted order is the one to go by.", StringComparison.Ordinal));
        Texts(findings).Should().Contain(text => text.StartsWith("Quarry lies above what ", StringComparison.Ordinal));
    }

    [Fact]
    public void Groups_that_differ_as_a_whole_though_no_pair_does_are_told_so()
    {
        // NIST/SEMATECH e-Handbook 7.4.6 and 7.4.7.4: 36, 46, 42, 63 and 38 of 300.
        var sketch = new ProgramSketch().WithoutConfirmatory();
        foreach (var (site, events) in new[] { ("A", 36), ("B", 46), ("C", 42), ("D", 63), ("E", 38) })
            sketch.Runs(Outcome.Positive, events, FollowUp.Unverified, site).Runs(Outcome.Negative, 300 - events, site: site);
        var findings = Compare(sketch);
        var chi = findings.Tests.Single(row => row is { Measure: ComparisonMeasure.Positivity, Test: "chi-square" });

        chi.Statistic.Should().BeApproximately(12.1307189542, 1e-9);
        chi.P.Should().BeApproximately(0.0164052219889, 1e-12);
        var pair = findings.Pairs.Single(row => row is { Measure: ComparisonMeasure.Positivity, Level: "A", Other: "D" });
        pair.Difference.Estimate.Should().BeApproximately(-0.09, 1e-12);
        (pair.SimultaneousUpper - pair.Difference.Estimate).Should().BeApproximately(0.0926628015, 1e-9);
        var summary = Summary(findings, ComparisonMeasure.Positivity);
        (summary.Differ, summary.PairsToldApart).Should().Be((true, 0));
        Texts(findings).Should().ContainSingle(text => text.StartsWith(
            "They differ as a whole, but no two sites can be told apart when all pairs are looked at together: the clearest pair is A and D, 12 % against 21 % as counted", StringComparison.Ordinal)
            || text.StartsWith("They differ as a whole, but no two sites can be told apart when all pairs are looked at together: the clearest pair is A and D, 12.0 % against 21.0 % as counted", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_strata_the_expected_events_are_those_of_the_program_rate_and_add_up()
    {
        var findings = Compare(ExamplePrograms.FaultyLotAndClumsySite());
        foreach (var summary in findings.Summaries)
        {
            findings.RowsOf(summary).Sum(row => row.Expected ?? 0).Should().BeApproximately(summary.Events, 1e-6 * (1 + summary.Events), summary.Key);
            findings.RowsOf(summary).Sum(row => row.Share.Trials).Should().Be(summary.Trials);
            findings.RowsOf(summary).Where(row => row.Rank is not null).Select(row => row.Rank!.Place).Order().Should().Equal(Enumerable.Range(1, findings.RowsOf(summary).Count(row => row.Rank is not null)));
        }
    }

    [Fact]
    public void One_site_two_sites_and_none_are_right_or_undefined_with_a_reason()
    {
        Texts(Compare(new ProgramSketch())).Should().Equal("No run was counted, so sites cannot be compared.");
        var one = Compare(new ProgramSketch().Runs(Outcome.Negative, 50).Runs(Outcome.Positive, 3, FollowUp.Confirmed));
        Texts(one).Should().Equal("There is one site only, so there is nothing to compare it with.");
        one.Summaries.Should().OnlyContain(summary => summary.Undefined == "there is one only");
        var two = Compare(new ProgramSketch().Runs(Outcome.Negative, 500).Runs(Outcome.Positive, 30, FollowUp.Confirmed).Runs(Outcome.Negative, 500, site: "South").Runs(Outcome.Positive, 5, FollowUp.Confirmed, "South"));
        Summary(two, ComparisonMeasure.Positivity).Differ.Should().BeTrue();
        Row(two, ComparisonMeasure.Positivity, "North").Adjusted.Estimate.Should().BeApproximately(30 / 530.0, 1e-9);
        Row(two, ComparisonMeasure.Positivity, "North").Adjusted.Method.Should().Be("logistic-levels");
        two.Pairs.Single(pair => pair.Measure == ComparisonMeasure.Positivity).ToldApart.Should().BeTrue();
    }

    [Fact]
    public void A_site_without_an_event_has_a_rate_above_none_among_many_and_a_reason_among_few()
    {
        var few = Compare(Sites(("A", 0, 400), ("B", 20, 400), ("C", 25, 400)));
        Row(few, ComparisonMeasure.Positivity, "A").Adjusted.EstimateUndefined.Should().StartWith("it has no event");
        Row(few, ComparisonMeasure.Positivity, "A").Ratio.Upper.Should().BeGreaterThan(0);
        few.Model.Should().Contain(row => row.Level == "A" && row.Remark.StartsWith("left out of the model: it separates", StringComparison.Ordinal));
        var many = Compare(Sites(("A", 0, 400), ("B", 20, 400), ("C", 25, 400), ("D", 4, 400), ("E", 12, 400), ("F", 30, 400)));
        var adjusted = Row(many, ComparisonMeasure.Positivity, "A").Adjusted;
        adjusted.Estimate.Should().BeGreaterThan(0);
        adjusted.Lower.Should().BeGreaterThan(0);
        adjusted.Upper.Should().BeGreaterThan(adjusted.Estimate!.Value);
        Row(many, ComparisonMeasure.Positivity, "F").Adjusted.Estimate.Should().BeLessThan(30 / 400.0).And.BeGreaterThan(20 / 400.0);
    }

    [Fact]
    public void Sites_that_are_all_alike_keep_limits_of_their_own_around_the_program_rate()
    {
        var findings = Compare(Sites(("A", 20, 400), ("B", 21, 400), ("C", 19, 400), ("D", 20, 400), ("E", 20, 400), ("F", 2, 40)));
        Summary(findings, ComparisonMeasure.Positivity).Differ.Should().BeFalse();
        var (large, small) = (Row(findings, ComparisonMeasure.Positivity, "A").Adjusted, Row(findings, ComparisonMeasure.Positivity, "F").Adjusted);
        large.Method.Should().Be("alike-rates");
        large.Estimate.Should().BeApproximately(0.05, 0.003);
        (small.Upper - small.Lower).Should().BeGreaterThan(large.Upper!.Value - large.Lower!.Value);
        Texts(findings).Should().Contain(text => text.StartsWith("Positivity does not differ between sites by more than chance", StringComparison.Ordinal) && text.Contains("does not prove them alike", StringComparison.Ordinal));
    }

    [Fact]
    public void What_could_not_be_adjusted_for_is_said_of_the_measures_that_are_compared_only()
    {
        // No run was unusable: that periods cannot be told apart by that measure is no word about positivity, which is adjusted for them.
        var findings = Compare(Wave());
        Summary(findings, ComparisonMeasure.Positivity).AdjustedFor.Should().Contain("period");
        findings.Summaries.Should().Contain(summary => summary.NotAdjustedFor.Any(reason => reason.StartsWith("period", StringComparison.Ordinal)));
        Texts(findings).Should().NotContain(text => text.StartsWith("Not adjusted for period", StringComparison.Ordinal));
    }

    [Fact]
    public void Events_that_come_in_bursts_widen_what_is_concluded()
    {
        // The same rates, once spread over twelve weeks and once in one week of each site.
        var (spread, burst) = (new ProgramSketch().WithoutConfirmatory(), new ProgramSketch().WithoutConfirmatory());
        for (var site = 0; site < 8; site++)
        {
            var name = $"S{site.ToString(CultureInfo.InvariantCulture)}";
            for (var week = 0; week < 12; week++)
            {
                spread.Runs(Outcome.Negative, 200, site: name, day: 7 * week).Runs(Outcome.Positive, 1 + (site / 4), FollowUp.Unverified, name, day: 7 * week);
                burst.Runs(Outcome.Negative, 200, site: name, day: 7 * week).Runs(Outcome.Positive, week == (5 * site) % 12 ? 12 * (1 + (site / 4)) : 0, FollowUp.Unverified, name, day: 7 * week);
            }
        }

        var (calm, wild) = (Summary(Compare(spread), ComparisonMeasure.Positivity), Summary(Compare(burst), ComparisonMeasure.Positivity));
        calm.Events.Should().Be(wild.Events);
        calm.DesignEffect.Should().Be(1);
        wild.DesignEffect.Should().BeGreaterThan(3);
        wild.DesignEffectOf.Should().Be("site-weeks");
        wild.P.Should().BeGreaterThan(calm.P!.Value);
    }

    [Fact]
    public void A_flagged_lot_is_left_out_of_the_basis_that_leads_and_all_runs_are_there_too()
    {
        var evaluated = Evaluator.Evaluate(ExamplePrograms.FaultyLotAndClumsySite().Tally(), ExamplePrograms.Full);
        var findings = evaluated.Comparison;
        evaluated.Lots.Where(lot => lot.Flag.HasFlag(Flag.Refuted)).Should().NotBeEmpty();
        findings.Summaries.Where(summary => summary.Measure == ComparisonMeasure.Positivity).Select(summary => (summary.Basis, summary.Leads))
            .Should().Equal((ComparisonBasis.WithoutFlaggedLots, true), (ComparisonBasis.All, false));
        findings.LeftOutLots.Should().NotBeEmpty();
        Texts(findings).Should().Contain(text => text.StartsWith("Runs of lots that are flagged (", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(CompareBy.Operator, "operator")]
    [InlineData(CompareBy.Kit, "kit")]
    [InlineData(CompareBy.Specimen, "specimen")]
    [InlineData(CompareBy.Region, "region")]
    public void Other_things_than_sites_are_compared_too(CompareBy by, string word)
    {
        var settings = ExamplePrograms.Full with { Report = ExamplePrograms.Full.Report with { CompareBy = by } };
        var findings = Evaluator.Evaluate(ExamplePrograms.FaultyLotAndClumsySite().Tally(), settings).Comparison;
        findings.By.Should().Be(word);
        findings.Rows.Where(row => row.By != word || row.Level == Levels.None).Should().BeEmpty();
        // The sketch records neither where swabs were taken nor regions.
        (findings.Rows.Length > 0).Should().Be(by is CompareBy.Operator or CompareBy.Kit);
        findings.Sentences.Should().NotBeEmpty();
        if (by == CompareBy.Operator)
        {
            // Operators are people: that some stand out is said, which ones stands in the files only.
            findings.Summaries.Should().Contain(summary => summary.Differ && !summary.StandingOut.IsEmpty);
            Texts(findings).Should().NotContain(text => findings.Rows.Any(row => text.Contains(row.Level, StringComparison.Ordinal)));
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void Words_and_figures_are_the_same_in_every_culture(string culture)
    {
        var invariant = Texts(Compare(Wave()));
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Texts(Compare(Wave())).Should().Equal(invariant);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static ProgramSketch Wave()
    {
        // Ten weeks; the wave is weeks 6 to 9.
        var sketch = new ProgramSketch().WithoutConfirmatory();
        foreach (var (site, calm, wave, factor) in new[]
        {
            ("Harbour", 100L, 2000L, 1.0), ("Quarry", 2000L, 200L, 2.0), ("Mill", 1000L, 700L, 1.0), ("Depot", 1100L, 600L, 1.0), ("Foundry", 1200L, 500L, 1.0), ("Yard", 900L, 800L, 1.0),
        })
        {
            for (var week = 0; week < 10; week++)
            {
                var (runs, rate) = week < 6 ? (calm, 0.005) : (wave, 0.05);
                var positives = (long)Math.Round(runs * rate * factor);
                sketch.Runs(Outcome.Positive, positives, FollowUp.Unverified, site, day: 7 * week).Runs(Outcome.Negative, runs - positives, site: site, day: 7 * week);
            }
        }

        return sketch;
    }

    private static ProgramSketch Sites(params (string Site, long Events, long Trials)[] sites)
    {
        var sketch = new ProgramSketch().WithoutConfirmatory();
        foreach (var (site, events, trials) in sites) sketch.Runs(Outcome.Positive, events, FollowUp.Unverified, site).Runs(Outcome.Negative, trials - events, site: site);
        return sketch;
    }

    private static ComparisonFindings Compare(ProgramSketch sketch) => Evaluator.Evaluate(sketch.Tally(), new ProgramSettings()).Comparison;

    private static ComparisonSummary Summary(ComparisonFindings findings, ComparisonMeasure measure) => findings.Summaries.Single(summary => summary.Measure == measure && summary.Leads);

    private static ComparisonRow Row(ComparisonFindings findings, ComparisonMeasure measure, string level) =>
        findings.Rows.Single(row => row.Measure == measure && row.Level == level && row.Basis == Summary(findings, measure).Basis);

    private static string[] Texts(ComparisonFindings findings) => [.. findings.Sentences.Select(sentence => sentence.Text)];
}
