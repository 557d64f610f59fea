namespace ScreenStats.Statistics.Cadence.Courses.ViralLoads;

/// <summary>One schedule over all places of the infection within it, by exact integrals.</summary>
internal sealed class WholePhase(FirstPositiveDensity density, double delay, double? days)
{
    public PersonYield Of(in Illness illness)
    {
        var (from, window) = (illness.DetectableFrom, illness.DetectableTo - illness.DetectableFrom);
        if (!(window > 0) || density.Found.Length == 0) return default;
        var begin = from + delay;
        var (alone, beyond) = (0.0, 0.0);
        var onset = illness.Symptoms;
        var (atOnset, sumAtOnset) = illness.Isolates ? (illness.Tail(onset), illness.TailSum(onset)) : default;

        // What a screen takes away beyond symptoms ends at their onset: B(u) - B(onset) - R(onset)(onset - u).
        var last = illness.TailSum(begin);
        var lastBeyond = illness.Isolates && begin < onset ? last - sumAtOnset - (atOnset * (onset - begin)) : 0;
        for (var k = 0; k < density.Found.Length && density.Days[k] < window; k++)
        {
            var age = begin + Math.Min(density.Days[k + 1], window);
            var next = illness.TailSum(age);
            alone += density.Found[k] * (last - next);
            last = next;
            if (illness.Isolates)
            {
                next = age < onset ? next - sumAtOnset - (atOnset * (onset - age)) : 0;
                beyond += density.Found[k] * (lastBeyond - next);
                lastBeyond = next;
            }

            if (age >= illness.InfectiousTo) break;
        }

        var screened = illness.Isolates ? Math.Min(window, onset - from) : window;
        return new PersonYield(
            density.By(density.FoundBy, density.Found, screened),
            density.By(density.TakenBy, density.Taken, screened),
            alone,
            illness.Isolates ? beyond : alone,
            density.By(density.FoundBy, density.Found, Math.Min(window, illness.InfectiousFrom - begin)),
            double.IsFinite(onset) ? density.By(density.FoundBy, density.Found, Math.Min(window, onset - begin)) : 0,
            illness.Isolates && days is { } lasting ? density.FoundSum(onset - begin, window) - density.FoundSum(onset - begin - lasting, window) : 0);
    }
}
