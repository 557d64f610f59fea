using ScreenStats.Statistics.Monitoring.Sequential.Evidence;

namespace ScreenStats.Statistics.Tests.Monitoring.Sequential;

public sealed class EvidenceDiscoveryTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("evidence-discoveries"), row =>
    {
        var result = EvidenceDiscovery.BenjaminiHochberg(row.Numbers("log_evidence"), row.Number("level"));
        var adjusted = row.Numbers("adjusted");
        return result.AdjustedLevels.Select((value, i) => row.Within(adjusted[i], value) ? null : $"{row} lot {i}: {value}, not {adjusted[i]}")
            .Append(result.Selected.SequenceEqual(row.Numbers("selected").Select(one => one == 1)) ? null : $"{row}: other lots selected");
    });

    [Fact]
    public void There_are_at_least_fifty_independent_rows() =>
        ReferenceTable.Load("evidence-discoveries").Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50);

    [Fact]
    public void A_lot_is_selected_exactly_where_its_adjusted_level_is_within_the_rate() =>
        Gen.Select(Gen.Double[-3, 12].Array[1, 30], Gen.Double[0.001, 0.5]).Sample((logs, rate) =>
        {
            var result = EvidenceDiscovery.BenjaminiHochberg(logs, rate);
            return result.Selected.Zip(result.AdjustedLevels).All(pair => Math.Abs(pair.Second - rate) < 1e-12 || pair.First == pair.Second <= rate);
        });

    [Fact]
    public void Alarms_at_the_threshold_of_all_lots_are_among_the_selected() =>
        Gen.Select(Gen.Double[-3, 12].Array[1, 30], Gen.Double[0.001, 0.5]).Sample((logs, rate) =>
        {
            var threshold = AlarmThreshold.OfLots(logs.Length, rate).LogEvidence;
            var selected = EvidenceDiscovery.BenjaminiHochberg(logs, rate).Selected;
            return logs.Zip(selected).All(pair => pair.First < threshold + 1e-12 || pair.Second);
        });

    [Fact]
    public void No_lot_no_finding() => EvidenceDiscovery.BenjaminiHochberg([], 0.05).Count.Should().Be(0);

    [Fact]
    public void Figures_outside_their_domain_are_refused()
    {
        FluentActions.Invoking(() => EvidenceDiscovery.BenjaminiHochberg([double.NaN], 0.05)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => EvidenceDiscovery.BenjaminiHochberg([1], 0)).Should().Throw<ArgumentOutOfRangeException>();
    }
}
