using ScreenStats.Statistics.Bounds;
using ScreenStats.Statistics.Verification;

namespace ScreenStats.Statistics.Tests.Bounds;

public sealed class AccuracyBoundsTests
{
    private static readonly (AccuracyMeasure Measure, string Column)[] Columns =
    [
        (AccuracyMeasure.Sensitivity, "sensitivity"), (AccuracyMeasure.Specificity, "specificity"), (AccuracyMeasure.Prevalence, "prevalence"),
        (AccuracyMeasure.PositivePredictiveValue, "positive"), (AccuracyMeasure.NegativePredictiveValue, "negative"),
    ];

    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("accuracy-bounds"), row =>
        {
            var region = AccuracyBounds.Of(
                Counts(row.Count("confirmed"), row.Count("refuted"), row.Count("unverified_positives"), row.Count("missed"), row.Count("agreed"), row.Count("unaudited")),
                new ConfirmatoryAccuracy(new Interval(row.Number("sensitivity_low"), row.Number("sensitivity_high")), new Interval(row.Number("specificity_low"), row.Number("specificity_high"))));
            List<string?> messages = [];
            foreach (var (measure, column) in Columns)
            {
                var figure = region[measure];
                messages.Add(row.Mismatch(column + "_lower", figure.Bounds?.Lower));
                messages.Add(row.Mismatch(column + "_upper", figure.Bounds?.Upper));
                messages.Add(row.Mismatch(column + "_lower_error", figure.LowerStandardError));
                messages.Add(row.Mismatch(column + "_upper_error", figure.UpperStandardError));
                messages.Add(row.Mismatch(column + "_ci_lower", figure.ConfidenceInterval?.Lower));
                messages.Add(row.Mismatch(column + "_ci_upper", figure.ConfidenceInterval?.Upper));
            }

            if (row.Has("at_sensitivity"))
            {
                var slice = region.SpecificityAt(row.Number("at_sensitivity"));
                messages.Add(row.Mismatch("at_specificity_lower", slice?.Lower));
                messages.Add(row.Mismatch("at_specificity_upper", slice?.Upper));
            }

            return messages;
        });

    [Fact]
    public void At_least_fifty_regions_come_from_a_linear_program() =>
        ReferenceTable.Load("accuracy-bounds").Count(row => row.Source.Contains("linprog", StringComparison.Ordinal)).Should().BeGreaterThanOrEqualTo(50);

    [Fact]
    public void Critical_values_meet_every_row_of_their_table() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("imbens-manski"), row =>
            [row.Mismatch("critical", ImbensManski.CriticalValue(row.Number("width"), row.Number("error"), row.Number("confidence")))]);

    [Fact]
    public void Specificities_proven_by_the_positivity_meet_every_row_of_their_table() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("specificity-proofs"), row =>
        {
            var proof = SpecificityProof.FromPositivity(row.Count("positives"), row.Count("tests"), row.Number("confidence"), row.Number("design_effect"));
            return [row.Mismatch("specificity", proof.Specificity), row.Mismatch("positivity_upper", proof.PositivityUpper)];
        });

    [Fact]
    public void Every_completion_of_the_unverified_lies_in_the_bounds_and_the_extreme_ones_reach_them() => Small.Sample(cells =>
    {
        var region = AccuracyBounds.Of(Counts(cells));
        var seen = Columns.Select(_ => (Least: double.PositiveInfinity, Greatest: double.NegativeInfinity)).ToArray();
        for (long y = 0; y <= cells[2]; y++)
        {
            for (long x = 0; x <= cells[5]; x++)
            {
                double tp = cells[0] + y, fp = cells[1] + cells[2] - y, fn = cells[3] + x, tn = cells[4] + cells[5] - x;
                var values = new[] { tp / (tp + fn), tn / (tn + fp), (tp + fn) / (tp + fp + fn + tn), tp / (tp + fp), tn / (tn + fn) };
                for (var i = 0; i < values.Length; i++)
                {
                    if (double.IsNaN(values[i])) continue;
                    if (region[Columns[i].Measure].Bounds is not { } bounds || values[i] < bounds.Lower - 1e-12 || values[i] > bounds.Upper + 1e-12) return false;
                    seen[i] = (Math.Min(seen[i].Least, values[i]), Math.Max(seen[i].Greatest, values[i]));
                }

                if (tp + fn > 0 && tn + fp > 0)
                {
                    if (!region.Contains(values[0], values[1], values[2])) return false;
                    if (region.SpecificityAt(values[0]) is not { } slice || values[1] < slice.Lower - 1e-9 || values[1] > slice.Upper + 1e-9) return false;
                }
            }
        }

        return Columns.Select((one, i) => (region[one.Measure].Bounds, seen[i])).All(pair => pair.Bounds is { } bounds
            ? Math.Abs(bounds.Lower - pair.Item2.Least) < 1e-12 && Math.Abs(bounds.Upper - pair.Item2.Greatest) < 1e-12
            : double.IsInfinity(pair.Item2.Least));
    });

    [Fact]
    public void What_does_not_fit_the_counts_lies_outside_the_region()
    {
        var region = AccuracyBounds.Of(Counts(231, 32, 166, 27, 54, 140));
        region.Contains(0.9, 0.9, 0.5).Should().BeFalse();
        region.SpecificityAt(0.2).Should().BeNull();
    }

    [Fact]
    public void Corrected_values_lie_inside_the_bounds() => Gen.Select(Gen.Long[1, 40].Array[4], Gen.Long[0, 900].Array[2]).Sample((v, u) =>
    {
        var counts = Counts(v[0], v[1], u[0], v[2], v[3], u[1]);
        var corrected = BeggGreenes.Of(counts);
        var region = AccuracyBounds.Of(counts);
        return Columns.All(one => region[one.Measure].Bounds is { } bounds
            && corrected[one.Measure].Value >= bounds.Lower - 1e-12 && corrected[one.Measure].Value <= bounds.Upper + 1e-12
            && region[one.Measure].ConfidenceInterval is { } interval && interval.Lower <= bounds.Lower && interval.Upper >= bounds.Upper);
    });

    [Fact]
    public void A_stated_accuracy_of_one_changes_nothing_and_wider_limits_widen_every_bound() => Gen.Select(Small, Gen.Double[0.7, 1].Array[2], Gen.Double[0.8, 1].Array[2]).Sample((cells, se, sp) =>
    {
        var counts = Counts(cells);
        var inner = AccuracyBounds.Of(counts, new ConfirmatoryAccuracy(new Interval(se.Max(), se.Max()), new Interval(sp.Max(), sp.Max())));
        var outer = AccuracyBounds.Of(counts, new ConfirmatoryAccuracy(new Interval(se.Min(), se.Max()), new Interval(sp.Min(), sp.Max())));
        return outer.InfectedPositives.Lower <= inner.InfectedPositives.Lower + 1e-9 && outer.InfectedPositives.Upper >= inner.InfectedPositives.Upper - 1e-9
            && outer.InfectedNegatives.Lower <= inner.InfectedNegatives.Lower + 1e-9 && outer.InfectedNegatives.Upper >= inner.InfectedNegatives.Upper - 1e-9
            && Columns.All(one => inner[one.Measure].Bounds is not { } narrow || (outer[one.Measure].Bounds is { } wide && wide.Lower <= narrow.Lower + 1e-9 && wide.Upper >= narrow.Upper - 1e-9));
    });

    [Fact]
    public void Verifying_one_more_run_never_widens_a_bound() => Small.Sample(cells =>
    {
        var before = AccuracyBounds.Of(Counts(cells));
        foreach (var (unknown, known) in new[] { (2, 0), (2, 1), (5, 3), (5, 4) })
        {
            if (cells[unknown] == 0) continue;
            var after = (long[])cells.Clone();
            after[unknown]--;
            after[known]++;
            var region = AccuracyBounds.Of(Counts(after));
            if (Columns.Any(one => region[one.Measure].Bounds is { } now && before[one.Measure].Bounds is { } then && (now.Lower < then.Lower - 1e-12 || now.Upper > then.Upper + 1e-12))) return false;
        }

        return true;
    });

    [Fact]
    public void Each_hundred_audited_negatives_take_their_share_off_the_width()
    {
        var counts = new VerificationCounts(264, 122, 102, 9736, 2, 998);
        var gains = AccuracyBounds.AfterAudits(counts, 100, 20, missedShare: 0.002);
        gains.Should().HaveCount(21);
        gains[0].Sensitivity.Should().Be(AccuracyBounds.Of(counts)[AccuracyMeasure.Sensitivity].Bounds);
        for (var i = 1; i < gains.Length; i++)
        {
            gains[i].Audited.Should().Be(998 + 2 + (100 * i));
            (gains[i - 1].NegativePredictiveValue!.Value.Width - gains[i].NegativePredictiveValue!.Value.Width).Should().BeApproximately(100.0 / 9736, 1e-12);
            (gains[i - 1].Prevalence!.Value.Width - gains[i].Prevalence!.Value.Width).Should().BeApproximately(100.0 / 10_000, 1e-12);
            gains[i].Sensitivity!.Value.Width.Should().BeLessThan(gains[i - 1].Sensitivity!.Value.Width);
        }
    }

    [Fact]
    public void The_last_batch_takes_what_is_left()
    {
        var gains = AccuracyBounds.AfterAudits(new VerificationCounts(10, 6, 4, 250, 0, 20), 100, 50, missedShare: 0);
        gains.Select(gain => gain.Audited).Should().Equal(20, 120, 220, 250);
        gains[^1].Sensitivity.Should().Be(new Interval(1, 1));
    }

    [Fact]
    public void A_positivity_proves_a_specificity_and_refutes_weaker_claims()
    {
        var proof = SpecificityProof.FromPositivity(1322, 903_408);
        proof.Specificity.Should().BeGreaterThan(0.9985);
        proof.Refutes(0.998).Should().BeTrue();
        proof.Refutes(0.999).Should().BeFalse();
        SpecificityProof.FromPositivity(0, 0).Reason.Should().Be(UndefinedReason.NoTrials);
        SpecificityProof.FromPositivity(0, 0).Refutes(0).Should().BeFalse();
        AccuracyBounds.Of(new VerificationCounts(1322, 641, 462, 902_086, 0, 0)).SpecificityIfNoWorseThanChance.Should().BeApproximately(proof.Specificity!.Value, 1e-15);
    }

    /// <summary>No prevalence and no accuracy with sensitivity at least 1 - specificity gives a positivity below 1 - specificity.</summary>
    [Fact]
    public void The_proof_holds_for_every_test_no_worse_than_chance() => Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 1]).Sample((prevalence, a, b) =>
    {
        var (falsePositive, sensitivity) = (Math.Min(a, b), Math.Max(a, b));
        var positivity = (prevalence * sensitivity) + ((1 - prevalence) * falsePositive);
        return 1 - falsePositive >= 1 - positivity - 1e-12;
    });

    [Fact]
    public void A_wider_design_effect_and_a_higher_confidence_prove_less() => Gen.Select(Gen.Long[0, 300], Gen.Long[1, 100_000], Gen.Double[1, 30]).Sample((positives, more, effect) =>
    {
        var plain = SpecificityProof.FromPositivity(positives, positives + more, 0.95);
        return SpecificityProof.FromPositivity(positives, positives + more, 0.99).SpecificityLower <= plain.SpecificityLower
            && SpecificityProof.FromPositivity(positives, positives + more, 0.95, effect).SpecificityLower <= plain.SpecificityLower + 1e-12
            && plain.SpecificityLower <= plain.Specificity;
    });

    [Fact]
    public void The_limit_fails_in_no_more_than_the_stated_share_of_outcomes()
    {
        // Exact: the chance under a positivity that the limit lies below it, summed over all outcomes of 200 tests.
        foreach (var positivity in new[] { 0.002, 0.01, 0.05, 0.3 })
        {
            double missed = 0;
            var chance = Math.Pow(1 - positivity, 200);
            for (var x = 0; x <= 200; x++)
            {
                if (SpecificityProof.FromPositivity(x, 200).PositivityUpper < positivity) missed += chance;
                chance *= (200.0 - x) / (x + 1) * positivity / (1 - positivity);
            }

            missed.Should().BeLessThanOrEqualTo(0.05);
        }
    }

    [Fact]
    public void An_edge_bound_takes_wilsons_limit_to_the_inside()
    {
        // All positives confirmed, every negative audited and none missed: specificity is 1 in all completions, of 95 uninfected.
        var figure = AccuracyBounds.Of(new VerificationCounts(5, 5, 0, 95, 0, 95))[AccuracyMeasure.Specificity];
        figure.Bounds.Should().Be(new Interval(1, 1));
        figure.CriticalValue.Should().BeApproximately(1.6448536269514722, 1e-12);
        figure.ConfidenceInterval!.Value.Lower.Should().BeApproximately(95 / (95 + (1.6448536269514722 * 1.6448536269514722)), 1e-12);
    }

    [Fact]
    public void What_cannot_be_is_undefined_or_said()
    {
        AccuracyBounds.Of(new VerificationCounts(0, 0, 0, 0, 0, 0))[AccuracyMeasure.Prevalence].Reason.Should().Be(UndefinedReason.NoTrials);
        AccuracyBounds.Of(new VerificationCounts(4, 0, 4, 5, 0, 5))[AccuracyMeasure.Sensitivity].Reason.Should().Be(UndefinedReason.NoCases);
        AccuracyBounds.Of(new VerificationCounts(4, 4, 0, 5, 5, 0))[AccuracyMeasure.Specificity].Reason.Should().Be(UndefinedReason.NobodyWithoutTheCondition);
        var useless = AccuracyBounds.Of(new VerificationCounts(4, 2, 2, 5, 1, 4), new ConfirmatoryAccuracy(new Interval(0.4, 0.9), new Interval(0.6, 1)));
        useless[AccuracyMeasure.Sensitivity].Reason.Should().Be(UndefinedReason.TestNoBetterThanChance);
        // One confirmed of a thousand audited where the confirmatory test alone gives fifty false alarms.
        var odd = AccuracyBounds.Of(new VerificationCounts(40, 20, 20, 5000, 1, 999), new ConfirmatoryAccuracy(new Interval(0.95, 0.95), new Interval(0.95, 0.95)));
        odd.NegativesCompatible.Should().BeFalse();
        odd.PositivesCompatible.Should().BeTrue();
        odd.InfectedNegatives.Lower.Should().Be(0);
        FluentActions.Invoking(() => new ConfirmatoryAccuracy(new Interval(0, 1.1), new Interval(0, 1))).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => AccuracyBounds.AfterAudits(default, 0, 1, 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => SpecificityProof.FromPositivity(5, 3)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => ImbensManski.CriticalValue(-1, 0)).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static Gen<long[]> Small { get; } = Gen.Long[0, 12].Array[6];

    private static VerificationCounts Counts(params long[] cells) =>
        new(cells[0] + cells[1] + cells[2], cells[0], cells[1], cells[3] + cells[4] + cells[5], cells[3], cells[4]);
}
