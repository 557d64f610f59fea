using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Intervals;
using ScreenStats.Statistics.Cadence.Spread;

namespace ScreenStats.Statistics.Tests.Cadence.Spread;

/// <summary>Branching process, renewal equation, compartments and the chain of a site say the same where they must.</summary>
public sealed class SpreadLevelsTests
{
    private const double Many = 1e13;

    /// <summary>A large workplace with screening no more often than a single case's found can follow (every other day, so that no guard binds).</summary>
    private static readonly Gen<CompartmentSettings> Large = Gen.Select(
        Gen.Double[0.1, 4], Gen.Double[1, 5], Gen.Double[6, 20], Gen.Double[0, 0.5], Gen.Select(Gen.Double[2, 30], Gen.Double[0, 1], Gen.Double[0.9, 1]),
        (r, latent, recovery, symptoms, screens) => new CompartmentSettings
        {
            Uninfected = Many, InfectiousAtStart = 0, Days = 60, Reproduction = r, DaysToInfectious = latent, DaysToRecovery = recovery, SymptomShare = symptoms,
            EveryDays = screens.Item1, Sensitivity = screens.Item2, Specificity = screens.Item3, Imports = 1, ImportEveryDays = 1 / 3.0,
        });

    [Fact]
    public void At_small_prevalence_the_renewal_equation_is_the_compartment_model() => Large.Sample(settings =>
    {
        var course = CompartmentModel.Run(settings);
        var renewal = RenewalSpread.Run(Many, 1, settings.ReproductionUnderScreening, Generations(settings), settings.Days * settings.CyclesPerDay);

        // Both lose people in proportion to the infections, not in quite the same way; the rest is the profile's cut at 400 days, 20 times the longest recovery.
        var tolerance = 1e-7 + (4 * course.Infections / Many);
        return Math.Abs(course.Inside - renewal.Totals.Inside) <= tolerance * Math.Max(1, course.Inside) && Math.Abs(course.Imported - renewal.Totals.Imported) <= tolerance * course.Imported;
    }, iter: 60);

    [Fact]
    public void An_epidemic_that_uses_people_up_is_nearly_the_same_in_both() => new[] { 0.9, 1.3, 2, 3 }.Should().OnlyContain(r => Near(r));

    [Fact]
    public void The_mean_of_the_branching_process_is_what_the_compartments_come_to() => Large.Where(s => s.ReproductionUnderScreening < 0.75).Sample(settings =>
    {
        var course = CompartmentModel.Run(settings with { InfectiousAtStart = 10, Imports = 0, Days = 3000 });
        var branching = new OffspringProcess(settings.ReproductionUnderScreening, 0.2).MeanSize(10).Value!.Value;

        // At most 100 of 1e13 are used up; after 3,000 days less than 1e-9 of the cases are still to come.
        return Math.Abs(course.Infections + 10 - branching) <= 1e-8 * branching;
    }, iter: 30);

    [Fact]
    public void The_mean_of_the_branching_process_is_the_steady_state_of_the_renewal_equation() => Gen.Select(Gen.Double[0, 0.95], Gen.Double[0.1, 10]).Sample((r, imports) =>
        Math.Abs((imports * new OffspringProcess(r, 0.3).MeanSize().Value!.Value) - RenewalSpread.SteadyState(imports, r).Value!.Value) <= 1e-12 * imports / (1 - r));

    [Fact]
    public void Compartments_grow_at_the_rate_of_the_renewal_equation() => Large.Where(s => s.ReproductionUnderScreening > 1.2).Sample(settings =>
    {
        var states = CompartmentModel.Run(settings with { Imports = 0, InfectiousAtStart = 1e-6, Days = 400 }).States;
        var rate = RenewalSpread.GrowthRate(settings.ReproductionUnderScreening, Generations(settings)).Value!.Value;

        // Where the other modes of growth have died out and nobody is used up yet: 1e-4 of the rate.
        var at = states.TakeWhile(s => s.Exposed < 1e5).Count() - 1;
        return at < 90 || Math.Abs(Math.Log(states[at].Exposed / states[at - 1].Exposed) - rate) <= 1e-4 * rate;
    }, iter: 40);

