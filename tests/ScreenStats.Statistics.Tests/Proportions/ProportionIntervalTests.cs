using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Tests.Proportions;

public sealed class ProportionIntervalTests
{
    private static readonly Gen<(IntervalMethod Method, long Successes, long Trials)> Cases =
        Gen.Select(
            Gen.Int[0, IntervalMethods.All.Count - 1].Select(i => IntervalMethods.All[i]),
            Gen.OneOf(Gen.Long[1, 30], Gen.Long[1, 3000], Gen.Long[1, 10_000_000]),
            Gen.OneOf(Gen.Double[0, 1], Gen.Double[0, 1].Select(u => u * u * u * u * u), Gen.Const(0.0), Gen.Const(1.0)))
        .Select((method, trials, share) => (method, Math.Min(trials, (long)Math.Round(trials * share)), trials));

    [Theory]
    [InlineData(IntervalMethod.Jeffreys, 1, 10, 0.01, true)]
    [InlineData(IntervalMethod.MidP, 1, 10, 0.001, true)]
    [InlineData(IntervalMethod.MidP, 9, 10, 0.001, true)]
    [InlineData(IntervalMethod.Jeffreys, 1, 10, 0.95, false)]
    [InlineData(IntervalMethod.MidP, 1, 10, 0.95, false)]
    public void At_a_tiny_confidence_an_end_is_moved_to_the_share_observed_and_the_note_says_so(IntervalMethod method, long successes, long trials, double confidence, bool moved)
    {
        // The medians lie beside the share: R's qbeta(.5, 1.5, 9.5) is 0.11655, above 1/10.
        var result = ProportionInterval.Of(method, successes, trials, confidence);
        (result.Note == IntervalNote.StretchedToEstimate).Should().Be(moved);
        if (moved) new[] { result.Lower, result.Upper }.Should().Contain((double)successes / trials);
    }

    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("proportion-intervals"), row =>
        {
            IntervalMethods.TryParse(row.Text("method"), out var method).Should().BeTrue();
            var result = ProportionInterval.Of(method, row.Count("successes"), row.Count("trials"), row.Number("confidence"));
            return [row.Mismatch("lower", result.Lower), row.Mismatch("upper", result.Upper)];
        });

    [Fact]
    public void Real_counts_and_one_sided_limits_meet_the_reference_table() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("effective-intervals"), row =>
        {
            IntervalMethods.TryParse(row.Text("method"), out var method).Should().BeTrue();
            var side = Enum.Parse<IntervalSide>(row.Text("side"), ignoreCase: true);
            var (successes, trials, confidence) = (row.Number("successes"), row.Number("trials"), row.Number("confidence"));
            var result = ProportionInterval.Of(method, successes, trials, confidence, side);
            if (successes == Math.Floor(successes) && trials == Math.Floor(trials))
                ProportionInterval.Of(method, (long)successes, (long)trials, confidence, side).Interval.Should().Be(result.Interval);
            return [row.Mismatch("lower", result.Lower), row.Mismatch("upper", result.Upper)];
        });

    [Fact]
    public void Each_named_method_is_the_method_of_its_name()
    {
        var named = new[]
        {
            ProportionInterval.Wilson(15, 148), ProportionInterval.WilsonContinuity(15, 148), ProportionInterval.ClopperPearson(15, 148),
            ProportionInterval.AgrestiCoull(15, 148), ProportionInterval.Jeffreys(15, 148), ProportionInterval.MidP(15, 148),
        };

        named.Select(result => result.Method).Should().Equal(IntervalMethods.All);
        named.Should().OnlyContain(result => result == ProportionInterval.Of(result.Method, 15, 148, 0.95));
    }

    [Fact]
    public void Names_are_read_back_and_others_are_not()
    {
        IntervalMethods.All.Select(method => method.Name()).Should()
            .Equal("wilson", "wilson-continuity", "clopper-pearson", "agresti-coull", "jeffreys", "mid-p");
        foreach (var method in IntervalMethods.All)
        {
            IntervalMethods.TryParse(method.Name(), out var read).Should().BeTrue();
            read.Should().Be(method);
        }

        IntervalMethods.TryParse("Wilson", out _).Should().BeFalse();
        IntervalMethods.TryParse(null, out _).Should().BeFalse();
    }

    [Fact]
    public void Ends_lie_in_the_unit_interval_and_around_the_estimate() => Cases.Sample(c =>
    {
        var result = ProportionInterval.Of(c.Method, c.Successes, c.Trials);
        return 0 <= result.Lower && result.Lower <= result.Estimate && result.Estimate <= result.Upper && result.Upper <= 1;
    });

    [Fact]
    public void Ends_are_exactly_zero_without_a_success_and_exactly_one_without_a_failure() => Gen.Select(Cases, Gen.Double[0.001, 0.999]).Sample((c, confidence) =>
        ProportionInterval.Of(c.Method, 0, c.Trials, confidence).Lower == 0 && ProportionInterval.Of(c.Method, c.Trials, c.Trials, confidence).Upper == 1);

    [Fact]
    public void More_confidence_is_never_narrower() => Gen.Select(Cases, Gen.Double[0.5, 0.999], Gen.Double[0.5, 0.999]).Sample((c, one, other) =>
    {
        var narrow = ProportionInterval.Of(c.Method, c.Successes, c.Trials, Math.Min(one, other));
        var wide = ProportionInterval.Of(c.Method, c.Successes, c.Trials, Math.Max(one, other));
        return wide.Lower <= narrow.Lower + 1e-15 && wide.Upper >= narrow.Upper - 1e-15;
    });

    [Fact]
    public void Failures_mirror_successes() => Cases.Sample(c =>
    {
        var one = ProportionInterval.Of(c.Method, c.Successes, c.Trials);
        var other = ProportionInterval.Of(c.Method, c.Trials - c.Successes, c.Trials);
        return Math.Abs(one.Lower!.Value - (1 - other.Upper!.Value)) < 1e-14 && Math.Abs(one.Upper!.Value - (1 - other.Lower!.Value)) < 1e-14;
    });

    [Fact]
    public void Both_exact_limits_solve_the_binomial_tail_summed_term_by_term() =>
        Gen.Select(Gen.Int[1, 400], Gen.Double[0, 1]).Sample((trials, share) =>
        {
            var successes = (int)(trials * share);
            var result = ProportionInterval.ClopperPearson(successes, trials);
            var above = successes == 0 ? 0.025 : Enumerable.Range(successes, trials - successes + 1).Sum(k => Pmf(k, trials, result.Lower!.Value));
            var below = successes == trials ? 0.025 : Enumerable.Range(0, successes + 1).Sum(k => Pmf(k, trials, result.Upper!.Value));
            return Math.Abs(above - 0.025) < 1e-11 && Math.Abs(below - 0.025) < 1e-11;
        });

    [Fact]
    public void The_mid_p_interval_lies_inside_the_exact_one() => Cases.Sample(c =>
    {
        var exact = ProportionInterval.ClopperPearson(c.Successes, c.Trials);
        var mid = ProportionInterval.MidP(c.Successes, c.Trials);
        return mid.Lower >= exact.Lower * (1 - 1e-12) && mid.Upper <= exact.Upper * (1 + 1e-12);
    });

    [Fact]
    public void Whole_counts_give_the_same_as_real_ones() => Cases.Sample(c =>
        ProportionInterval.Of(c.Method, c.Successes, c.Trials).Interval
            == ProportionInterval.Of(c.Method, (double)c.Successes, (double)c.Trials).Interval);

    [Fact]
    public void A_one_sided_limit_is_an_end_of_the_two_sided_interval_with_twice_the_tail() =>
        Gen.Select(Cases, Gen.Double[0.51, 0.9999]).Sample((c, confidence) =>
        {
            var both = ProportionInterval.Of(c.Method, c.Successes, c.Trials, (2 * confidence) - 1);
            var lower = ProportionInterval.Of(c.Method, c.Successes, c.Trials, confidence, IntervalSide.Lower);
            var upper = ProportionInterval.Of(c.Method, c.Successes, c.Trials, confidence, IntervalSide.Upper);
            return Math.Abs(lower.Lower!.Value - both.Lower!.Value) <= 1e-11 * both.Lower.Value && lower.Upper == 1
                && Math.Abs(upper.Upper!.Value - both.Upper!.Value) <= 1e-11 * both.Upper.Value && upper.Lower == 0;
        });

    [Fact]
    public void A_one_sided_limit_is_nearer_the_estimate_than_the_two_sided_end() => Cases.Sample(c =>
    {
        var both = ProportionInterval.Of(c.Method, c.Successes, c.Trials);
        return ProportionInterval.Of(c.Method, c.Successes, c.Trials, 0.95, IntervalSide.Lower).Lower >= both.Lower
            && ProportionInterval.Of(c.Method, c.Successes, c.Trials, 0.95, IntervalSide.Upper).Upper <= both.Upper;
    });

    [Fact]
    public void Fewer_effective_trials_of_the_same_proportion_are_never_narrower() => Gen.Select(Cases, Gen.Double[1, 30]).Sample((c, effect) =>
    {
        if (c.Method == IntervalMethod.AgrestiCoull || c.Method == IntervalMethod.WilsonContinuity || c.Trials / effect < 1) return true;
        var whole = ProportionInterval.Of(c.Method, c.Successes, c.Trials);
        var effective = ProportionInterval.Of(c.Method, c.Successes / effect, c.Trials / effect);
        return effective.Lower <= whole.Lower * (1 + 1e-9) && effective.Upper >= whole.Upper * (1 - 1e-9);
    });

    [Theory]
    [InlineData(IntervalMethod.AgrestiCoull, 0, 20, IntervalSide.Both, IntervalNote.ClippedAtZero)]
    [InlineData(IntervalMethod.AgrestiCoull, 1, 29, IntervalSide.Both, IntervalNote.ClippedAtZero)]
    [InlineData(IntervalMethod.AgrestiCoull, 1, 29, IntervalSide.Upper, null)]
    [InlineData(IntervalMethod.AgrestiCoull, 9, 10, IntervalSide.Both, IntervalNote.ClippedAtOne)]
    [InlineData(IntervalMethod.AgrestiCoull, 9, 10, IntervalSide.Lower, null)]
    [InlineData(IntervalMethod.AgrestiCoull, 81, 263, IntervalSide.Both, null)]
    [InlineData(IntervalMethod.Jeffreys, 0, 20, IntervalSide.Both, IntervalNote.ZeroByConvention)]
    [InlineData(IntervalMethod.Jeffreys, 20, 20, IntervalSide.Lower, null)]
    [InlineData(IntervalMethod.Jeffreys, 20, 20, IntervalSide.Both, IntervalNote.OneByConvention)]
    [InlineData(IntervalMethod.Jeffreys, 1, 20, IntervalSide.Both, null)]
    [InlineData(IntervalMethod.Wilson, 0, 20, IntervalSide.Both, null)]
    public void An_end_the_formula_does_not_give_is_said(IntervalMethod method, long successes, long trials, IntervalSide side, IntervalNote? note)
    {
        ProportionInterval.Of(method, successes, trials, 0.95, side).Note.Should().Be(note);
        ProportionInterval.Of(method, (double)successes, (double)trials, 0.95, side).Note.Should().Be(note);
    }

    [Fact]
    public void Every_note_has_words() =>
        Enum.GetValues<IntervalNote>().Select(note => note.Describe()).Should().OnlyHaveUniqueItems().And.OnlyContain(text => text.Length > 20);

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.3)]
    [InlineData(1)]
    public void A_one_sided_limit_needs_a_confidence_above_one_half(double confidence)
    {
        var call = () => ProportionInterval.Wilson(1, 10, confidence, IntervalSide.Upper);
        call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(nameof(confidence));
    }

    [Fact]
    public void Without_trials_the_estimate_is_undefined_and_says_why()
    {
        foreach (var method in IntervalMethods.All)
        {
            var result = ProportionInterval.Of(method, 0, 0);
            result.IsDefined.Should().BeFalse();
            result.Estimate.Should().BeNull();
            result.Lower.Should().BeNull();
            result.Upper.Should().BeNull();
            result.Reason.Should().Be(UndefinedReason.NoTrials);
            result.ToEstimate().Should().Be(Estimate.Undefined(UndefinedReason.NoTrials));
        }

        ProportionInterval.Wilson(0.0, 0.0).Reason.Should().Be(UndefinedReason.NoTrials);
    }

    [Theory]
    [InlineData(5, 3, 0.95, "successes")]
    [InlineData(-1, 10, 0.95, "successes")]
    [InlineData(0, -1, 0.95, "trials")]
    [InlineData(1, 10, 0, "confidence")]
    [InlineData(1, 10, 1, "confidence")]
    [InlineData(1, 10, 95, "confidence")]
    [InlineData(1, 10, double.NaN, "confidence")]
    public void Figures_that_cannot_be_are_refused_by_name(long successes, long trials, double confidence, string parameter)
    {
        foreach (var method in IntervalMethods.All)
        {
            var call = () => ProportionInterval.Of(method, successes, trials, confidence);
            call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(parameter);
        }

        var real = () => ProportionInterval.Wilson((double)successes, trials, confidence);
        real.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(parameter);
    }

    private static double Pmf(int k, int n, double p)
    {
        double log = 0;
        for (var i = 1; i <= k; i++) log += Math.Log((n - k + i) / (double)i);
        return Math.Exp(log + (k * Math.Log(p)) + ((n - k) * Math.Log(1 - p)));
    }
}
