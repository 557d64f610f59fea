using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Statistics.Tests.Cadence.Intervals;

public sealed class CadenceComparisonTests
{
    private static readonly CadenceQuestion Known = new()
    {
        DetectableFrom = 0, DetectableTo = 7, Infectious = new Interval(0, 7), Sensitivity = 0.6, Specificity = 0.9995, Incidence = 0.0005, People = 1000,
    };

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("cadence-options"), row =>
    {
        var question = new CadenceQuestion
        {
            DetectableFrom = row.Number("detectable_from"), DetectableTo = row.Number("detectable_to"),
            Infectious = new Interval(row.Number("infectious_from"), row.Number("infectious_to")), DelayDays = row.Number("delay"),
            Sensitivity = row.Number("sensitivity"), Specificity = row.Number("specificity"), Incidence = row.Number("incidence"), People = row.Count("people"),
        };
        var option = CadenceComparison.Of(question, [row.Number("every")]).Single();
        return
        [
            row.Mismatch("detected", option.DetectionProbability.Value), row.Mismatch("removed", option.InfectiousDaysRemoved.Value),
            row.Mismatch("screens", option.ScreensPerPersonYear), row.Mismatch("false_each", option.FalsePositivesPerPersonYear.Value),
            row.Mismatch("any_false", option.AnyFalsePositivePerYear.Value), row.Mismatch("true_year", option.TruePositivesPerYear.Value),
            row.Mismatch("false_year", option.FalsePositivesPerYear.Value), row.Mismatch("predictive", option.PositivePredictiveValue.Value),
            row.Mismatch("removed_year", option.InfectiousDaysRemoved.Value * question.Incidence * 365 * question.People),
        ];
    });

    /// <summary>Screens at 5 each, confirmatory tests of all positives at 100 each.</summary>
    private static (double PerCase, double PerDay, double ScreensPerDay) Costs(CadenceQuestion question, double every)
    {
        var option = CadenceComparison.Of(question, [every]).Single();
        var (found, alarms, people) = (option.TruePositivesPerYear.Value!.Value, option.FalsePositivesPerYear.Value!.Value, question.People!.Value);
        var cost = (5 * option.ScreensPerPersonYear * people) + (100 * (found + alarms));
        var removed = option.InfectiousDaysRemoved.Value!.Value * question.Incidence!.Value * 365 * people;
        return (cost / found, cost / removed, (cost - (100 * found)) / removed);
    }

    [Fact]
    public void Every_row_of_the_costs_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("cadence-costs"), row =>
    {
        var (perCase, perDay, _) = Costs(Known, row.Number("every"));
        return new[] { row.Has("cost_per_case") ? row.Mismatch("cost_per_case", perCase) : null, row.Has("cost_per_day") ? row.Mismatch("cost_per_day", perDay) : null };
    });

    [Fact]
    public void From_an_interval_as_long_as_the_window_on_the_cost_per_case_and_per_day_is_flat_and_before_it_rises() =>
        Gen.Select(Gen.Double[0.05, 1], Gen.Double[1, 12], Gen.Double[1, 8], Gen.Double[1, 8], Gen.Double[0, 0.9]).Sample((s, window, first, second, share) =>
        {
            var question = Known with { DetectableTo = window, Infectious = new Interval(0, window), Sensitivity = s };
            var (near, far, often) = (Costs(question, window * first), Costs(question, window * second), Costs(question, window * (0.05 + share)));
            return Math.Abs(near.PerCase - far.PerCase) <= 1e-9 * far.PerCase && Math.Abs(near.PerDay - far.PerDay) <= 1e-9 * far.PerDay
                && often.PerCase >= far.PerCase * (1 - 1e-9)
                // Without the tests that confirm true positives: of these a day needs fewer, the sooner each infection is found.
                && often.ScreensPerDay >= far.ScreensPerDay * (1 - 1e-9);
        });

    [Fact]
    public void What_is_not_known_is_undefined_and_the_rest_is_given()
    {
        var bare = CadenceComparison.Of(new CadenceQuestion { DetectableFrom = 3, DetectableTo = 13, Sensitivity = 0.8 }, [7]).Single();
        bare.DetectionProbability.Value.Should().BeApproximately(0.868571, 5e-7);
        bare.InfectiousDaysRemoved.Reason.Should().Be(UndefinedReason.InfectiousTimeUnknown);
        bare.FalsePositivesPerPersonYear.Reason.Should().Be(UndefinedReason.SpecificityUnknown);
        bare.TruePositivesPerYear.Reason.Should().Be(UndefinedReason.PeopleUnknown);
        bare.PositivePredictiveValue.Reason.Should().Be(UndefinedReason.SpecificityUnknown);
        CadenceComparison.Of(Known with { Incidence = null }, [7]).Single().TruePositivesPerYear.Reason.Should().Be(UndefinedReason.IncidenceUnknown);
        CadenceComparison.Of(Known with { Incidence = null }, [7]).Single().FalsePositivesPerYear.IsDefined.Should().BeTrue();
        CadenceComparison.Of(Known with { Sensitivity = null }, [7]).Single().FractionRemoved.Reason.Should().Be(UndefinedReason.SensitivityUnknown);
        CadenceComparison.Of(Known with { People = null }, [7]).Single().PositivePredictiveValue.Value.Should().BeApproximately(0.8077, 5e-5);
    }

    [Fact]
    public void Extremes_give_what_they_must()
    {
        var nobody = CadenceComparison.Of(Known with { Incidence = 0 }, [7]).Single();
        nobody.TruePositivesPerYear.Value.Should().Be(0);
        nobody.PositivePredictiveValue.Value.Should().Be(0);
        CadenceComparison.Of(Known with { Incidence = 0, Specificity = 1 }, [7]).Single().PositivePredictiveValue.Reason.Should().Be(UndefinedReason.NoPositiveResultPossible);
        CadenceComparison.Of(Known with { Specificity = 1 }, [7]).Single().PositivePredictiveValue.Value.Should().Be(1);
        var one = CadenceComparison.Of(Known with { People = 1 }, [7]).Single();
        var million = CadenceComparison.Of(Known with { People = 1_000_000 }, [7]).Single();
        million.TruePositivesPerYear.Value.Should().BeApproximately(1e6 * one.TruePositivesPerYear.Value!.Value, 1e-6);
        million.PositivePredictiveValue.Value.Should().Be(one.PositivePredictiveValue.Value);
    }

    [Fact]
    public void Options_stand_in_the_order_given_and_never_hold_a_number_that_is_none() =>
        Gen.Select(Gen.Double[-6, 9].Select(e => Math.Min(1e9, Math.Max(1e-6, Math.Pow(10, e)))), Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Long[1, 1_000_000_000]).Sample((every, s, sp, incidence, people) =>
        {
            var options = CadenceComparison.Of(Known with { Sensitivity = s, Specificity = sp, Incidence = incidence, People = people }, [every, 1]);
            return options.Select(one => one.EveryDays).SequenceEqual([every, 1.0]) && options.All(one => one.FractionRemoved.Value is >= 0 and <= 1
                && one.AnyFalsePositivePerYear.Value is >= 0 and <= 1 && one.PositivePredictiveValue.Value is null or (>= 0 and <= 1));
        });

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var calls = new (CadenceQuestion Question, string Name)[]
        {
            (Known with { DetectableTo = -1 }, "detectableTo"), (Known with { DelayDays = -1 }, "DelayDays"), (Known with { Sensitivity = 2 }, "Sensitivity"),
            (Known with { Specificity = -1 }, "Specificity"), (Known with { Incidence = 1.5 }, "Incidence"), (Known with { People = 0 }, "People"),
            (Known with { Infectious = new Interval(-1, 2) }, "infectiousFrom"),
        };
        foreach (var (question, name) in calls) FluentActions.Invoking(() => CadenceComparison.Of(question, [1])).Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
        FluentActions.Invoking(() => CadenceComparison.Of(Known, [0])).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("everyDays");
    }
}
