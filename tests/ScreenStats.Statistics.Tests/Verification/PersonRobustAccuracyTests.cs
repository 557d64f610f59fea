using ScreenStats.Statistics.Verification;

namespace ScreenStats.Statistics.Tests.Verification;

public sealed class PersonRobustAccuracyTests
{
    private static readonly (AccuracyMeasure Measure, string Column)[] Columns =
    [
        (AccuracyMeasure.Sensitivity, "sensitivity"), (AccuracyMeasure.Specificity, "specificity"), (AccuracyMeasure.Prevalence, "prevalence"),
        (AccuracyMeasure.PositivePredictiveValue, "positive"), (AccuracyMeasure.NegativePredictiveValue, "negative"),
    ];

    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("person-robust-accuracy"), row =>
        {
            var counts = VerifiedAccuracyTests.Read(row);
            var products = PersonProducts.Of(row.Count("people"), row.Numbers("products"));
            return Columns.SelectMany(column =>
            {
                var estimate = PersonRobustAccuracy.Of(column.Measure, counts, products, row.Number("confidence"));
                return new[] { row.Mismatch(column.Column, estimate.Value), row.Mismatch(column.Column + "_lower", estimate.Lower), row.Mismatch(column.Column + "_upper", estimate.Upper) };
            });
        });

    [Fact]
    public void The_larger_of_the_variances_over_people_and_over_sites_is_taken_as_in_the_reference_table()
    {
        var rows = ReferenceTable.Load("site-robust-accuracy");
        Mismatches.ShouldBeNone(rows, row =>
        {
            var counts = VerifiedAccuracyTests.Read(row);
            var products = PersonProducts.Of(row.Count("people"), row.Numbers("products"));
            var sites = PersonProducts.Of(row.Count("sites"), row.Numbers("site_products"));
            return Columns.SelectMany(column =>
            {
                var clustered = PersonRobustAccuracy.Of(column.Measure, counts, products, sites, row.Number("confidence"));
                clustered.GroupsDecide.Should().Be(row.Text(column.Column + "_clusters") == "sites", row.Id + " " + column.Column);
                clustered.Clusters.Should().Be(clustered.GroupsDecide ? sites.People : products.People);
                var estimate = clustered.Estimate;
                return new[] { row.Mismatch(column.Column, estimate.Value), row.Mismatch(column.Column + "_lower", estimate.Lower), row.Mismatch(column.Column + "_upper", estimate.Upper) };
            });
        });
        rows.Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50);
        rows.Select(row => row.Text("specificity_clusters")).Distinct().Should().BeEquivalentTo("persons", "sites");
    }

    [Fact]
    public void Limits_over_sites_hold_those_over_people_and_sites_of_one_person_each_change_nothing() =>
        Gen.Select(Gen.Long[0, 6].Array[6].Array[8, 40], Gen.Int[1, 6], Gen.Double[0.6, 0.99]).Sample((drawn, size, confidence) =>
        {
            List<IReadOnlyList<long>> people = [[3, 2, 1, 2, 5, 9], [1, 1, 1, 1, 2, 3], .. drawn];
            var (counts, products) = Of(people);
            var sites = PersonProducts.From(people.Chunk(size).Select(site => (IReadOnlyList<long>)[.. Enumerable.Range(0, 6).Select(cell => site.Sum(one => one[cell]))]));
            return Columns.All(column =>
            {
                var plain = PersonRobustAccuracy.Of(column.Measure, counts, products, confidence);
                var clustered = PersonRobustAccuracy.Of(column.Measure, counts, products, sites, confidence);
                var wide = clustered.Estimate.Interval!.Value;
                return clustered.Estimate.Value == plain.Value && wide.Lower <= plain.Lower && wide.Upper >= plain.Upper && wide is { Lower: >= 0, Upper: <= 1 }
                    && (clustered.GroupsDecide ? clustered.VarianceRatio > 1 : clustered.Estimate == plain) && (size > 1 || !clustered.GroupsDecide)
                    && PersonRobustAccuracy.Of(column.Measure, counts, products, null, confidence).Estimate == plain;
            });
        });

    [Fact]
    public void Fifty_rows_are_independent_and_some_have_none_missed_or_none_refuted()
    {
        var rows = ReferenceTable.Load("person-robust-accuracy");
        rows.Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50);
        rows.Should().Contain(row => row.Numbers("missed").Sum() == 0).And.Contain(row => row.Numbers("missed").Sum() > 4);
    }

    [Fact]
    public void With_one_run_a_person_the_limits_come_close_to_those_for_independent_runs()
    {
        var counts = new VerificationCounts(264, 122, 102, 59_736, 6, 994);
        var stratified = StratifiedCounts.Of(counts);
        var products = Diagonal(stratified);
        var robust = PersonRobustAccuracy.Of(AccuracyMeasure.Sensitivity, stratified, products);
        var plain = BeggGreenes.Sensitivity(counts).Estimate;
        robust.Value.Should().BeApproximately(plain.Value!.Value, 1e-12);
        robust.Lower.Should().BeApproximately(plain.Lower!.Value, 1e-4);
        robust.Upper.Should().BeApproximately(plain.Upper!.Value, 1e-4);
    }

    [Fact]
    public void The_same_runs_on_fewer_people_give_wider_limits_and_more_confidence_too() =>
        Gen.Select(Gen.Long[1, 9].Array[6], Gen.Int[2, 6], Gen.Double[0.6, 0.97]).Sample((one, times, confidence) =>
        {
            // Forty people with the same runs in one cell each; then each person's runs several times over, as if they always agreed.
            var people = Enumerable.Range(0, 60).Select(i => (IReadOnlyList<long>)[.. Enumerable.Range(0, 6).Select(cell => cell == i % 6 ? one[cell] : 0)]).ToList();
            var (counts, products) = Of(people);
            var (many, manyProducts) = Of([.. people.SelectMany(person => Enumerable.Repeat(person, times))]);
            foreach (var (measure, _) in Columns)
            {
                var few = PersonRobustAccuracy.Of(measure, counts, products, confidence);
                var wide = PersonRobustAccuracy.Of(measure, counts, products, 0.99);
                var narrow = PersonRobustAccuracy.Of(measure, many, manyProducts, confidence);
                if (few.Interval!.Value.Width < narrow.Interval!.Value.Width - 1e-12 || wide.Interval!.Value.Width < few.Interval.Value.Width - 1e-12) return false;
                if (!few.Interval.Value.Contains(few.Value!.Value) || few.Lower < 0 || few.Upper > 1) return false;
            }

            return true;
        });

    [Fact]
    public void Without_audits_the_reason_is_that_of_the_plain_figures()
    {
        var counts = new StratifiedCounts(10, 6, 2, [new AuditStratum("", 90, 0, 0)]);
        PersonRobustAccuracy.Of(AccuracyMeasure.Sensitivity, counts, Diagonal(counts)).Reason.Should().Be(UndefinedReason.NoVerifiedNegatives);
        PersonRobustAccuracy.Of(AccuracyMeasure.PositivePredictiveValue, counts, Diagonal(counts)).Value.Should().Be(0.75);
        FluentActions.Invoking(() => PersonRobustAccuracy.EffectivePeople(counts, PersonProducts.From([[1, 0, 0, 0, 0, 1, 0, 0, 2]]))).Should().Throw<ArgumentOutOfRangeException>();
    }

    [Fact]
    public void Effective_people_are_the_runs_where_each_has_one_and_the_people_where_each_has_as_many()
    {
        var counts = new StratifiedCounts(30, 12, 8, [new AuditStratum("a", 900, 1, 39), new AuditStratum("b", 60, 0, 10)]);
        PersonRobustAccuracy.EffectivePeople(counts, Diagonal(counts)).Should().BeEquivalentTo(counts);

        // Ten people with four audited runs each: one of them missed all four.
        List<IReadOnlyList<long>> people = [.. Enumerable.Range(0, 10).Select(i => (IReadOnlyList<long>)[2, 0, 0, i == 0 ? 4 : 0, i == 0 ? 0 : 4, 50])];
        var (once, products) = Of(people);
        var effective = PersonRobustAccuracy.EffectivePeople(once, products);
        (effective.Overall.Confirmed, effective.Overall.Missed, effective.Overall.Agreed).Should().Be((10, 1, 9));
        effective.Overall.Negatives.Should().Be(once.Overall.Negatives);
    }

    private static PersonProducts Diagonal(StratifiedCounts counts)
    {
        var cells = counts.Cells;
        return PersonProducts.Of(cells.Sum(), [.. Enumerable.Range(0, cells.Length * cells.Length).Select(at => at / cells.Length == at % cells.Length ? cells[at / cells.Length] : 0.0)]);
    }

    private static (StratifiedCounts Counts, PersonProducts Products) Of(List<IReadOnlyList<long>> people)
    {
        var t = Enumerable.Range(0, 6).Select(cell => people.Sum(one => one[cell])).ToArray();
        return (new StratifiedCounts(t[0] + t[1] + t[2], t[0], t[1], [new AuditStratum("", t[3] + t[4] + t[5], t[3], t[4])]), PersonProducts.From(people));
    }
}
