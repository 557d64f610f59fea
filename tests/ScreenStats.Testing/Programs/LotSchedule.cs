namespace ScreenStats.Testing.Programs;

/// <summary>Which lots a site uses on which day, and how much of each.</summary>
/// <remarks>
/// Lots arrive one after another and are used over a span of their own; each site gets about two in three of them, some more of one than of another.
/// A site that would have none on a day uses the one whose span is nearest.
/// </remarks>
internal sealed class LotSchedule
{
    private readonly (int[] Lots, double[] Upto)[,] inUse;

    public LotSchedule(DrawnPlan plan, RandomNumbers random)
    {
        var days = 7 * plan.Weeks;
        inUse = new (int[], double[])[plan.Sites, days];
        var span = Math.Min(1, plan.LotsAtOnce / plan.Lots) * days;
        var middles = new double[plan.Lots];
        var spans = new double[plan.Lots];
        var size = new double[plan.Lots];
        for (var lot = 0; lot < plan.Lots; lot++)
        {
            middles[lot] = (lot + random.Next()) / plan.Lots * days;
            spans[lot] = span * (0.5 + random.Next());
            size[lot] = random.Logarithmic(0.4, 2.5);
        }

        for (var site = 0; site < plan.Sites; site++)
        {
            var weights = new double[plan.Lots];
            for (var lot = 0; lot < plan.Lots; lot++) weights[lot] = random.Next() < 2.0 / 3 ? size[lot] * (0.5 + random.Next()) : 0;
            for (var day = 0; day < days; day++)
            {
                var today = Enumerable.Range(0, plan.Lots).Where(lot => weights[lot] > 0 && Math.Abs(day - middles[lot]) <= spans[lot] / 2).ToArray();
                if (today.Length == 0) today = [Enumerable.Range(0, plan.Lots).MinBy(lot => Math.Abs(day - middles[lot]) + (weights[lot] > 0 ? 0 : days))];
                var upto = new double[today.Length];
                double sum = 0;
                for (var i = 0; i < today.Length; i++) upto[i] = sum += Math.Max(weights[today[i]], 0.01);
                for (var i = 0; i < today.Length; i++) upto[i] /= sum;
                inUse[site, day] = (today, upto);
            }
        }
    }

    /// <summary>The lot of one run.</summary>
    public int Lot(int site, int day, RandomNumbers random)
    {
        var (lots, upto) = inUse[site, day];
        if (lots.Length == 1) return lots[0];
        var at = random.Next();
        var i = 0;
        while (i < lots.Length - 1 && at >= upto[i]) i++;
        return lots[i];
    }

    /// <summary>The share of a site's runs on a day that is a lot's.</summary>
    public double Share(int site, int day, int lot)
    {
        var (lots, upto) = inUse[site, day];
        var i = Array.IndexOf(lots, lot);
        return i < 0 ? 0 : upto[i] - (i == 0 ? 0 : upto[i - 1]);
    }
}
