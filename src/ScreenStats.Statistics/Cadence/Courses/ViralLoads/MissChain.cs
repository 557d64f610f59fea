using ScreenStats.Statistics.Cadence.Courses.Quadrature;

namespace ScreenStats.Statistics.Cadence.Courses.ViralLoads;

/// <summary>The chance that the screen after k screens of one window finds the infection, and that it is taken at all, over all people.</summary>
internal sealed class MissChain
{
    private const double Nobody = 1e-15;
    private const int Longest = 100_000;

    private readonly PersonChances people;
    private readonly double[] chances;
    private readonly double[] missed;
    private readonly List<(double Found, double Taken)> screens = [];
    private readonly double participation;
    private readonly double acted;
    private readonly double taking;
    private bool over;

    private MissChain(ScreeningSchedule schedule, ScreeningRules rules, double sensitivity)
    {
        people = new PersonChances(rules.MissCorrelation);
        chances = people.Of(sensitivity);
        missed = [.. people.Weights];
        (participation, acted, taking) = (schedule.Participation, schedule.Participation * rules.FollowThrough, 1 - schedule.NeverTakePart);
    }

    public static MissChain Of(ScreeningSchedule schedule, ScreeningRules rules, double sensitivity) => new(schedule, rules, sensitivity);

    public double Found(int k) => At(k).Found;

    public double Taken(int k) => At(k).Taken;

    /// <summary>All chances to be found until nobody is left to find, or to a number of screens.</summary>
    public double[] AllFound(int most)
    {
        At(most);
        return [.. screens.Select(screen => screen.Found)];
    }

    /// <summary>As many chances to take a screen.</summary>
    public double[] AllTaken() => [.. screens.Select(screen => screen.Taken)];

    private (double Found, double Taken) At(int k)
    {
        while (!over && screens.Count <= Math.Min(k, Longest))
        {
            var (before, found) = (0.0, 0.0);
            for (var i = 0; i < missed.Length; i++)
            {
                before += missed[i];
                found += missed[i] * chances[i];
                missed[i] *= 1 - (acted * chances[i]);
            }

            over = before < Nobody;
            if (!over) screens.Add((taking * acted * found, taking * participation * before));
        }

        return k < screens.Count ? screens[k] : default;
    }
}
