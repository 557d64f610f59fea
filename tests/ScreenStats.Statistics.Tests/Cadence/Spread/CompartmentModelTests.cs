using ScreenStats.Statistics.Cadence.Spread;

namespace ScreenStats.Statistics.Tests.Cadence.Spread;

public sealed class CompartmentModelTests
{
    private static readonly CompartmentSettings Campus = new()
    {
        Uninfected = 4990, InfectiousAtStart = 10, Days = 80, Reproduction = 2.5, DaysToInfectious = 3, DaysToRecovery = 14, SymptomShare = 0.3, FatalShare = 0.0005,
        Imports = 10, ImportEveryDays = 7, EveryDays = 2, Sensitivity = 0.7, Specificity = 0.98, CostPerScreen = 10, CostPerConfirmation = 100,
    };

    private static readonly CompartmentSettings Worst = Campus with { Reproduction = 3.5, Imports = 25, EveryDays = null };

    private static readonly Gen<CompartmentSettings> AnySettings = Gen.Select(
        Gen.Select(Gen.Double[0, 1e6], Gen.Double[1, 500], Gen.Int[0, 100]),
        Gen.Select(Gen.Double[0, 1e3], Gen.Double[1, 9], Gen.Double[5, 30], Gen.Double[0, 0.7]),
        Gen.Select(Gen.Double[0, 1000], Gen.Int[1, 14], Gen.Double[1 / 3.0, 30], Gen.Bool),
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[1, 9], Gen.Enum<ContactPool>()),
        (people, course, outside, screening) => new CompartmentSettings
        {
            Uninfected = people.Item1, InfectiousAtStart = people.Item2, Days = people.Item3, Reproduction = course.Item1, DaysToInfectious = course.Item2,
            DaysToRecovery = course.Item3, SymptomShare = course.Item4, FatalShare = 0.01, Imports = outside.Item1, ImportEveryDays = outside.Item2,
            EveryDays = outside.Item4 ? outside.Item3 : null, Sensitivity = screening.Item1, Specificity = screening.Item2, DaysToReturn = screening.Item3, Contacts = screening.Item4,
        });

    [Fact]
    public void Every_row_of_the_compartment_model_is_met() => Mismatches.ShouldBeNone(
        ReferenceTable.Load("compartment-models").Where(row => row.Id != "worst-quirk").ToList(), row =>
        {
            var course = CompartmentModel.Run(Settings(row));
            var state = course.States[(int)row.Count("at")];
            return new[]
            {
                row.Mismatch("U", state.Uninfected), row.Mismatch("E", state.Exposed), row.Mismatch("A", state.Infectious), row.Mismatch("FP", state.FalsePositives),
                row.Mismatch("TP", state.TruePositives), row.Mismatch("S", state.Symptomatic), row.Mismatch("R", state.Recovered), row.Mismatch("D", state.Died),
                row.Mismatch("infections", course.Infections), row.Mismatch("screens", course.Screens), row.Mismatch("false_alarms", course.FalseAlarms),
                row.Mismatch("found", course.Found), row.Mismatch("mean_isolated", course.MeanIsolated.Value),
                row.Mismatch("mean_infected", course.MeanIsolatedInfected.Value), row.Mismatch("cost_per_person", course.CostPerPerson),
            };
        });

    [Fact]
    public void The_published_infections_come_out_to_the_unit() => new double?[] { 1, 2, 3, 7, null }
        .Select(every => Math.Round(CompartmentModel.Run(Campus with { EveryDays = every }).Infections)).Should().Equal(162, 243, 379, 1840, 4970);

    [Fact]
    public void Every_row_of_the_marginal_costs_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("compartment-margins"), row =>
    {
        var scenario = row.Text("scenario") == "base" ? Campus : Campus with { Reproduction = 1.5, Imports = 5, Specificity = 0.997 };
        CompartmentCourse Run(string end) => CompartmentModel.Run(scenario with
        {
            EveryDays = row.Has(end + "_every") ? row.Number(end + "_every") : null, Sensitivity = row.Number(end + "_sensitivity"), CostPerScreen = row.Number(end + "_cost"),
        });
        return new[] { row.Mismatch("cost_per_infection_averted", Run("to").CostPerInfectionAverted(Run("from")).Value) };
    });

    [Fact]
    public void Nothing_averted_has_no_cost_by_infection() =>
        CompartmentModel.Run(Campus).CostPerInfectionAverted(CompartmentModel.Run(Campus with { EveryDays = 1 })).Reason.Should().Be(UndefinedReason.NoInfectionAverted);

    [Fact]
    public void The_guard_differs_from_the_published_equations_only_where_nobody_is_left()
    {
        var rows = ReferenceTable.Load("compartment-models");
        var (before, quirk) = (rows.Single(row => row.Id == "worst-before"), rows.Single(row => row.Id == "worst-quirk"));
        var guarded = CompartmentModel.Run(Worst);
        var bound = (int)quirk.Count("at");
        guarded.States[(int)before.Count("at")].Uninfected.Should().BePositive("the row of the cycle before is met by the same run");
        guarded.States[bound].Uninfected.Should().Be(0);
        guarded.States[bound].Exposed.Should().BeLessThan(quirk.Number("E"), "the published equations add imports though nobody is left");
        quirk.Number("infections").Should().BeGreaterThan(4990, "which makes more infections than people");
        guarded.Infections.Should().BeApproximately(4990, 1e-8);
        guarded.ImportsRefused.Should().BeApproximately((11 * 25) - guarded.Imported, 1e-9).And.BePositive();
    }

    [Fact]
    public void People_are_neither_made_nor_lost() => AnySettings.Sample(settings =>
    {
        var course = CompartmentModel.Run(settings);
        var people = settings.Uninfected + settings.InfectiousAtStart;
        return course.States.All(state => Math.Abs(state.People - people) <= 1e-9 * people && Counts(state).All(count => count >= 0 && double.IsFinite(count)))
            && course.Infections <= settings.Uninfected * (1 + 1e-9) && course.Found <= people * (1 + 1e-9)
            && course.ImportsRefused >= 0 && (course.ImportsRefused == 0 || course.States.Any(state => state.Uninfected == 0));
    }, iter: 300);

    [Fact]
    public void Without_sensitivity_screening_only_costs_and_without_false_positives_nobody_is_away_for_nothing() => AnySettings.Sample(settings =>
    {
        var none = CompartmentModel.Run(settings with { EveryDays = null });
        var blind = CompartmentModel.Run(settings with { EveryDays = 5, Sensitivity = 0, Specificity = 1 });
        return blind.Infections == none.Infections && blind.Found == 0 && blind.FalseAlarms == 0 && blind.FalseAlarmDays == 0 && none.Screens == 0;
    }, iter: 100);

    [Fact]
    public void Extremes_have_a_right_answer_or_a_reason()
    {
        var still = CompartmentModel.Run(Campus with { Days = 0 });
        still.MeanIsolated.Reason.Should().Be(UndefinedReason.NoExposure);
        still.MeanIsolatedInfected.Reason.Should().Be(UndefinedReason.NoExposure);
        (still.Infections, still.Screens, still.CostPerPerson, still.FalseAlarmDays, still.Deaths).Should().Be((0, 0, 0, 0, 0));
        CompartmentModel.Run(Campus with { InfectiousAtStart = 0, Imports = 0 }).Infections.Should().Be(0, "nothing is brought in");
        CompartmentModel.Run(Campus with { Uninfected = 0, InfectiousAtStart = 1, Imports = 0 }).Infections.Should().Be(0, "one worker has nobody to infect");
        CompartmentModel.Run(Campus with { Uninfected = 0, InfectiousAtStart = 1 }).ImportsRefused.Should().Be(110);
        CompartmentModel.Run(Campus with { Reproduction = 0 }).Inside.Should().Be(0);
        CompartmentModel.Run(Campus with { Reproduction = 1e15 }).Infections.Should().BeApproximately(4990, 1e-6);
        CompartmentModel.Run(Campus with { Uninfected = 1e6, EveryDays = 1 / 3.0, Sensitivity = 1, Specificity = 0 }).States[^1].People.Should().BeApproximately(1000010, 1e-5);
        (Campus with { Reproduction = 0 }).ReproductionUnderScreening.Should().Be(0);
    }

    [Fact]
    public void Settings_outside_their_domain_are_refused_by_name()
    {
        var wrong = new (CompartmentSettings Settings, string Name)[]
        {
            (Campus with { Uninfected = -1 }, "Uninfected"), (Campus with { Uninfected = 0, InfectiousAtStart = 0 }, "Uninfected"), (Campus with { InfectiousAtStart = double.NaN }, "InfectiousAtStart"),
            (Campus with { Days = -1 }, "Days"), (Campus with { Days = 400_000 }, "Days"), (Campus with { CyclesPerDay = 0 }, "CyclesPerDay"), (Campus with { Reproduction = -1 }, "Reproduction"),
            (Campus with { DaysToInfectious = 0.3 }, "DaysToInfectious"), (Campus with { DaysToRecovery = 0 }, "DaysToRecovery"), (Campus with { DaysToReturn = 0 }, "DaysToReturn"),
            (Campus with { EveryDays = 0.3 }, "EveryDays"), (Campus with { SymptomShare = 1 }, "SymptomShare"), (Campus with { SymptomShare = 0.99 }, "SymptomShare"),
            (Campus with { FatalShare = 1 }, "FatalShare"), (Campus with { FatalShare = 0.999 }, "FatalShare"), (Campus with { Imports = -1 }, "Imports"), (Campus with { ImportEveryDays = 0.5 }, "ImportEveryDays"),
            (Campus with { Sensitivity = 1.1 }, "Sensitivity"), (Campus with { Specificity = -0.1 }, "Specificity"), (Campus with { CostPerScreen = -1 }, "CostPerScreen"),
            (Campus with { CostPerConfirmation = double.NaN }, "CostPerConfirmation"), (Campus with { Contacts = (ContactPool)9 }, "Contacts"),
        };
        foreach (var (settings, name) in wrong)
            ((Action)(() => CompartmentModel.Run(settings))).Should().Throw<ArgumentOutOfRangeException>().Which.ParamName.Should().Be(name);
    }

    private static CompartmentSettings Settings(ReferenceRow row) => new()
    {
        Uninfected = row.Number("uninfected"), InfectiousAtStart = row.Number("infectious"), Days = (int)row.Count("days"), Reproduction = row.Number("reproduction"),
        DaysToInfectious = row.Number("latent"), DaysToRecovery = row.Number("recovery"), SymptomShare = row.Number("symptoms"), FatalShare = row.Number("fatal"),
        Imports = row.Number("imports"), ImportEveryDays = row.Number("import_every"), EveryDays = row.Has("every") ? row.Number("every") : null,
        Sensitivity = row.Number("sensitivity"), Specificity = row.Number("specificity"), DaysToReturn = row.Number("return"), CyclesPerDay = (int)row.Count("cycles"),
        Contacts = row.Text("contacts") switch { "circulating" => ContactPool.Circulating, "recovered" => ContactPool.CirculatingAndRecovered, _ => ContactPool.Everybody },
        CostPerScreen = row.Number("screen_cost"), CostPerConfirmation = row.Number("confirm_cost"),
    };

    private static double[] Counts(CompartmentState s) => [s.Uninfected, s.Exposed, s.Infectious, s.FalsePositives, s.TruePositives, s.Symptomatic, s.Recovered, s.Died];
}
