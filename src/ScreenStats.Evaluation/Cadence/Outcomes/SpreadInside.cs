using ScreenStats.Evaluation.Cadence.Courses;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Statistics.Cadence.Spread;

namespace ScreenStats.Evaluation.Cadence.Outcomes;

/// <summary>How many infections come under each option: what is brought in stays, what spreads inside shrinks as the infectious time does.</summary>
/// <remarks>
/// In the data the incidence is what screening as it was done left. With the share b brought in, a case then caused R = 1 - b more (a level that holds itself);
/// under another option it causes R (1 - removed) / (1 - removed as done). A reproduction without screening that is stated takes the place of that. The days looked at
/// begin with the infections of the data still passing on. Who is infected is immune for the days stated, D. Then those infected in the D days before are immune at the
/// beginning, the same under every option, and return day by day; since the incidence and R were measured among them, imports and R among people none of whom is immune
/// are N / e ln(1 + e / S) times what was measured, e = incidence x N, S = N - D e but at least 5 % of N (<see cref="ImmuneHistory"/>): what was done then holds its level,
/// however many days are looked at. Where D is not stated nobody is infected twice and nobody is immune at the beginning.
/// </remarks>
/// <param name="people">People at work.</param>
/// <param name="days">Days looked at.</param>
/// <param name="done">Place, among the options, of what was done; -1 where that is not known.</param>
/// <param name="none">Which options are no screening.</param>
internal sealed class SpreadInside(long people, int days, int done, bool[] none)
{
    private const double Least = 1e-9;

    /// <summary>Infections under each option, and last without any screening.</summary>
    public Infections[] Of(CadenceBasis basis, ParameterSet at, CourseFigures figures, double incidence, double[] byDay)
    {
        var count = figures.Detection.Length;
        var all = new Infections[count + 1];
        var without = figures.RemovedBySymptoms;
        var knows = figures.Removed.Length > 0;
        var (broughtIn, reproduction) = Chain(basis, at, figures);
        if (byDay.Sum() <= 0) reproduction = 0;
        // A draw below a day is one day: who is infected is so for the day.
        double? immunity = at[Parameter.ImmunityDays] is { } immune ? Math.Clamp(immune, 1, RenewalSpread.MostDays) : null;
        var history = ImmuneHistory.Of(people, incidence * people, immunity);
        var imports = broughtIn * history.EarlierPerDay;
        for (var index = 0; index <= count; index++)
        {
            if (index < count && none[index]) continue;
            var removed = !knows || index == count ? without : figures.Removed[index];
            var each = without < 1 ? reproduction * (1 - removed) / (1 - without) : 0;
            var expected = RenewalSpread.Totals(people, imports * history.Scale, each * history.Scale, each > 0 ? byDay : [], days, history.EarlierPerDay, immunity, earlierImmune: true);
            all[index] = new Infections(expected.Infections, imports * days, Math.Min(each, people - 1));
        }

        for (var index = 0; index < count; index++)
        {
            if (none[index]) all[index] = all[count];
        }

        return all;
    }

    /// <summary>Infections that one case causes inside where nobody is screened and symptoms keep people away as they do.</summary>
    public double WithoutScreening(CadenceBasis basis, ParameterSet at, CourseFigures figures) => Math.Min(Chain(basis, at, figures).Reproduction, people - 1);

    private (double BroughtIn, double Reproduction) Chain(CadenceBasis basis, ParameterSet at, CourseFigures figures)
    {
        var without = figures.RemovedBySymptoms;
        var now = done >= 0 && figures.Removed.Length > 0 ? figures.Removed[done] : without;
        return basis switch
        {
            CadenceBasis.AllBroughtIn => (1.0, 0.0),
            CadenceBasis.AllInside => (0.0, FromNow(1, now, without)),
            _ => Stated(at, now, without),
        };
    }

    private static (double BroughtIn, double Reproduction) Stated(ParameterSet at, double now, double without)
    {
        if (at[Parameter.Reproduction] is not { } reproduction) return (at.Known(Parameter.BroughtIn), FromNow(1 - at.Known(Parameter.BroughtIn), now, without));
        var today = without < 1 ? reproduction * (1 - now) / (1 - without) : 0;
        return (at[Parameter.BroughtIn] ?? Math.Clamp(1 - today, 0, 1), reproduction);
    }

    private static double FromNow(double today, double now, double without) => today * (1 - without) / Math.Max(1 - now, Least);
}
