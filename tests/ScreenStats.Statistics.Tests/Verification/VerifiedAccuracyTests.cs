using ScreenStats.Statistics.Verification;

namespace ScreenStats.Statistics.Tests.Verification;

public sealed class VerifiedAccuracyTests
{
    private static readonly (AccuracyMeasure Measure, string Column)[] Columns =
    [
        (AccuracyMeasure.Sensitivity, "sensitivity"), (AccuracyMeasure.Specificity, "specificity"), (AccuracyMeasure.Prevalence, "prevalence"),
        (AccuracyMeasure.PositivePredictiveValue, "positive"), (AccuracyMeasure.NegativePredictiveValue, "negative"),
    ];

    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("verified-accuracy"), row =>
        {
            var counts = Read(row);
            var accuracy = row.Has("products") ? BeggGreenes.Of(counts, PersonProducts.Of(row.Count("people"), row.Numbers("products"))) : BeggGreenes.Of(counts);
            List<string?> messages = [];
            foreach (var (measure, column) in Columns)
            {
                var figure = accuracy[measure];
                messages.Add(row.Mismatch(column, figure.Value));
                messages.Add(row.Mismatch(column + "_error", figure.StandardError));
                messages.Add(row.Mismatch(column + "_wald_lower", figure.Wald?.Lower));
                messages.Add(row.Mismatch(column + "_wald_upper", figure.Wald?.Upper));
                messages.Add(row.Mismatch(column + "_logit_lower", figure.Logit?.Lower));
                messages.Add(row.Mismatch(column + "_logit_upper", figure.Logit?.Upper));
            }

            for (var i = 0; i < Columns.Length; i++)
            {
                for (var j = i + 1; j < Columns.Length; j++)
                    messages.Add(row.Mismatch($"cov_{Columns[i].Column}_{Columns[j].Column}", accuracy.Covariance(Columns[i].Measure, Columns[j].Measure)));
            }

            return messages;
        });

    [Fact]
    public void Fifty_independent_rows_hold_each_of_both_variances()
    {
        var rows = ReferenceTable.Load("verified-accuracy").Where(row => row.Kind == "independent").ToList();
        rows.Count(row => row.Has("products")).Should().BeGreaterThanOrEqualTo(50);
        rows.Count(row => !row.Has("products")).Should().BeGreaterThanOrEqualTo(50);
    }

    [Fact]
    public void One_sided_limits_meet_every_row_of_their_table() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("one-sided-accuracy"), row =>
        {
            var limits = OneSidedAccuracy.Lower(Read(row), row.Number("confidence"));
            return [row.Mismatch("sensitivity", limits.Sensitivity), row.Mismatch("specificity", limits.Specificity)];
        });

    [Fact]
    public void Values_are_those_of_the_function_with_recovered_limits() => Counts.Sample(counts =>
        BeggGreenes.Of(counts).Sensitivity.Value is var sensitivity && Same(sensitivity, BeggGreenes.Sensitivity(counts).Estimate.Value)
        && BeggGreenes.Of(counts).Specificity.Value is var specificity && Same(specificity, BeggGreenes.Specificity(counts).Estimate.Value));

    [Fact]
    public void Strata_with_the_same_share_are_one_stratum() => Gen.Select(Gen.Long[1, 30], Gen.Long[1, 30], Gen.Long[1, 9], Gen.Long[1, 200], Gen.Long[2, 5]).Sample((confirmed, refuted, missed, agreed, times) =>
    {
        AuditStratum Part(long factor) => new("", factor * 7 * (missed + agreed), factor * missed, factor * agreed);
        var split = BeggGreenes.Of(new StratifiedCounts(2 * (confirmed + refuted), confirmed, refuted, [Part(1), Part(times)]));
        var whole = BeggGreenes.Of(new StratifiedCounts(2 * (confirmed + refuted), confirmed, refuted, [Part(1 + times)]));
        return Columns.All(one => Same(split[one.Measure].Value, whole[one.Measure].Value) && Same(split[one.Measure].StandardError, whole[one.Measure].StandardError));
    });

    [Fact]
    public void Order_of_the_strata_does_not_matter() => Gen.Select(Gen.Long[1, 30], Gen.Long[0, 500], Gen.Long[0, 20].Array[4]).Sample((confirmed, more, audits) =>
    {
        AuditStratum[] strata = [new("a", audits[0] + audits[1] + more, audits[0], audits[1]), new("b", audits[2] + audits[3] + 5, audits[2], audits[3])];
        var first = BeggGreenes.Of(new StratifiedCounts(confirmed + 9, confirmed, 4, strata));
        var second = BeggGreenes.Of(new StratifiedCounts(confirmed + 9, confirmed, 4, strata.Reverse()));
        return Columns.All(one => Same(first[one.Measure].Value, second[one.Measure].Value) && first[one.Measure].Reason == second[one.Measure].Reason);
    });

    [Fact]
    public void One_run_a_person_gives_the_variance_of_independent_runs_but_for_one_degree_of_freedom() => Counts.Sample(counts =>
    {
        var stratified = StratifiedCounts.Of(counts);
        var cells = stratified.Cells;
        var people = Enumerable.Range(0, cells.Length).SelectMany(cell => Enumerable.Range(0, (int)cells[cell])
            .Select(_ => (IReadOnlyList<long>)[.. Enumerable.Range(0, cells.Length).Select(other => other == cell ? 1L : 0L)])).ToList();
        if (people.Count < 2) return true;
        var robust = BeggGreenes.Of(stratified, PersonProducts.From(people));
        var plain = BeggGreenes.Of(counts);
        var factor = Math.Sqrt(people.Count / (people.Count - 1.0));
        return robust.People == people.Count
            && Columns.All(one => Same(robust[one.Measure].StandardError, plain[one.Measure].StandardError * factor));
    });

    [Fact]
    public void Everything_doubled_on_the_same_people_leaves_the_robust_standard_error_as_it_was()
    {
        var random = new Random(5);
        var people = Enumerable.Range(0, 80).Select(_ => (IReadOnlyList<long>)[.. Enumerable.Range(0, 6).Select(_ => (long)random.Next(0, 4))]).ToList();
        var once = Robust(people);
        var twice = Robust([.. people.Select(one => (IReadOnlyList<long>)[.. one.Select(count => 2 * count)])]);
        foreach (var (measure, _) in Columns) twice[measure].StandardError.Should().BeApproximately(once[measure].StandardError!.Value, 1e-12);
    }

    [Fact]
    public void Without_an_audit_only_the_positive_predictive_value_is_known()
    {
        var accuracy = BeggGreenes.Of(new VerificationCounts(1322, 641, 462, 902_086, 0, 0));
        accuracy.PositivePredictiveValue.Value.Should().BeApproximately(641.0 / 1103, 1e-15);
        foreach (var measure in new[] { AccuracyMeasure.Sensitivity, AccuracyMeasure.Specificity, AccuracyMeasure.Prevalence, AccuracyMeasure.NegativePredictiveValue })
        {
            accuracy[measure].Value.Should().BeNull();
            accuracy[measure].Reason.Should().Be(UndefinedReason.NoVerifiedNegatives);
            accuracy.Covariance(measure, measure).Should().BeNull();
        }
    }

    [Fact]
    public void A_stratum_without_an_audit_leaves_the_negatives_undefined()
    {
        var accuracy = BeggGreenes.Of(new StratifiedCounts(30, 20, 4, [new AuditStratum("day", 900, 2, 40), new AuditStratum("night", 50, 0, 0)]));
        accuracy.Sensitivity.Reason.Should().Be(UndefinedReason.StratumWithoutAudit);
        accuracy.PositivePredictiveValue.IsDefined.Should().BeTrue();
    }

    [Fact]
    public void None_missed_gives_no_standard_error_and_says_why()
    {
        var accuracy = BeggGreenes.Of(new VerificationCounts(264, 122, 102, 59_736, 0, 1000));
        accuracy.Sensitivity.Value.Should().Be(1);
        accuracy.Sensitivity.StandardErrorReason.Should().Be(UndefinedReason.ValueAtTheEdge);
        accuracy.Prevalence.StandardErrorReason.Should().Be(UndefinedReason.NoMissedRuns);
        OneSidedAccuracy.BoundsOnly(accuracy.Counts.Overall).Should().BeTrue();
    }

    [Fact]
    public void One_sided_limits_lie_below_the_estimates_and_rise_with_the_audit() => Gen.Select(Counts, Gen.Double[0.5, 0.999]).Sample((counts, confidence) =>
    {
        var limits = OneSidedAccuracy.Lower(StratifiedCounts.Of(counts), confidence);
        var accuracy = BeggGreenes.Of(counts);
        var tenfold = OneSidedAccuracy.Lower(StratifiedCounts.Of(new VerificationCounts(
            10 * counts.Positives, 10 * counts.Confirmed, 10 * counts.Refuted, 10 * counts.Negatives, 10 * counts.Missed, 10 * counts.Agreed)), confidence);
        return !(limits.Sensitivity > accuracy.Sensitivity.Value) && !(limits.Specificity > accuracy.Specificity.Value)
            && tenfold.Sensitivity >= limits.Sensitivity && tenfold.Specificity >= limits.Specificity;
    });

    /// <summary>
    /// The limits hold together in at least the stated share of all outcomes: a sum over both binomials, 40 positives and 60 audited of
    /// 500 negatives, without simulation.
    /// </summary>
    [Theory]
    [InlineData(0.3, 0.01)]
    [InlineData(0.8, 0.002)]
    [InlineData(0.5, 0.05)]
    public void One_sided_limits_hold_at_least_as_often_as_stated(double confirmedShare, double missedShare)
    {
        const int Verified = 40;
        const int Audited = 60;
        var cases = (confirmedShare * Verified) + (missedShare * 500);
        var sensitivity = confirmedShare * Verified / cases;
        var specificity = (1 - missedShare) * 500 / ((1 - missedShare) * 500 + ((1 - confirmedShare) * Verified));
        double covered = 0;
        for (var c = 0; c <= Verified; c++)
        {
            for (var x = 0; x <= Audited; x++)
            {
                var limits = OneSidedAccuracy.Lower(StratifiedCounts.Of(new VerificationCounts(Verified, c, Verified - c, 500, x, Audited - x)), 0.9);
                if (limits.Sensitivity <= sensitivity && limits.Specificity <= specificity) covered += Chance(c, Verified, confirmedShare) * Chance(x, Audited, missedShare);
            }
        }

        covered.Should().BeGreaterThanOrEqualTo(0.9);
    }

    [Fact]
    public void Counts_that_cannot_be_are_refused()
    {
        FluentActions.Invoking(() => new AuditStratum("", 5, 3, 3)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new AuditStratum("", 5, -1, 3)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => PersonProducts.Of(3, [1, 2, 3])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => PersonProducts.Of(3, [.. Enumerable.Range(0, 36).Select(i => (double)i)])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => PersonProducts.From([])).Should().Throw<ArgumentOutOfRangeException>();
        var nine = PersonProducts.From([[1, 0, 0, 0, 0, 1, 0, 0, 2]]);
        FluentActions.Invoking(() => BeggGreenes.Of(StratifiedCounts.Of(new VerificationCounts(5, 1, 1, 9, 1, 1)), nine)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => BeggGreenes.Of(new VerificationCounts(5, 1, 1, 9, 1, 1), 1)).Should().Throw<ArgumentOutOfRangeException>();
    }

    internal static Gen<VerificationCounts> Counts { get; } = Gen.Select(Gen.Long[0, 30].Array[4], Gen.Long[0, 200].Array[2]).Select((verified, unverified) =>
        new VerificationCounts(verified[0] + verified[1] + unverified[0], verified[0], verified[1], verified[2] + verified[3] + unverified[1], verified[2], verified[3]));

    internal static StratifiedCounts Read(ReferenceRow row)
    {
        var (negatives, missed, agreed) = (row.Numbers("negatives"), row.Numbers("missed"), row.Numbers("agreed"));
        return new StratifiedCounts(row.Count("positives"), row.Count("confirmed"), row.Count("refuted"),
            negatives.Select((all, h) => new AuditStratum($"stratum {h}", (long)all, (long)missed[h], (long)agreed[h])));
    }

    private static VerifiedAccuracy Robust(IReadOnlyList<IReadOnlyList<long>> people)
    {
        var t = Enumerable.Range(0, 6).Select(cell => people.Sum(one => one[cell])).ToArray();
        return BeggGreenes.Of(new StratifiedCounts(t[0] + t[1] + t[2], t[0], t[1], [new AuditStratum("", t[3] + t[4] + t[5], t[3], t[4])]), PersonProducts.From(people));
    }

    private static double Chance(int x, int n, double p)
    {
        double log = (x * Math.Log(p)) + ((n - x) * Math.Log(1 - p));
        for (var i = 1; i <= x; i++) log += Math.Log((n - x + i) / (double)i);
        return Math.Exp(log);
    }

    private static bool Same(double? left, double? right) =>
        left is null ? right is null : right is not null && Math.Abs(left.Value - right.Value) <= 1e-9 * Math.Max(Math.Abs(left.Value), 1e-6);
}