    [Fact]
    public void A_large_site_has_the_sizes_of_the_branching_process() => Gen.Select(
        Gen.Double[0.1, 4], Gen.Double[-6, 5].Select(e => Math.Pow(10, e)), Gen.Bool, Gen.Double[0, 1], Gen.Int[1, 12], Gen.Int[1, 3]).Sample((r, k, poisson, caught, size, introductions) =>
    {
        var process = new OffspringProcess(r, poisson ? null : k, caught);
        return Math.Abs(SiteOutbreak.AtLeast(process, 1_000_000_000, size, introductions) - process.AtLeast(size, introductions)) <= 1e-6;
    });

    [Fact]
    public void The_profile_of_a_window_keeps_its_mean_and_its_length()
    {
        var course = InfectionCourse.Windows(new InfectionWindows(0, 1, 3, 10), 1);
        RenewalSpread.ByDay(course).Should().HaveCount(11).And.Equal(new[] { 0, 0, 0.5, 1, 1, 1, 1, 1, 1, 0.5, 0 }, (a, b) => Math.Abs(a - b) < 1e-12);
        RenewalSpread.ByDay(InfectionCourse.Windows(InfectionWindows.Same(0), 1)).Should().BeEmpty();
        Gen.Select(Gen.Double[1, 9], Gen.Double[0.01, 20]).Sample((from, length) =>
        {
            var daily = RenewalSpread.ByDay(InfectionCourse.Windows(new InfectionWindows(0, 1, from, from + length), 1));
            return Math.Abs(daily.Sum() - length) <= 1e-10 && Math.Abs(daily.Select((w, j) => w * (j + 1)).Sum() - (length * (from + (length / 2)))) <= 1e-9 * length * 30;
        });
    }

    [Theory]
    [InlineData(0.4)]
    [InlineData(0.02)]
    [InlineData(1.5)]
    public void People_who_isolate_with_symptoms_pass_less_on_and_earlier(double spread)
    {
        var plain = InfectionCourse.Windows(new InfectionWindows(0, 1, 2.3, 12.7), 1);
        var ill = plain with { Symptoms = new SymptomOnset(0.6, 5, spread, 1) };
        var (daily, all) = (RenewalSpread.ByDay(ill), RenewalSpread.ByDay(plain));
        daily.Zip(all).Should().OnlyContain(pair => pair.First <= pair.Second + 1e-12);
        const double Step = 10.4 / 200_000;
        daily.Sum().Should().BeApproximately(Enumerable.Range(0, 200_000).Sum(i => Step * ill.NotIsolatedBySymptoms(2.3 + ((i + 0.5) * Step))), 1e-6, "the same by the midpoint rule");
    }

    /// <summary>Chance of being infectious by cycles since infection, from the compartments themselves: one import and nobody else infected.</summary>
    private static ImmutableArray<double> Generations(CompartmentSettings settings)
    {
        var one = CompartmentModel.Run(settings with { Reproduction = 0, InfectiousAtStart = 0, Imports = 1, ImportEveryDays = 400, Days = 1200 });
        var first = 400 * settings.CyclesPerDay;
        return [.. one.States.Skip(first).Take(first).Select(state => state.Infectious)];
    }

    private static bool Near(double r)
    {
        var settings = new CompartmentSettings
        {
            Uninfected = 5000, InfectiousAtStart = 0, Days = 200, Reproduction = r, DaysToInfectious = 3, DaysToRecovery = 14, SymptomShare = 0.3, Imports = 0.01, ImportEveryDays = 1 / 3.0,
            Contacts = ContactPool.Everybody,
        };
        var course = CompartmentModel.Run(settings);
        var renewal = RenewalSpread.Totals(5000, 0.01, r, Generations(settings).AsSpan(), 600);

        // The infections of a cycle are proportional to its force in one and 1 - exp in the other, half the force apart: 0.2 % here.
        return Math.Abs(course.Inside - renewal.Inside) <= 3e-3 * course.Inside;
    }
}
