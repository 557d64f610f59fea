using System.Globalization;
using ScreenStats.Statistics.Funnels;
using ScreenStats.Statistics.Heterogeneity;
using ScreenStats.Statistics.Monitoring.Lots;
using ScreenStats.Statistics.Regression;
using ScreenStats.Statistics.Regression.Intercepts;
using ScreenStats.Statistics.Regression.Ranks;

namespace ScreenStats.Statistics.Tests.Studies;

/// <summary>
/// Sites compared where the truth is known: how often shrunken limits and intervals of ranks hold it, and how often the funnel flags a site that is one of
/// many alike. 40 programs a line in every run, held against tests/reference/studies/site-study.csv; 2,000 with SCREENSTATS_FULL_STUDIES=1, which writes it.
/// </summary>
public sealed class SiteStudyTests
{
    private const string Columns = "study,programs,sites,truth,method,measure,count,of,share";
    private const int Few = 40;
    private const int Many = 2000;
    private static readonly bool IsFull = Environment.GetEnvironmentVariable("SCREENSTATS_FULL_STUDIES") == "1";
    private static readonly string FilePath = RepositoryRoot.Combine("tests", "reference", "studies", "site-study.csv");
    private static readonly Lock Door = new();

    [Theory]
    [InlineData(5, 0.4)]
    [InlineData(5, 0.8)]
    [InlineData(12, 0.4)]
    [InlineData(12, 0.8)]
    [InlineData(50, 0.4)]
    [InlineData(50, 0.8)]
    public void Shrunken_adjusted_rates_and_intervals_of_ranks_hold_the_truth(int sites, double spread) => Settle(FormattableString.Invariant($"random-intercept-{sites}-{spread}"), programs =>
    {
        var tally = new SortedDictionary<string, (long Count, long Of)>(StringComparer.Ordinal);
        for (var program = 0; program < programs; program++)
        {
            var draw = new StudyDraw(program + 1);
            var effects = Enumerable.Range(0, sites).Select(_ => spread * draw.Normal()).ToArray();
            var rows = new List<BinomialRow>();
            for (var site = 0; site < sites; site++)
            {
                // Sites differ in size and in when they tested; the second period is a wave.
                var (size, late) = (300 * Math.Exp(0.8 * draw.Normal()), draw.Uniform());
                foreach (var (period, share) in new[] { (0, 1 - late), (1, late) })
                {
                    var trials = (long)Math.Ceiling(2 * size * share);
                    rows.Add(new BinomialRow(draw.Binomial(trials, Rate(-4 + (1.2 * period) + effects[site])), trials, [period], site));
                }
            }

            var fit = RandomInterceptLogistic.Fit(rows);
            Add(tally, "no spread or no fit", fit.Reason is not null);
            if (fit.Reason is not null) continue;
            var wave = rows.Where(row => row.Terms[0] == 1).Sum(row => row.Trials) / rows.Sum(row => row.Trials);
            var ranks = Ranking.OfEffects([.. fit.Effects.Select(effect => (effect.Mean!.Value, effect.StandardDeviation!.Value))], new RankOptions { Replicates = 1000 });
            for (var site = 0; site < sites; site++)
            {
                var truth = ((1 - wave) * Rate(-4 + effects[site])) + (wave * Rate(-2.8 + effects[site]));
                var rate = fit.Effects[site].Rate;
                Add(tally, "rate held at 0.95", rate.Lower <= truth && truth <= rate.Upper);
                var rank = 1 + effects.Count(effect => effect > effects[site]);
                Add(tally, "rank held at 0.95", ranks[site].Lowest <= rank && rank <= ranks[site].Highest);
            }

            var highest = Array.IndexOf(effects, effects.Max());
            var raw = rows.GroupBy(row => row.Group).MaxBy(group => group.Sum(row => row.Events) / group.Sum(row => row.Trials))!.Key;
            Add(tally, "highest found by raw rate", raw == highest);
            Add(tally, "highest found by adjusted rate", fit.Effects.MaxBy(effect => effect.Rate.Value)!.Group == highest);
        }

        tally["rate held at 0.95"].Should().Match<(long Count, long Of)>(held => held.Count >= 0.88 * held.Of);
        return Lines(tally, programs, sites, FormattableString.Invariant($"logit spread {spread}"), "random-intercept logistic");
    });

    [Theory]
    [InlineData(5)]
    [InlineData(12)]
    [InlineData(50)]
    public void Rates_of_the_beta_binomial_hold_the_truth(int sites) => Settle($"beta-binomial-{sites}", programs =>
    {
        var tally = new SortedDictionary<string, (long Count, long Of)>(StringComparer.Ordinal);
        for (var program = 0; program < programs; program++)
        {
            var draw = new StudyDraw(program + 1);
            var rates = Enumerable.Range(0, sites).Select(_ => draw.Beta(2, 78)).ToArray();
            LotTally[] lots = [.. rates.Select(rate =>
            {
                var trials = (long)Math.Ceiling(300 * Math.Exp(0.8 * draw.Normal()));
                return new LotTally(draw.Binomial(trials, rate), trials);
            })];
            var fit = BetaBinomial.MaximumLikelihood(lots);
            Add(tally, "no spread or no fit", fit.Reason is not null);
            if (fit.Reason is not null) continue;
            foreach (var (posterior, rate) in EmpiricalBayes.Of(lots, fit).Zip(rates)) Add(tally, "rate held at 0.95", posterior.Rate.Lower <= rate && rate <= posterior.Rate.Upper);
        }

        tally["rate held at 0.95"].Should().Match<(long Count, long Of)>(held => held.Count >= 0.75 * held.Of);
        return Lines(tally, programs, sites, "beta 2 78", "beta-binomial");
    });

