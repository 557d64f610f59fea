using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Accuracy;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Accuracy;

public class AccuracyAnalysisTests
{
    private static AccuracyFindings Of(ProgramSketch sketch, ProgramSettings? settings = null) =>
        Evaluator.Evaluate(sketch.Tally(), settings ?? new ProgramSettings()).Accuracy;

    // North: 1 in 10 audited, 1 in 100 of them missed; South: 1 in 1,000 audited, 1 in 20 missed.
    private static ProgramSketch Unequal() => new ProgramSketch()
        .Runs(Outcome.Positive, 60, FollowUp.Confirmed).Runs(Outcome.Positive, 20, FollowUp.Refuted, "South").Runs(Outcome.Positive, 20, FollowUp.Unverified)
        .Runs(Outcome.Negative, 10, FollowUp.Missed).Runs(Outcome.Negative, 990, FollowUp.Agreed).Runs(Outcome.Negative, 9_000)
        .Runs(Outcome.Negative, 5, FollowUp.Missed, "South").Runs(Outcome.Negative, 95, FollowUp.Agreed, "South").Runs(Outcome.Negative, 99_900, site: "South");

    [Fact]
    public void Without_audits_everything_that_needs_them_is_undefined_with_a_reason_and_bounds_remain()
    {
        var findings = Of(new ProgramSketch().Runs(Outcome.Negative, 5_000).Runs(Outcome.Positive, 30, FollowUp.Confirmed).Runs(Outcome.Positive, 10, FollowUp.Refuted).IntervalCases(3, 25));

        findings.Basis.Should().Be(AccuracyBasis.None);
        findings.Sensitivity.Estimate.Should().BeNull();
        findings.Sensitivity.EstimateUndefined.Should().Be("no negative run was verified by an audit with a conclusive result");
        findings.SensitivityLimit.LowerUndefined.Should().NotBeNull();
        findings.SensitivityBounds.Lower.Should().BeApproximately(30 / 5_030.0, 1e-15);
        findings.SensitivityBounds.Upper.Should().Be(1);
        findings.SpecificityBounds.Upper.Should().BeApproximately(5_000 / 5_010.0, 1e-15);
        findings.Rows.Should().NotContain(row => row.Basis == AccuracyBasis.OneSidedLimit);
    }

