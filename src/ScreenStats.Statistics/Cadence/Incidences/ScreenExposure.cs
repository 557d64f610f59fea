using System.Runtime.Intrinsics;
using MathNet.Numerics.Integration;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Courses.Quadrature;

namespace ScreenStats.Statistics.Cadence.Incidences;

/// <summary>Days' worth of infections that a screen finds, on average, by how screens follow each other.</summary>
/// <remarks>
/// <para>With infections at a rate λ, the infection that a screen meets has any age x with density λ. The screen finds it with chance p(x) if symptoms
/// have not isolated the person, Q(x), and no earlier screen found it, U(x). A screen is a person's first with chance f (then U = 1), else the screen
/// before was g days earlier with the share w_g of the gaps:
/// U(x) = f + (1 - f) (Σ_(g &gt; x) w_g + Σ_(g ≤ x) w_g (1 - p(x - g)) U(x - g)).
/// The days' worth is the integral of p Q U. Gaps are whole days, so that only ages a whole number of days apart hang together: the integral over
/// the part of the day is taken by Gauss-Legendre nodes between the knots of the course, the sum over days is exact.</para>
/// </remarks>
internal sealed class ScreenExposure
{
    private static readonly GaussLegendreRule Rule = new(0, 1, 6);

    private readonly InfectionCourse course;
    private readonly GapShares gaps;
    private readonly PersonChances people;
    private readonly double[][] knots;
    private readonly double[][] missed;
    private readonly double[] notIsolated;
    private readonly double[] unfound;
    private readonly int days;

    /// <summary>Prepares the sum over days.</summary>
    /// <param name="course">The course; it can be detected at some age.</param>
    /// <param name="rules">How misses repeat, and how often a positive screen is acted upon.</param>
    /// <param name="gaps">The gaps, those from <see cref="Days"/> of the course on together.</param>
    public ScreenExposure(InfectionCourse course, ScreeningRules rules, GapShares gaps)
    {
        (this.course, this.gaps, days) = (course, gaps, Days(course));
        people = new PersonChances(rules.MissCorrelation);
        knots = Array.ConvertAll(course.Detection.Values, people.Of);
        foreach (var knot in knots)
            for (var level = 0; level < knot.Length; level++) knot[level] *= rules.FollowThrough;
        missed = [.. Enumerable.Range(0, days).Select(_ => new double[people.Count])];
        (notIsolated, unfound) = (new double[days], new double[people.Count]);
    }

    /// <summary>The days of a course, each begun one counted.</summary>
    public static int Days(InfectionCourse course) => (int)Math.Ceiling(course.DetectableTo) + 1;

    /// <summary>The days' worth of a screen.</summary>
    /// <param name="firstShare">The chance that a screen is a person's first, in [0, 1].</param>
    /// <returns>The integral of p Q U, in days.</returns>
    public double Of(double firstShare)
    {
        var steps = course.Symptoms is not { LogSpread: > 0 }
            && Enumerable.Range(0, knots.Length - 1).All(piece => course.Detection.IsFlat(piece) || course.Detection.Ages[piece] == course.Detection.Ages[piece + 1]);
        IEnumerable<double> breaks = course.Symptoms is { } symptoms ? [.. course.Detection.Ages, symptoms.MedianDays] : course.Detection.Ages;
        double[] cuts = [.. breaks.Select(age => age - Math.Floor(age)).Append(0).Append(1).Distinct().Order()];
        var total = 0.0;
        for (var k = 0; k + 1 < cuts.Length; k++)
        {
            var (low, width) = (cuts[k], cuts[k + 1] - cuts[k]);
            if (steps) total += width * AtPart(low + (width / 2), firstShare);
            else for (var node = 0; node < Rule.Order; node++) total += width * Rule.GetWeight(node) * AtPart(low + (width * Rule.GetAbscissa(node)), firstShare);
        }

        return total;
    }

    /// <summary>The sum over ages that are a part of a day more than whole days.</summary>
    private double AtPart(double part, double firstShare)
    {
        var ages = course.Detection;
        var total = 0.0;
        for (var day = 0; day < days; day++)
        {
            var age = day + part;
            var piece = ages.Piece(age);
            var within = piece >= 0 && piece < knots.Length - 1;
            notIsolated[day] = within ? course.NotIsolatedBySymptoms(age) : 1;
            Unfound(day, firstShare);
            var own = missed[day];
            if (piece >= knots.Length - 1) break;
            if (!within)
            {
                unfound.CopyTo(own, 0);
                continue;
            }

            var (before, after) = (knots[piece], knots[piece + 1]);
            var share = (age - ages.Ages[piece]) / (ages.Ages[piece + 1] - ages.Ages[piece]);
            var found = 0.0;
            for (var level = 0; level < own.Length; level++)
            {
                var chance = before[level] + (share * (after[level] - before[level]));
                found += people.Weights[level] * chance * unfound[level];
                own[level] = (1 - chance) * unfound[level];
            }

            total += found * notIsolated[day];
        }

        return total;
    }

    /// <summary>U on a day, for each kind of person, from the screens missed before.</summary>
    private void Unfound(int day, double firstShare)
    {
        // Before it is detectable nothing was found, and where all screens are first ones nothing came before.
        if (firstShare == 1 || day < course.DetectableFrom - 1)
        {
            Array.Fill(unfound, 1);
            return;
        }

        Array.Fill(unfound, firstShare + ((1 - firstShare) * gaps.Longer(day)));
        foreach (var (length, share) in gaps.UpTo(day))
        {
            var (weight, earlier) = ((1 - firstShare) * share, missed[day - length]);
            for (var level = 0; level < unfound.Length; level += Vector256<double>.Count)
            {
                ref var sum = ref unfound[level];
                (Vector256.LoadUnsafe(ref sum) + (weight * Vector256.LoadUnsafe(ref earlier[level]))).StoreUnsafe(ref sum);
            }
        }
    }
}
