using ScreenStats.Counting.Cubes;

namespace ScreenStats.Testing.Programs;

/// <summary>Sums over people of runs and events, for the program, each site and each lot.</summary>
internal sealed class PersonTotals(int sites, int lots)
{
    private static readonly PersonMeasure[] Measures = Enum.GetValues<PersonMeasure>();

    private readonly Sums program = new(1);
    private readonly Sums bySite = new(sites);
    private readonly Sums byLot = new(lots);
    private readonly long[,,] own = new long[lots, Measures.Length, 2];
    private readonly List<int> touched = [];

    /// <summary>Counts one run of the person at hand.</summary>
    public void Count(int lot, Outcome outcome, FollowUp followUp)
    {
        if (own[lot, (int)PersonMeasure.InvalidRuns, 0] == 0) touched.Add(lot);
        var unusable = outcome is Outcome.Inconclusive or Outcome.Invalid;
        Count(lot, PersonMeasure.InvalidRuns, unusable);
        if (unusable) return;
        var positive = outcome == Outcome.Positive;
        Count(lot, PersonMeasure.Positivity, positive);
        Count(lot, PersonMeasure.Refuted, positive && followUp == FollowUp.Refuted);
        if (positive && followUp is FollowUp.Confirmed or FollowUp.Refuted) Count(lot, PersonMeasure.PredictiveValue, followUp == FollowUp.Confirmed);
    }

    /// <summary>Adds the person at hand, who was tested at one site, and begins the next.</summary>
    public void Close(int site)
    {
        foreach (var measure in Measures)
        {
            long trials = 0, events = 0;
            foreach (var lot in touched)
            {
                var (n, x) = (own[lot, (int)measure, 0], own[lot, (int)measure, 1]);
                byLot.Add(lot, measure, n, x);
                (trials, events) = (trials + n, events + x);
                own[lot, (int)measure, 0] = own[lot, (int)measure, 1] = 0;
            }

            bySite.Add(site, measure, trials, events);
            program.Add(0, measure, trials, events);
        }

        touched.Clear();
    }

    /// <summary>The cells of the cube.</summary>
    public IEnumerable<PersonCell> Cells(IReadOnlyList<string> siteNames, IReadOnlyList<string> lotNames) =>
        program.Cells(PersonScope.Program, [""]).Concat(bySite.Cells(PersonScope.Site, siteNames)).Concat(byLot.Cells(PersonScope.Lot, lotNames));

    private void Count(int lot, PersonMeasure measure, bool happened)
    {
        own[lot, (int)measure, 0]++;
        if (happened) own[lot, (int)measure, 1]++;
    }

    private sealed class Sums(int levels)
    {
        private readonly long[,,] sums = new long[levels, Measures.Length, 7];

        public void Add(int level, PersonMeasure measure, long trials, long events)
        {
            if (trials == 0) return;
            ReadOnlySpan<long> more = [1, events > 0 ? 1 : 0, trials, events, trials * trials, trials * events, events * events];
            for (var i = 0; i < more.Length; i++) sums[level, (int)measure, i] += more[i];
        }

        public IEnumerable<PersonCell> Cells(PersonScope scope, IReadOnlyList<string> names)
        {
            for (var level = 0; level < levels; level++)
            {
                foreach (var measure in Measures)
                {
                    long Of(int which) => sums[level, (int)measure, which];
                    if (Of(0) > 0) yield return new PersonCell(scope, names[level], null, measure, Of(0), Of(1), Of(2), Of(3), Of(4), Of(5), Of(6));
                }
            }
        }
    }
}