    /// <summary>
    /// Begg CB, Greenes RA, Biometrics 1983;39:207-215, on the hepatic scintigraphy of Drum and Christacopoulos 1972 (counts and
    /// printed .836, .738 and .693 from memory; N, verified and unverified seen in Arifin and Yusof, Diagnostics 2022;12:2839).
    /// </summary>
    [Fact]
    public void One_draw_gives_the_published_correction()
    {
        var findings = Of(new ProgramSketch()
            .Runs(Outcome.Positive, 231, FollowUp.Confirmed).Runs(Outcome.Positive, 32, FollowUp.Refuted).Runs(Outcome.Positive, 166, FollowUp.Unverified)
            .Runs(Outcome.Negative, 27, FollowUp.Missed).Runs(Outcome.Negative, 54, FollowUp.Agreed).Runs(Outcome.Negative, 140));

        findings.Basis.Should().Be(AccuracyBasis.OneDraw);
        findings.Sensitivity.Estimate.Should().BeApproximately(0.8364667154, 5e-11);
        findings.Specificity.Estimate.Should().BeApproximately(0.7383980182, 5e-11);
        findings.Prevalence.Estimate.Should().BeApproximately(0.6930291508, 5e-11);
        findings.PositivePredictiveValue.Estimate.Should().BeApproximately(231 / 263.0, 1e-12);
        findings.NegativePredictiveValue.Estimate.Should().BeApproximately(54 / 81.0, 1e-12);

        // Printed logit limits .783 and .879 (from memory, .7826465185 and .8790201901); ours recover both sides apart.
        findings.Sensitivity.Lower.Should().BeApproximately(0.7826, 0.004);
        findings.Sensitivity.Upper.Should().BeApproximately(0.8790, 0.004);
        findings.Sentences.Should().Contain(sentence => sentence.Text.Contains("random sample of all negative runs", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(StratumOrigin.Site)]
    [InlineData(StratumOrigin.Patterns)]
    [InlineData(StratumOrigin.StatedNumber)]
    public void Each_audited_run_stands_for_the_negatives_of_its_stratum(StratumOrigin origin)
    {
        var findings = Of(Unequal().Strata(origin));

        // 75 confirmed of 100; missed 10,000 x 1/100 + 100,000 x 1/20 = 5,100.
        findings.Basis.Should().Be(AccuracyBasis.Reweighted);
        findings.Strata.Select(stratum => (stratum.Stratum, stratum.Negatives, stratum.Audited, stratum.Weight)).Should().Equal(("North", 10_000, 1_000, 10), ("South", 100_000, 100, 1_000));
        findings.Sensitivity.Estimate.Should().BeApproximately(75 / 5_175.0, 1e-12);
        findings.NegativePredictiveValue.Estimate.Should().BeApproximately(1 - (5_100 / 110_000.0), 1e-12);
        findings.Sensitivity.Lower.Should().BeLessThan(75 / 5_175.0);
        findings.NegativesOutside.Should().Be(0);
    }

    /// <summary>By the formula: influence of a site on Sp = T/B, squares summed, times 5/4; the sites' specificities lie between 0.999 and 0.95.</summary>
    [Fact]
    public void Where_sites_differ_by_more_than_people_they_decide_the_limits_and_it_is_said()
    {
        var sketch = new ProgramSketch();
        foreach (var (site, refuted) in new[] { ("East", 1), ("Far", 1), ("Mid", 20), ("South", 50), ("West", 50) })
        {
            sketch.Runs(Outcome.Positive, 20, FollowUp.Confirmed, site).Runs(Outcome.Positive, refuted, FollowUp.Refuted, site)
                .Runs(Outcome.Negative, 4, FollowUp.Missed, site).Runs(Outcome.Negative, 196, FollowUp.Agreed, site).Runs(Outcome.Negative, 780, site: site);
        }

        var findings = Of(sketch);

        var specificity = findings.Rows.Single(row => row.Key == "specificity|one-draw");
        (specificity.Cluster, specificity.Clusters).Should().Be((Evaluation.Clusters.ClusterLevel.Sites, 5));
        var people = findings.Rows.Single(row => row.Key == "negative-predictive-value|one-draw");
        (people.Cluster, people.Clusters).Should().Be((Evaluation.Clusters.ClusterLevel.Persons, 5_122));
        (specificity.Figure.Upper - specificity.Figure.Lower).Should().BeGreaterThan(0.04);
        findings.Sentences.Should().Contain(sentence => sentence.Text.Contains("the specificity is", StringComparison.Ordinal)
            && sentence.Text.Contains("the runs of each of 5 sites taken together, as sites differ by more than people", StringComparison.Ordinal));
        var columns = findings.Table.Columns.Select(column => column.Name).ToList();
        columns.Should().Contain(["clusters", "cluster_count"]);
    }

    [Fact]
    public void Fewer_than_five_sites_do_not_decide_the_limits_and_it_is_said()
    {
        var sketch = new ProgramSketch();
        foreach (var (site, refuted) in new[] { ("East", 1), ("South", 20), ("West", 50) })
        {
            sketch.Runs(Outcome.Positive, 20, FollowUp.Confirmed, site).Runs(Outcome.Positive, refuted, FollowUp.Refuted, site)
                .Runs(Outcome.Negative, 4, FollowUp.Missed, site).Runs(Outcome.Negative, 196, FollowUp.Agreed, site).Runs(Outcome.Negative, 780, site: site);
        }

        var findings = Of(sketch);

        var specificity = findings.Rows.Single(row => row.Key == "specificity|one-draw");
        (specificity.Cluster, specificity.FewSites).Should().Be((Evaluation.Clusters.ClusterLevel.Persons, 3L));
        (specificity.Figure.Upper - specificity.Figure.Lower).Should().BeLessThan(0.02, "with three sites it was above 0.05");
        findings.Sentences.Should().Contain(sentence => sentence.Text.Contains("that sites differ, of which 3 are too few to show it", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(StratumOrigin.WholeProgram)]
    [InlineData(StratumOrigin.Site)]
    [InlineData(StratumOrigin.StatedNumber)]
    [InlineData(StratumOrigin.Unexplained)]
    public void However_strata_are_known_the_sites_add_up_to_the_counts(StratumOrigin origin)
    {
        var sketch = Unequal().Strata(origin);
        var settings = origin == StratumOrigin.StatedNumber
            ? new AuditSettings { Strata = [new StratumSettings { Name = "North", Negatives = 10_000 }, new StratumSettings { Name = "South", Negatives = 100_000 }] }
            : new AuditSettings();

        var weights = AuditWeights.Of(sketch.Tally().Cells, 110_000, settings)!;

        weights.Sites!.People.Should().Be(2);
        Enumerable.Range(0, weights.Counts.Cells.Length).Should().OnlyContain(at => weights.Sites.Sum(at, at) >= weights.Products.Sum(at, at));
    }

    [Fact]
    public void Strata_that_nothing_explains_are_pooled_and_the_sentence_says_that_this_is_biased()
    {
        var findings = Of(Unequal().Strata(StratumOrigin.Unexplained));

        findings.Basis.Should().Be(AccuracyBasis.Unweighted);
        findings.Sensitivity.Estimate.Should().BeApproximately(75 / (75 + (110_000 * 15 / 1_100.0)), 1e-12);
        findings.Strata.Should().OnlyContain(stratum => stratum.Negatives == null && stratum.Weight == null);
        findings.Sentences.Should().Contain(sentence => sentence.Text.Contains("biased if strata were sampled at different rates", StringComparison.Ordinal));
        Evaluator.Evaluate(Unequal().Strata(StratumOrigin.Unexplained).Tally(), new ProgramSettings()).Answers.Questions.Single(answer => answer.Id == "how-accurate-is-the-screen").Condition.Should().Contain("biased");
    }

    [Fact]
    public void A_site_without_audits_is_left_out_with_its_positives_and_the_number_is_said()
    {
        var findings = Of(Unequal().Runs(Outcome.Positive, 900, FollowUp.Confirmed, "East").Runs(Outcome.Negative, 4_321, site: "East").Strata(StratumOrigin.Site));

        findings.Sensitivity.Estimate.Should().BeApproximately(75 / 5_175.0, 1e-12);
        findings.NegativesOutside.Should().Be(4_321);
        findings.Sentences.Should().Contain(sentence => sentence.Text == "Of 114,321 negative runs 4,321 belong to no stratum that was audited; the figures do not speak of them.");
    }

    [Theory]
    [InlineData(0, 500, "none of the audited negative runs was missed, so only a limit is given")]
    [InlineData(3, 26, "fewer than 30 negative runs were audited with a conclusive result, so only a limit is given")]
    public void Few_audited_or_none_missed_gives_a_one_sided_limit_and_bounds_only(int missed, int agreed, string reason)
    {
        var findings = Of(new ProgramSketch()
            .Runs(Outcome.Positive, 60, FollowUp.Confirmed).Runs(Outcome.Positive, 20, FollowUp.Refuted)
            .Runs(Outcome.Negative, missed, FollowUp.Missed).Runs(Outcome.Negative, agreed, FollowUp.Agreed).Runs(Outcome.Negative, 9_000));

        findings.Sensitivity.EstimateUndefined.Should().Be(reason);
        findings.Specificity.Estimate.Should().BeNull();
        findings.SensitivityLimit.Lower.Should().BeInRange(0.01, 0.6);
        findings.SpecificityLimit.Lower.Should().BeGreaterThan(0.9);
        findings.SensitivityBounds.Lower.Should().BeLessThan(findings.SensitivityLimit.Lower!.Value);
        findings.Rows.Count(row => row.Basis == AccuracyBasis.OneSidedLimit).Should().Be(2);
        findings.Sentences.Should().Contain(sentence => sentence.Text.Contains("one-sided", StringComparison.Ordinal) && sentence.Text.Contains("sensitivity was at least", StringComparison.Ordinal));
    }

    [Fact]
    public void Bounds_stand_beside_every_site_and_lot_and_hold_the_estimate()
    {
        var findings = Of(Unequal().Strata(StratumOrigin.Site));

        findings.Rows.Where(row => row.Basis == AccuracyBasis.NoAssumption).GroupBy(row => (row.Grouping, row.Level)).Select(part => (part.Key.Grouping, part.Key.Level, part.Count()))
            .Should().Equal((Grouping.Program, "", 5), (Grouping.Site, "North", 5), (Grouping.Site, "South", 5), (Grouping.Lot, "A1", 5));
        foreach (var row in findings.Rows.Where(row => row.Basis == AccuracyBasis.Reweighted))
        {
            var bounds = findings.Rows.Single(other => other.Grouping == Grouping.Program && other.Basis == AccuracyBasis.NoAssumption && other.Measure == row.Measure);
            row.Figure.Estimate.Should().BeInRange(bounds.Figure.Lower!.Value, bounds.Figure.Upper!.Value, row.Measure);
            bounds.WithErrorLower.Should().BeLessThanOrEqualTo(bounds.Figure.Lower.Value);
        }

        string.Join(',', findings.Table.Columns.Select(column => column.Name)).Should().StartWith("by,level,measure,basis,estimate,lower,upper,method,confidence");
    }

    /// <summary>JAMA 2022;327:485 (Gans and others): 1,322 of 903,408 screens positive: an average specificity of at least 99.85 %.</summary>
    [Fact]
    public void The_positivity_of_the_published_program_proves_an_average_specificity()
    {
        var proven = Of(PublishedProgram.Sketch()).Proven[0];

        (proven.Positives, proven.ValidTests).Should().Be((1_322, 903_408));
        proven.SpecificityLower.Should().BeInRange(0.9980, 1 - 0.0014633477);
        proven.Claim.Should().Be(ClaimOutcome.NotStated);
    }

    [Fact]
    public void Where_few_sites_differ_the_specificity_proven_is_held_back_by_Students_quantile()
    {
        // R 4.2.2: x <- c(5, 12, 20, 28, 35); v <- 5 / (4 * 5000^2) * sum((x - 20)^2); d <- 5000 * v / (.02 * .98); f <- d * (qt(.95, 4) / qnorm(.95))^2; 1 - qbeta(.95, 100 / f + 1, 4900 / f).
        var proven = Of(new ProgramSketch()
            .Runs(Outcome.Positive, 5, FollowUp.Unverified).Runs(Outcome.Negative, 995)
            .Runs(Outcome.Positive, 12, FollowUp.Unverified, "East").Runs(Outcome.Negative, 988, site: "East")
            .Runs(Outcome.Positive, 20, FollowUp.Unverified, "South").Runs(Outcome.Negative, 980, site: "South")
            .Runs(Outcome.Positive, 28, FollowUp.Unverified, "Far").Runs(Outcome.Negative, 972, site: "Far")
            .Runs(Outcome.Positive, 35, FollowUp.Unverified, "West").Runs(Outcome.Negative, 965, site: "West")).Proven[0];

        proven.DesignEffect.Should().BeApproximately(7.372448979591836, 1e-9);
        proven.SpecificityLower.Should().BeApproximately(0.964298433736319, 1e-9);
    }

    [Theory]
    [InlineData(0.97, 0, ClaimOutcome.TooLow)]
    [InlineData(0.999, 0, ClaimOutcome.NotRefuted)]
    [InlineData(0.9999, 40, ClaimOutcome.TooHigh)]
    public void Claims_that_the_data_refute_are_said(double stated, int refuted, ClaimOutcome outcome)
    {
        var settings = new ProgramSettings { Screens = [new ScreenSettings { Name = "kit", Specificity = new StatedAccuracy(stated, null, null, null, null) }] };
        var sketch = new ProgramSketch().Runs(Outcome.Negative, 9_900).Runs(Outcome.Positive, 30, FollowUp.Confirmed).Runs(Outcome.Positive, refuted, FollowUp.Refuted);
        var findings = Of(sketch, settings);

        findings.Proven.Select(row => row.Key).Should().Equal("(program)", "kit");
        findings.Proven[1].Claim.Should().Be(outcome);
        findings.Sentences.Count(sentence => sentence.Text.Contains("is refuted as too", StringComparison.Ordinal)).Should().Be(outcome == ClaimOutcome.NotRefuted ? 0 : 1);
        Evaluator.Evaluate(sketch.Tally(), settings).Answers.Questions.Single(answer => answer.Id == "how-accurate-is-the-screen").Text.Should().Contain("with no confirmatory test at all");
    }
}