    [Theory]
    [InlineData("none", 12)]
    [InlineData("none", 60)]
    [InlineData("multiplicative 3", 12)]
    [InlineData("multiplicative 3", 60)]
    [InlineData("additive 0.01", 12)]
    [InlineData("additive 0.01", 60)]
    public void The_funnel_flags_few_of_many_alike(string truth, int sites) => Settle($"funnel-{truth}-{sites}", programs =>
    {
        const double Target = 0.03;
        var tally = new SortedDictionary<string, (long Count, long Of)>(StringComparer.Ordinal);
        for (var program = 0; program < programs; program++)
        {
            var draw = new StudyDraw(program + 1);
            GroupCount[] groups = [.. Enumerable.Range(0, sites).Select(_ =>
            {
                var trials = (long)Math.Ceiling(600 * Math.Exp(0.9 * draw.Normal()));
                var variance = truth switch { "none" => 0, "multiplicative 3" => 2 * Target * (1 - Target) / trials, _ => 0.01 * 0.01 };
                var weight = (Target * (1 - Target) / Math.Max(variance, 1e-12)) - 1;
                return new GroupCount(draw.Binomial(trials, variance == 0 ? Target : draw.Beta(Target * weight, (1 - Target) * weight)), trials);
            })];
            foreach (var (name, options) in Rules)
            {
                foreach (var point in FunnelPlot.Of(groups, options).Points)
                {
                    Add(tally, name + ",flagged at 0.95", point.Inner is FunnelStanding.Above or FunnelStanding.Below);
                    Add(tally, name + ",flagged at 0.998", point.Outer is FunnelStanding.Above or FunnelStanding.Below);
                }
            }
        }

        if (truth == "none") tally["as chosen,flagged at 0.998"].Should().Match<(long Count, long Of)>(flagged => flagged.Count <= 0.01 * flagged.Of);
        return [.. tally.Select(entry => Line(programs, sites, truth, entry.Key, entry.Value))];
    });

    private static readonly (string Name, FunnelOptions Options)[] Rules =
    [
        ("as chosen", new FunnelOptions()), ("exact", new FunnelOptions { Model = FunnelModel.Exact }), ("multiplicative winsorised", new FunnelOptions { Model = FunnelModel.Multiplicative }),
        ("additive winsorised", new FunnelOptions { Model = FunnelModel.Additive }), ("additive plain", new FunnelOptions { Model = FunnelModel.Additive, Winsorised = 0 }),
    ];

    private static double Rate(double logit) => 1 / (1 + Math.Exp(-logit));

    private static void Add(SortedDictionary<string, (long Count, long Of)> tally, string measure, bool counts)
    {
        var (count, of) = tally.GetValueOrDefault(measure);
        tally[measure] = (count + (counts ? 1 : 0), of + 1);
    }

    private static List<string> Lines(SortedDictionary<string, (long Count, long Of)> tally, int programs, int sites, string truth, string method) =>
        [.. tally.Select(entry => Line(programs, sites, truth, method + "," + entry.Key, entry.Value))];

    private static string Line(int programs, int sites, string truth, string methodAndMeasure, (long Count, long Of) value) =>
        string.Create(CultureInfo.InvariantCulture, $"{programs},{sites},{truth},{methodAndMeasure},{value.Count},{value.Of},{(double)value.Count / value.Of:F4}");

    /// <summary>The few programs are drawn in every run and must give the committed lines; the many are drawn, and all written, in a full run.</summary>
    private static void Settle(string study, Func<int, List<string>> run)
    {
        List<string> few = [.. run(Few).Select(line => $"{study},{line}")];
        bool Own(string line) => line.StartsWith(study + ",", StringComparison.Ordinal);
        if (!IsFull)
        {
            File.ReadLines(FilePath).Where(line => Own(line) && line.StartsWith($"{study},{Few},", StringComparison.Ordinal)).Should().BeEquivalentTo(few, "the study is seeded: SCREENSTATS_FULL_STUDIES=1 writes it anew where the change is meant");
            return;
        }

        List<string> lines = [.. few, .. run(Many).Select(line => $"{study},{line}")];
        lock (Door)
        {
            var others = File.Exists(FilePath) ? File.ReadLines(FilePath).Skip(1).Where(line => !Own(line)) : [];
            File.WriteAllText(FilePath, string.Concat(others.Concat(lines).Order(StringComparer.Ordinal).Prepend(Columns).Select(line => line + "\n").ToList()));
        }
    }
}
