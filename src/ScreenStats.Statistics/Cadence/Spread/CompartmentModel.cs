using System.Collections.Immutable;

namespace ScreenStats.Statistics.Cadence.Spread;

/// <summary>
/// Spread at a workplace with screening, false positives and their return to work, by the mean number of people in each state, cycle by cycle.
/// </summary>
/// <remarks>
/// <para>By cycle, with U uninfected, E exposed, A infectious without symptoms, S symptomatic, R recovered, D dead, FP and TP isolated positives, N the
/// pool of contacts, X imports of the cycle and rates beta = R0 (rho + sigma), theta, sigma, rho, delta, mu and tau (screens a cycle):</para>
/// <para>U' = U - beta U A/N + mu FP - tau (1 - Sp) U(t-1) - X; E' = (1 - theta) E + beta U A/N + X; A' = (1 - sigma - rho) A + theta E - tau Se A(t-1);
/// FP' = (1 - mu) FP + tau (1 - Sp) U(t-1); TP' = (1 - sigma - rho) TP + tau Se A(t-1); S' = (1 - rho - delta) S + sigma (TP + A);
/// R' = R + rho (TP + A + S); D' = D + delta S. In the first cycle nobody has been screened yet.</para>
/// <para>Guard: no more can leave a state than are in it. Where the published equations would bring U or A below 0 they set it to 0 and let the flows
/// go on, so that imports are added though nobody is left and infections outnumber people; here infections, then false positives, then imports are
/// cut to what is left, and so are the found. Until that first happens the two are the same. People are never made or lost: a person infected outside is one
/// of the uninfected, so imports move from U to E and the sum of all states stays what it was.</para>
/// <para>A mean: it neither dies out by chance nor has outbreaks; see <see cref="OffspringProcess"/>. Recovered people are neither screened nor, unless chosen,
/// part of the contacts.</para>
/// <para>Source: Paltiel AD, Zheng A, Walensky RP, JAMA Netw Open 2020;3(7):e2016818 (the equations from memory, confirmed by their results).</para>
/// </remarks>
public static class CompartmentModel
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "compartment-model";

    /// <summary>Runs the model.</summary>
    /// <param name="settings">The workplace, the infection and the screening.</param>
    /// <returns>All states and what they add up to.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A setting outside its domain.</exception>
    public static CompartmentCourse Run(CompartmentSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        settings.Check();
        var (theta, sigma, rho, delta) = (settings.Onset, settings.Symptoms, settings.Recovery, settings.Fatality);
        var (beta, mu, tau) = (settings.ContactRate, settings.Return, settings.Screening);
        var (sensitivity, falsePositive) = (settings.Sensitivity, 1 - settings.Specificity);
        var every = settings.ImportEveryCycles;

        var now = new CompartmentState(settings.Uninfected, 0, settings.InfectiousAtStart, 0, 0, 0, 0, 0);
        var states = ImmutableArray.CreateBuilder<CompartmentState>(settings.Cycles + 1);
        states.Add(now);
        double uninfectedBefore = 0, infectiousBefore = 0;
        double imported = 0, inside = 0, refused = 0, screens = 0, alarms = 0, found = 0;
        for (var cycle = 0; cycle < settings.Cycles; cycle++)
        {
            screens += tau * now.Circulating;
            var contacts = settings.Contacts switch
            {
                ContactPool.Circulating => now.Circulating,
                ContactPool.CirculatingAndRecovered => now.Circulating + now.Recovered,
                _ => now.People,
            };
            var left = now.Uninfected + (mu * now.FalsePositives);
            var infections = contacts > 0 ? Take(beta * now.Uninfected * (now.Infectious / contacts), ref left) : 0;
            var falseAlarms = Take(uninfectedBefore * tau * falsePositive, ref left);
            var due = (cycle + 1) % every == 0 ? settings.Imports : 0;
            var imports = Take(due, ref left);
            var infectious = (now.Infectious * (1 - sigma - rho)) + (theta * now.Exposed);
            var foundNow = Take(infectiousBefore * tau * sensitivity, ref infectious);

            (uninfectedBefore, infectiousBefore) = (now.Uninfected, now.Infectious);
            now = new CompartmentState(
                left,
                (now.Exposed * (1 - theta)) + infections + imports,
                infectious,
                (now.FalsePositives * (1 - mu)) + falseAlarms,
                (now.TruePositives * (1 - sigma - rho)) + foundNow,
                (now.Symptomatic * (1 - rho - delta)) + (sigma * (now.TruePositives + now.Infectious)),
                now.Recovered + (rho * (now.TruePositives + now.Infectious + now.Symptomatic)),
                now.Died + (delta * now.Symptomatic));
            states.Add(now);
            inside += infections;
            imported += imports;
            refused += due - imports;
            alarms += falseAlarms;
            found += foundNow;
        }

        return new CompartmentCourse(settings, states.MoveToImmutable(), imported, inside, refused, screens, alarms, found);
    }

    /// <summary>Takes so many, or all that are left.</summary>
    private static double Take(double wanted, ref double left)
    {
        var taken = Math.Min(wanted, left);
        left -= taken;
        return taken;
    }
}
