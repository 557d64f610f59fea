using ScreenStats.Statistics.Monitoring.Scans;

namespace ScreenStats.Statistics.Cadence.Courses.ViralLoads;

/// <summary>One schedule at some places of the infection within it, evenly spread; under observed gaps each place draws its gaps.</summary>
internal sealed class SomePhases
{
    private readonly ScreeningSchedule schedule;
    private readonly double[] found;
    private readonly double[] taken;
    private readonly double delay;
    private readonly double isolation;
    private readonly int phases;
    private readonly ulong seed;
    private readonly double[] gapDays;
    private readonly double[] gapsBy;
    private readonly double[] daysBy;

    public SomePhases(ScreeningSchedule schedule, ScreeningRules rules, ViralLoadCourses courses, int phases, ulong seed, int place)
    {
        (this.schedule, this.phases, delay, isolation) = (schedule, phases, rules.DaysToIsolation, rules.IsolationDays ?? 0);
        this.seed = unchecked(seed + (0xD1B54A32D192ED03UL * (ulong)(place + 1)));
        var chain = MissChain.Of(schedule, rules, courses.SensitivityAboveLimit);
        var shortest = schedule.DuePerDay <= 0 ? double.MaxValue
            : !schedule.Gaps.IsEmpty ? schedule.Gaps[0].Days : schedule.PeriodDays / schedule.At.Length;
        found = chain.AllFound((int)Math.Min((courses.LongestDetectable / shortest) + schedule.At.Length + 2, 1e5));
        taken = chain.AllTaken();
        gapDays = [.. schedule.Gaps.Select(gap => (double)gap.Days)];
        (gapsBy, daysBy) = (new double[gapDays.Length], new double[gapDays.Length]);
        var (gaps, days) = (0.0, 0.0);
        for (var i = 0; i < gapDays.Length; i++)
        {
            gapsBy[i] = gaps += schedule.Gaps[i].Count;
            daysBy[i] = days += schedule.Gaps[i].Count * gapDays[i];
        }
    }

    public PersonYield Of(in Illness illness, double beginning, int person)
    {
        if (!(illness.DetectableTo > illness.DetectableFrom) || schedule.DuePerDay <= 0) return default;
        var sums = new Sums(illness, delay, isolation);
        if (gapDays.Length > 0) Drawn(ref sums, beginning, person);
        else if (schedule.At.Length == 1) Regular(ref sums, beginning);
        else Pattern(ref sums, beginning);
        return sums.Mean(phases);
    }

    private void Regular(ref Sums sums, double beginning)
    {
        var every = schedule.PeriodDays;
        for (var phase = 0; phase < phases; phase++)
        {
            var age = sums.From + ((phase + beginning) * every / phases);
            for (var k = 0; age < sums.To && k < found.Length; k++, age += every) sums.Screen(age, found[k], taken[k]);
        }
    }

    private void Pattern(ref Sums sums, double beginning)
    {
        var (at, period) = (schedule.At, schedule.PeriodDays);
        var next = 0;
        for (var phase = 0; phase < phases; phase++)
        {
            // The window begins so many days into the pattern, and the next screen of it comes first.
            var place = (phase + beginning) * period / phases;
            while (next < at.Length && at[next] < place) next++;
            var begin = sums.From - place;
            for (int k = 0, screen = next, turn = 0; k < found.Length; k++, screen++)
            {
                if (screen == at.Length) (screen, turn) = (0, turn + 1);
                var age = begin + at[screen] + (turn * period);
                if (age >= sums.To) break;
                sums.Screen(age, found[k], taken[k]);
            }
        }
    }

    private void Drawn(ref Sums sums, double beginning, int person)
    {
        var stream = new ReplicateStream(seed, person);
        for (var phase = 0; phase < phases; phase++)
        {
            // The place lies in a gap with a chance in proportion to its length, and anywhere within it.
            var place = (phase + beginning) / phases * daysBy[^1];
            var gap = Holding(daysBy, place);
            var age = sums.From + (Uniform(ref stream) * gapDays[gap]);
            for (var k = 0; age < sums.To && k < found.Length; k++)
            {
                sums.Screen(age, found[k], taken[k]);
                age += gapDays[Holding(gapsBy, Uniform(ref stream) * gapsBy[^1])];
            }
        }
    }

    private static double Uniform(ref ReplicateStream stream) => ((stream.Next() >> 11) + 0.5) * (1.0 / (1UL << 53));

    private static int Holding(double[] sums, double value)
    {
        var at = Array.BinarySearch(sums, value);
        return Math.Min(at < 0 ? ~at : at + 1, sums.Length - 1);
    }

    private struct Sums
    {
        private readonly Illness illness;
        private readonly double delay;
        private readonly double isolation;
        private readonly double atOnset;
        private readonly double screened;
        private double foundSum;
        private double screens;
        private double alone;
        private double beyond;
        private double before;
        private double beforeOnset;
        private double earlier;

        public Sums(in Illness illness, double delay, double isolation)
        {
            (this.illness, this.delay, this.isolation) = (illness, delay, isolation);
            (From, To) = (illness.DetectableFrom, illness.DetectableTo);
            atOnset = illness.Isolates ? illness.Tail(illness.Symptoms) : 0;
            screened = illness.Isolates ? illness.Symptoms : double.MaxValue;
        }

        public double From { get; }

        public double To { get; }

        public void Screen(double age, double finds, double takes)
        {
            var isolated = age + delay;
            var tail = illness.Tail(isolated);
            alone += finds * tail;
            beyond += finds * Math.Max(tail - atOnset, 0);
            if (isolated < illness.InfectiousFrom) before += finds;
            if (isolated < illness.Symptoms) beforeOnset += finds;
            if (illness.Isolates) earlier += finds * Math.Clamp(illness.Symptoms - isolated, 0, isolation);
            if (age >= screened) return;
            foundSum += finds;
            screens += takes;
        }

        public readonly PersonYield Mean(int phases) => new(
            foundSum / phases, screens / phases, alone / phases, beyond / phases, before / phases, double.IsFinite(illness.Symptoms) ? beforeOnset / phases : 0, earlier / phases);
    }
}
