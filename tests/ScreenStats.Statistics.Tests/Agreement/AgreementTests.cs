using ScreenStats.Statistics.Agreement;
using ScreenStats.Statistics.Comparison.Paired;

namespace ScreenStats.Statistics.Tests.Agreement;

public sealed class AgreementTests
{
    private static readonly Gen<long> Count = Gen.OneOf(Gen.Long[0, 3], Gen.Long[0, 100]);

    private static readonly Gen<AgreementTable> Tables = Gen.Int[2, 5].SelectMany(k => Count.Array[k].Array[k]).Select(rows => AgreementTable.Of(rows)).Where(t => t.Total > 0);

    private static readonly Gen<KappaWeights> Weights = Gen.Int[0, 2].Select(i => (KappaWeights)i);

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("agreement"), row =>
    {
        var table = Read(row.Text("counts"));
        var confidence = row.Number("confidence");
        var measure = row.Text("measure");
        if (measure == "kappa")
        {
            var kappa = Kappa.Cohen(table, Enum.Parse<KappaWeights>(row.Text("weights"), ignoreCase: true), confidence);
            return
            [
                row.Mismatch("value", kappa.Estimate.Value), row.Mismatch("lower", kappa.Estimate.Lower), row.Mismatch("upper", kappa.Estimate.Upper),
                row.Mismatch("standard_error", kappa.StandardError), row.Mismatch("standard_error_under_chance", kappa.StandardErrorUnderChance),
            ];
        }

        var estimate = measure switch
        {
            "overall" => PercentAgreement.Overall(table, confidence).ToEstimate(),
            "positive" => PercentAgreement.Positive(table.Pairs!.Value, confidence).ToEstimate(),
            "negative" => PercentAgreement.Negative(table.Pairs!.Value, confidence).ToEstimate(),
            "prevalence-adjusted" => Kappa.PrevalenceAdjusted(table, confidence),
            _ => PercentAgreement.Specific(table, int.Parse(measure.Split('-')[1], System.Globalization.CultureInfo.InvariantCulture), confidence),
        };
        return [row.Mismatch("value", estimate.Value), row.Mismatch("lower", estimate.Lower), row.Mismatch("upper", estimate.Upper)];
    });

    [Fact]
    public void Each_measure_has_at_least_fifty_independent_rows()
    {
        var rows = ReferenceTable.Load("agreement").Where(row => row.Kind == "independent").ToList();
        foreach (var weights in (string[])["none", "linear", "quadratic"])
            rows.Count(row => row.Text("measure") == "kappa" && row.Text("weights") == weights).Should().BeGreaterThanOrEqualTo(50, weights);
        foreach (var measure in (string[])["overall", "prevalence-adjusted", "specific-0", "specific-1"])
            rows.Count(row => row.Text("measure") == measure).Should().BeGreaterThanOrEqualTo(50, measure);
    }

    [Fact]
    public void Readings_that_change_places_leave_kappa_and_specific_agreement_as_they_are() => Gen.Select(Tables, Weights).Sample((table, weights) =>
    {
        var turned = AgreementTable.Of([.. Enumerable.Range(0, table.Categories).Select(j => (IReadOnlyList<long>)[.. table.Rows.Select(row => row[j])])]);
        var (one, other) = (Kappa.Cohen(table, weights), Kappa.Cohen(turned, weights));
        return Near(one.Estimate.Value, other.Estimate.Value) && Near(one.StandardError, other.StandardError)
            && Near(one.StandardErrorUnderChance, other.StandardErrorUnderChance)
            && PercentAgreement.Specific(table, 0).Value == PercentAgreement.Specific(turned, 0).Value;
    });

    [Fact]
    public void The_order_of_the_categories_matters_to_weights_only_and_their_reversal_to_none() => Gen.Select(Tables, Weights).Sample((table, weights) =>
    {
        var reversed = Permuted(table, [.. Enumerable.Range(0, table.Categories).Reverse()]);
        var rotated = Permuted(table, [.. Enumerable.Range(1, table.Categories - 1), 0]);
        return Near(Kappa.Cohen(table, weights).Estimate.Value, Kappa.Cohen(reversed, weights).Estimate.Value)
            && Near(Kappa.Cohen(table).Estimate.Value, Kappa.Cohen(rotated).Estimate.Value);
    });

    [Fact]
    public void Limits_lie_in_their_domain_and_around_the_value_and_widen_with_confidence() =>
        Gen.Select(Tables, Weights, Gen.Double[0.5, 0.999], Gen.Double[0.5, 0.999]).Sample((table, weights, one, other) =>
        {
            bool Fine(Func<double, Estimate> at)
            {
                var (narrow, wide) = (at(Math.Min(one, other)), at(Math.Max(one, other)));
                return narrow.Value is not { } value || (wide.Lower <= narrow.Lower + 1e-15 && narrow.Lower <= value && value <= narrow.Upper && narrow.Upper <= wide.Upper + 1e-15
                    && wide.Lower >= -1 && wide.Upper <= 1);
            }

            return Fine(c => Kappa.Cohen(table, weights, c).Estimate) && Fine(c => Kappa.PrevalenceAdjusted(table, c)) && Fine(c => PercentAgreement.Specific(table, 0, c));
        });

    [Fact]
    public void Two_categories_have_one_kappa_whatever_the_weights() => Gen.Select(Count, Count, Count, Count).Sample((a, b, c, d) =>
    {
        var table = AgreementTable.Of(new PairedCounts(a, b, c, d));
        return Near(Kappa.Cohen(table).Estimate.Value, Kappa.Cohen(table, KappaWeights.Linear).Estimate.Value)
            && Near(Kappa.Cohen(table).Estimate.Value, Kappa.Cohen(table, KappaWeights.Quadratic).Estimate.Value);
    });

    // Byrt, Bishop, Carlin 1993: kappa from the adjusted kappa and both indices.
    [Fact]
    public void Kappa_of_two_categories_follows_from_the_indices() => Gen.Select(Count, Count, Count, Count).Sample((a, b, c, d) =>
    {
        var pairs = new PairedCounts(a, b, c, d);
        var table = AgreementTable.Of(pairs);
        if (Kappa.Cohen(table).Estimate.Value is not { } kappa) return true;
        var squares = Math.Pow(AgreementIndex.Bias(pairs)!.Value, 2) - Math.Pow(AgreementIndex.Prevalence(pairs)!.Value, 2);
        return Math.Abs(kappa - ((Kappa.PrevalenceAdjusted(table).Value!.Value + squares) / (1 + squares))) < 1e-11;
    });

    [Fact]
    public void Full_agreement_is_one_and_says_that_its_error_says_nothing()
    {
        var kappa = Kappa.Cohen(Read("10 0/0 20"));
        kappa.Estimate.Value.Should().Be(1);
        kappa.StandardError.Should().Be(0);
        AgreementCautions.Of(Read("10 0/0 20")).Should().Equal(AgreementCaution.NoDisagreementSeen);
    }

    [Theory]
    [InlineData("40 9/6 45")]
    [InlineData("80 10/5 5", AgreementCaution.HighAgreementLowKappa)]
    [InlineData("1467 782/1309 16232", AgreementCaution.HighAgreementLowKappa)]
    [InlineData("25 35/5 35", AgreementCaution.UnequalMarginsRaiseKappa)]
    [InlineData("118 5/2 0", AgreementCaution.HighAgreementLowKappa)]
    [InlineData("22 2 2 0/5 7 14 0/0 2 36 0/0 1 17 10")]
    [InlineData("95 1 1/1 0 1/1 0 0", AgreementCaution.HighAgreementLowKappa)]
    public void The_cautions_of_Feinstein_and_Cicchetti_are_shown_where_they_apply(string counts, params AgreementCaution[] expected) =>
        AgreementCautions.Of(Read(counts)).Should().Equal(expected);

    [Fact]
    public void Every_caution_has_its_words() =>
        Enum.GetValues<AgreementCaution>().Select(caution => caution.Describe()).Should().OnlyHaveUniqueItems().And.OnlyContain(text => text.EndsWith('.'));

    [Fact]
    public void What_cannot_be_answered_is_undefined_and_says_why()
    {
        Kappa.Cohen(Read("0 0/0 0")).Estimate.Reason.Should().Be(UndefinedReason.NoTrials);
        Kappa.Cohen(Read("0 0/0 0")).ObservedAgreement.Should().BeNull();
        Kappa.Cohen(Read("10 0/0 0")).Estimate.Reason.Should().Be(UndefinedReason.OneCategoryOnly);
        Kappa.PrevalenceAdjusted(Read("0 0/0 0")).Reason.Should().Be(UndefinedReason.NoTrials);
        PercentAgreement.Specific(Read("10 0/0 0"), 1).Reason.Should().Be(UndefinedReason.NoTrials);
        PercentAgreement.Positive(new PairedCounts(0, 3, 0, 5)).Reason.Should().Be(UndefinedReason.NoTrials);
        AgreementIndex.Bias(default).Should().BeNull();
        AgreementIndex.Prevalence(default).Should().BeNull();
        AgreementCautions.Of(Read("10 0/0 0")).Should().BeEmpty();
    }

    [Fact]
    public void Tables_that_cannot_be_are_refused()
    {
        FluentActions.Invoking(() => AgreementTable.Of([[1L, 2], [3]])).Should().Throw<ArgumentException>().WithParameterName("rows");
        FluentActions.Invoking(() => AgreementTable.Of([[1L]])).Should().Throw<ArgumentException>().WithParameterName("rows");
        FluentActions.Invoking(() => AgreementTable.Of([[1L, 2], [3, -1]])).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("rows");
        FluentActions.Invoking(() => AgreementTable.Of([[long.MaxValue, 2], [3, 1]])).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("rows");
        FluentActions.Invoking(() => Kappa.Cohen(Read("1 2/3 4"), (KappaWeights)9)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("weights");
        FluentActions.Invoking(() => Kappa.Cohen(Read("1 2/3 4"), KappaWeights.None, 2)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("confidence");
        FluentActions.Invoking(() => PercentAgreement.Specific(Read("1 2/3 4"), 2)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("category");
    }

    private static AgreementTable Read(string counts) =>
        AgreementTable.Of([.. counts.Split('/').Select(row => (IReadOnlyList<long>)[.. row.Split(' ').Select(count => long.Parse(count, System.Globalization.CultureInfo.InvariantCulture))])]);

    private static AgreementTable Permuted(AgreementTable table, IReadOnlyList<int> order) =>
        AgreementTable.Of([.. order.Select(i => (IReadOnlyList<long>)[.. order.Select(j => table.Rows[i][j])])]);

    private static bool Near(double? one, double? other) => one is null == other is null && (one is null || Math.Abs(one.Value - other!.Value) < 1e-11);
}
