using System.Runtime.CompilerServices;

namespace ScreenStats.Statistics.Monitoring.Scans;

/// <summary>The search through all windows, of the real events and of simulated ones.</summary>
internal sealed class BurstSearch
{
    // Two scores that differ by rounding only are as strong.
    private const double Tolerance = 1e-9;
    private readonly BurstCell[] cells;
    private readonly int events;
    private readonly long trials;
    private readonly BurstScanOptions options;
    private readonly BurstView[] views;
    private readonly long[] before;

    public BurstSearch(BurstCell[] cells, int events, long trials, BurstScanOptions options)
    {
        (this.cells, this.events, this.trials, this.options) = (cells, events, trials, options);
        var all = new List<BurstView> { new(cells, true, true), new(cells, true, false), new(cells, false, true) };
        if (options.WholeProgram) all.Add(new BurstView(cells, false, false));
        views = [.. all];
        before = new long[cells.Length + 1];
        for (var i = 0; i < cells.Length; i++) before[i + 1] = before[i] + cells[i].Trials;
    }

    /// <summary>The strongest burst of the events as they were; null where no window has more than its share.</summary>
    public Burst? Observed()
    {
        var hit = new int[events];
        var next = 0;
        for (var cell = 0; cell < cells.Length; cell++)
        {
            for (long i = 0; i < cells[cell].Events; i++) hit[next++] = cell;
        }

        var work = new Work(events);
        Burst? best = null;
        foreach (var view in views)
        {
            Array.Fill(work.Fewest, long.MaxValue);
            var windows = new Dictionary<int, (int First, int Last)>();
            view.Fewest(Slots(view, hit, work), options.LongestDays, work.Fewest, work.Scratch, (inside, first, last) => windows[inside] = (first, last));
            foreach (var (inside, window) in windows.OrderBy(pair => pair.Value.First).ThenBy(pair => pair.Value.Last))
            {
                var inWindow = work.Fewest[inside];
                var score = LikelihoodRatioScore.Excess(inside, inWindow, events, trials);
                if (!(score > (best?.LogLikelihoodRatio ?? 0) * (1 + Tolerance))) continue;
                var (group, firstDay, _) = view.At(window.First);
                var (lot, site) = (view.Lot(group), view.Site(group));
                best = new Burst(lot, site, firstDay, view.At(window.Last).Day, inside, (double)events * inWindow / trials, inWindow, score);
            }
        }

        return best;
    }

    /// <summary>The share of simulated programs, the real one among them, with a burst at least as strong, and how many were simulated.</summary>
    public (double Chance, int Simulated) Chance(double score)
    {
        var limit = Limits(score * (1 - Tolerance));
        var atLeast = new bool[options.Replicates];
        void Simulate(int from, int to) => Parallel.For(from, to, () => new Work(events), (replicate, _, work) =>
        {
            atLeast[replicate] = Replicate(replicate, work, limit);
            return work;
        }, _ => { });
        (double, int) Of(int simulated) => ((1.0 + atLeast.Take(simulated).Count(yes => yes)) / (1.0 + simulated), simulated);

        var first = Math.Min(options.FirstReplicates, options.Replicates);
        Simulate(0, first);
        if (first > 0 && Of(first) is (> 0.2, _) nothing) return nothing;
        Simulate(first, options.Replicates);
        return Of(options.Replicates);
    }

    /// <summary>For each number of events the most trials with which a window is at least as strong; -1 where none is.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private long[] Limits(double score)
    {
        var limits = new long[events + 1];
        for (long inside = 0; inside <= events; inside++)
        {
            long low = inside - 1, high = trials - (events - inside) + 1;
            while (high - low > 1)
            {
                var middle = low + ((high - low) / 2);
                if (LikelihoodRatioScore.Excess(inside, middle, events, trials) >= score) low = middle;
                else high = middle;
            }

            limits[inside] = low < inside ? -1 : low;
        }

        return limits;
    }

    private bool Replicate(int replicate, Work work, long[] limit)
    {
        Draw(new ReplicateStream(options.Seed, replicate), work);
        Array.Fill(work.Fewest, long.MaxValue);
        foreach (var view in views) view.Fewest(Slots(view, work.Hit, work), options.LongestDays, work.Fewest, work.Scratch, null);
        for (var inside = 1; inside <= events; inside++)
        {
            if (work.Fewest[inside] <= limit[inside]) return true;
        }

        return false;
    }

    /// <summary>As many trials as there are events, each set of them with the same chance (Floyd's method), as the cells they lie in.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Draw(ReplicateStream random, Work work)
    {
        work.Drawn.Clear();
        var count = 0;
        for (var top = trials - events; top < trials; top++)
        {
            var trial = random.Below(top + 1);
            if (!work.Drawn.Add(trial)) work.Drawn.Add(trial = top);
            var cell = Array.BinarySearch(before, trial);
            work.Hit[count++] = cell >= 0 ? cell : ~cell - 1;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static ReadOnlySpan<int> Slots(BurstView view, int[] hit, Work work)
    {
        var (slots, of) = (work.Sort.Slots, view.SlotOfCell);
        for (var i = 0; i < hit.Length; i++) slots[i] = of[hit[i]];
        return work.Sort.Sort(hit.Length, view.Slots);
    }

    private sealed class Work(int events)
    {
        public int[] Hit { get; } = new int[events];

        public SlotSort Sort { get; } = new(events);

        public long[] Fewest { get; } = new long[events + 1];

        public HashSet<long> Drawn { get; } = new(events);

        public BurstView.Scratch Scratch { get; } = new(events);
    }
}
