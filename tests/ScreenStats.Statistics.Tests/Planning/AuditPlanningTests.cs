using ScreenStats.Statistics.Planning;

namespace ScreenStats.Statistics.Tests.Planning;

public sealed class AuditPlanningTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("plans-audit"), row =>
    {
        var plan = AuditPlanning.ForSensitivity(new AuditQuestion
        {
            Sensitivity = row.Number("sensitivity"), Specificity = row.Number("specificity"), Prevalence = row.Number("prevalence"),
            Width = row.Number("width"), Screens = row.Count("screens"), Confidence = row.Number("confidence"),
        });
        return
        [
            row.Mismatch("positives", plan.ExpectedPositives), row.Mismatch("beside_all", plan.AllPositives?.AuditedNegatives),
            row.Mismatch("fewest", plan.Fewest?.ConfirmatoryTests), row.Mismatch("achieved", plan.AllPositives?.Achieved), row.Mismatch("everything", plan.WidthWhenAllAreVerified),
        ];
    });

    [Fact]
    public void The_interval_is_that_of_the_correction_at_the_expected_counts()
    {
        // 10,000 screens: 800 true and 450 false positives, 200 missed among 8,750 negatives; of 875 audited 20 are missed.
        var plan = AuditPlanning.ForSensitivity(new() { Sensitivity = 0.8, Specificity = 0.95, Prevalence = 0.1, Width = 0.15, Screens = 10_000 });
        plan.ExpectedPositives.Should().Be(1250);
        var audited = plan.AllPositives!.AuditedNegatives;
        var (a, b, t) = (800 / 1250.0, 200 / 8750.0, 0.125);
        var variance = (1 / (10_000 * t * (1 - t))) + ((1 - a) / a / 1250) + ((1 - b) / b / audited);
        var half = 1.959963984540054 * Math.Sqrt(variance);
        double Share(double logit) => 1 / (1 + Math.Exp(-logit));
        plan.AllPositives.Achieved.Should().BeApproximately(Share(Math.Log(4) + half) - Share(Math.Log(4) - half), 1e-12);
        plan.AllPositives.Achieved.Should().BeLessThanOrEqualTo(0.15);
        plan.AllPositives.ExpectedMissed.Should().BeApproximately(audited * b, 1e-9);
    }

    [Fact]
    public void The_fewest_are_never_more_than_with_all_positives_and_narrow_enough() =>
        Gen.Select(Gen.Double[0.2, 0.97], Gen.Double[0.9, 0.9999], Gen.Double[0.001, 0.2], Gen.Double[0.05, 0.6], Gen.Long[100, 1_000_000]).Sample((se, sp, prevalence, width, screens) =>
        {
            var plan = AuditPlanning.ForSensitivity(new() { Sensitivity = se, Specificity = sp, Prevalence = prevalence, Width = width, Screens = screens });
            if (plan.Fewest is not { } fewest) return plan.Reason == UndefinedReason.TooFewScreens && (plan.WidthWhenAllAreVerified is null || plan.WidthWhenAllAreVerified > width);
            return fewest.Achieved <= width && plan.AllPositives!.Achieved <= width && fewest.ConfirmatoryTests <= plan.AllPositives.ConfirmatoryTests
                && fewest.VerifiedPositives <= plan.ExpectedPositives && fewest.AuditedNegatives <= plan.ExpectedNegatives;
        });

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var good = new AuditQuestion { Sensitivity = 0.7, Specificity = 0.99, Prevalence = 0.01, Width = 0.2, Screens = 100_000 };
        var bad = new (AuditQuestion Question, string Name)[]
        {
            (good with { Sensitivity = 0 }, "Sensitivity"), (good with { Specificity = 1 }, "Specificity"), (good with { Prevalence = 1.2 }, "Prevalence"),
            (good with { Width = 1 }, "Width"), (good with { Screens = 0 }, "Screens"), (good with { Confidence = 95 }, "Confidence"),
        };
        foreach (var (question, name) in bad)
        {
            var call = () => AuditPlanning.ForSensitivity(question);
            call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
        }
    }
}
