#!/usr/bin/env dotnet
#:project ../src/ScreenStats/ScreenStats.csproj
#:project ../src/ScreenStats.Statistics/ScreenStats.Statistics.csproj
#:project ../src/ScreenStats.Counting/ScreenStats.Counting.csproj
#:project ../src/ScreenStats.Evaluation/ScreenStats.Evaluation.csproj
#:project ../src/ScreenStats.Records/ScreenStats.Records.csproj
#:property PublishAot=false

// A site that tested in the wave is not a bad site: raw and adjusted ranking disagree, and here we know which is true.
// Run it from the top of the checkout: dotnet run notebooks/04-a-fair-comparison.cs

using System.Globalization;
using System.Text;
using ScreenStats;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Funnels;
using ScreenStats.Statistics.Heterogeneity;
using ScreenStats.Statistics.Proportions;
using ScreenStats.Statistics.Regression;
using ScreenStats.Statistics.Regression.Intercepts;
using ScreenStats.Statistics.Regression.Ranks;
using ScreenStats.Statistics.Standardisation;

// 1. A program whose truth we set. Eight fictional sites, 24 weeks, a wave in weeks 9 to 14. A site's true odds are the week's odds times a factor of its
//    own: Gorsey Lane has the most infection (1.9), Coldmere nearly the least (0.65). But Gorsey Lane all but stopped testing in the wave, and
//    Coldmere did four fifths of its tests in it. Hatherby is small: 90 tests. Everyone is tested once, so that no test leans on another.
const int Weeks = 24;
(string Name, double Factor, int Runs, double InWave)[] sites =
[
    ("Ambry", 1, 2400, 0.25), ("Brackwater", 0.85, 2000, 0.28), ("Coldmere", 0.65, 1800, 0.8), ("Dunnock Yard", 1.15, 1500, 0.22),
    ("Elderholt", 0.75, 1300, 0.3), ("Fernside", 1.1, 900, 0.25), ("Gorsey Lane", 1.9, 2200, 0.04), ("Hatherby", 1, 90, 0.25),
];
bool IsWave(int week) => week is >= 8 and < 14;
double Rate(int week, double factor) => 1 / (1 + Math.Exp(-(IsWave(week) ? -3.1 : -5) - Math.Log(factor)));

var random = new Random(20_261_125);
var tests = new int[sites.Length, Weeks];
var positives = new int[sites.Length, Weeks];
var export = new StringBuilder("person,site,collected_at,result\n");
for (var site = 0; site < sites.Length; site++)
{
    for (var run = 0; run < sites[site].Runs; run++)
    {
        var wave = random.NextDouble() < sites[site].InWave;
        var week = wave ? 8 + random.Next(6) : random.Next(18) is var calm && calm < 8 ? calm : calm + 6;
        var positive = random.NextDouble() < Rate(week, sites[site].Factor);
        tests[site, week]++;
        if (positive) positives[site, week]++;
        var day = new DateOnly(2024, 10, 7).AddDays((7 * week) + random.Next(5));
        export.Append(CultureInfo.InvariantCulture, $"p{site}-{run},{sites[site].Name},{day:yyyy-MM-dd},{(positive ? "positive" : "negative")}\n");
    }
}

// 2. As counted, and in the funnel. The highest rate as counted is Hatherby's: three positives of 90 tests, where small sites lie by chance. The funnel
//    knows of size: it asks which sites lie farther from the program's rate than their size explains, and has nothing to say of Hatherby. It knows nothing of when they tested:
//    it points at Coldmere, above, and rightly says that something is different there. It is not the site.
int[] all = [.. Enumerable.Range(0, sites.Length)], weeks = [.. Enumerable.Range(0, Weeks)];
GroupCount[] counts = [.. all.Select(site => new GroupCount(weeks.Sum(week => positives[site, week]), weeks.Sum(week => tests[site, week])))];
var funnel = FunnelPlot.Of(counts, new FunnelOptions { Model = FunnelModel.Exact });

// 3. Direct standardisation: each site's own rate in each week, weighted as the program's weeks. It answers "what if this site had tested when all did?", and
//    needs tests of the site in every week: Hatherby has none in some, and gets no figure rather than a guess. Gorsey Lane gets one that rests on its
//    few tests in the wave: its limits are the widest of all, and say so.
long AllTests(int week) => all.Sum(site => tests[site, week]);
long AllPositives(int week) => all.Sum(site => positives[site, week]);
DirectRate[] direct = [.. all.Select(site => DirectStandardisation.Of([.. weeks.Select(week => new StandardStratum(positives[site, week], tests[site, week], AllTests(week)))]))];

// 4. Indirect: positives over those that the program's rate in each week would lead to expect. It works for small sites. Its weak spot: the program's rate in
//    the wave is to a good part Coldmere's own, so that Coldmere is held against itself and looks nearer to 1 than it is. And two ratios of
//    sites that tested at different times are not quite comparable with each other, only each with the program.
IndirectRatio[] indirect = [.. all.Select(site => IndirectStandardisation.Of([.. weeks.Select(week => new ReferenceStratum(positives[site, week], tests[site, week], AllPositives(week), AllTests(week)))]))];

// 5. Adjusted and shrunken: a logistic regression with a term for each week, and sites as draws from one normal distribution. Each is compared
//    within weeks, and a small site is drawn towards the others by as much as its counts leave open. The rank has limits too: it is often much less sure than one thinks.
var rows = all.SelectMany(site => weeks.Select(week => new BinomialRow(positives[site, week], tests[site, week], [.. weeks.Skip(1).Select(other => other == week ? 1.0 : 0)], site))).ToList();
var fit = RandomInterceptLogistic.Fit(rows);
var ranks = Ranking.OfEffects([.. fit.Effects.Select(effect => (effect.Mean!.Value, effect.StandardDeviation!.Value))]);

// 6. Side by side with the truth: the rate that each site would have, had it tested at the program's mix of weeks.
var total = counts.Sum(count => count.Trials);
double[] truth = [.. all.Select(site => weeks.Sum(week => (double)AllTests(week) / total * Rate(week, sites[site].Factor)))];
int[] RanksOf(Func<int, double> rate) => [.. all.Select(site => 1 + all.Count(other => rate(other) > rate(site)))];
var (rawRank, trueRank, adjustedRank) = (RanksOf(site => counts[site].Rate!.Value), RanksOf(site => truth[site]), RanksOf(site => fit.Effects[site].Rate.Value!.Value));
string Percent(double? value) => value is { } number ? (100 * number).ToString("0.00", CultureInfo.InvariantCulture) : "-";
Console.WriteLine("Positivity in %, sites in the order of their true rates");
Console.WriteLine("                               as counted         within limits   directly standardised    times   adjusted, shrunken               chance     true");
Console.WriteLine("site           tests  in wave  rate rank  95 % exact    of the funnel   rate (95 % limits)    expected   rate   95 % limits   rank (95 %)   highest   rate rank");
foreach (var site in all.OrderBy(site => trueRank[site]))
{
    var (raw, rate, rank) = (ProportionInterval.ClopperPearson(counts[site].Events, counts[site].Trials), fit.Effects[site].Rate, ranks[site]);
    var inWave = (double)weeks.Where(IsWave).Sum(week => tests[site, week]) / counts[site].Trials;
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
        $"{sites[site].Name,-13} {counts[site].Trials,6} {100 * inWave,5:0} %  {Percent(raw.Estimate),5} {rawRank[site],3}  {Percent(raw.Lower) + " to " + Percent(raw.Upper),-13} {Word(funnel.Points[site]),-15} {(direct[site].Rate.IsDefined ? Percent(direct[site].Rate.Value) + " (" + Percent(direct[site].Rate.Lower) + " to " + Percent(direct[site].Rate.Upper) + ")" : "-"),-20} {indirect[site].Ratio.Value,9:0.00}  {Percent(rate.Value),5}  {Percent(rate.Lower) + " to " + Percent(rate.Upper),-12}  {adjustedRank[site]} ({rank.Lowest} to {rank.Highest}) {rank.ChanceHighest,9:0.000}  {Percent(truth[site]),5} {trueRank[site],3}"));
}

static string Word(FunnelPoint point) => point.Outer is FunnelStanding.Above or FunnelStanding.Below ? $"{point.Outer} 99.8 %".ToLowerInvariant()
    : point.Inner is FunnelStanding.Above or FunnelStanding.Below ? $"{point.Inner} 95 %".ToLowerInvariant() : "within";

var (blamed, second, highest) = (Array.IndexOf(rawRank, 1), Array.IndexOf(rawRank, 2), Array.IndexOf(trueRank, 1));
var held = all.Count(site => fit.Effects[site].Rate.Lower <= truth[site] && truth[site] <= fit.Effects[site].Rate.Upper);
Console.WriteLine();
Console.WriteLine(FormattableString.Invariant($"As counted {sites[blamed].Name} leads and {sites[second].Name} follows; in truth they are {trueRank[blamed]} and {trueRank[second]} of {sites.Length}. The adjusted ranking puts {sites[Array.IndexOf(adjustedRank, 1)].Name} first; in truth it is {sites[highest].Name}."));
Console.WriteLine(FormattableString.Invariant($"{held} of {sites.Length} adjusted intervals hold the true rate. {sites[^1].Name}: {direct[^1].Rate.Reason?.Describe()}; its shrunken rate leans on the others."));
if (rawRank[highest] == 1 || adjustedRank[highest] != 1) throw new InvalidOperationException("The adjusted ranking should find the true highest site, and the raw one should not.");

// 7. The report does the same from the export alone: nobody tells it of a wave. It compares within ISO weeks and says what the raw ranking got wrong.
const string Folder = "artifacts/fair-comparison";
Directory.CreateDirectory(Folder);
File.WriteAllText(Path.Combine(Folder, "screening.csv"), export.ToString());
File.WriteAllText(Path.Combine(Folder, "program.json"), "{ \"title\": \"Eight sites and a wave (drawn, with known truth)\", \"timeZone\": \"Etc/UTC\" }\n");
var program = ScreeningProgram.Open(Folder);
var comparison = program.Read().Tally.Evaluate(program.Settings).Comparison;
Console.WriteLine();
Console.WriteLine("What the report says of it:");
foreach (var sentence in comparison.Sentences) Console.WriteLine("  " + sentence.Text);
var summary = comparison.Summaries.First(one => one.Leads && one.Measure == ComparisonMeasure.Positivity);
if (summary.HighestAdjusted != sites[highest].Name) throw new InvalidOperationException("The report should name the true highest site.");

// 8. What this cannot do. Adjustment reaches only what is recorded: who is sent to the test, and how much infection lives around a site, are still in the
//    figures. A site that tested in the wave only has nothing to be compared by outside it. And with few sites the spread between them is itself
//    poorly known: how often such limits hold is in the next notebook, 05-how-often-they-hold.cs.

// 9. The picture: left, as counted (open, dashed) against adjusted (filled) and true (upright stroke); right, the funnel of what was counted.
const int Width = 480, Height = 360, Top = 40;
var svg = new StringBuilder();
svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {2 * Width} {Height + 30}\" role=\"img\" font-family=\"sans-serif\" font-size=\"12\">\n");
svg.Append("<title>As counted and adjusted</title><desc>Positivity of eight sites: as counted, adjusted for the week, and true; beside it the funnel of what was counted, in which the site that tested in the wave lies above the limits.</desc>\n");
svg.Append("<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n");
double most = Math.Ceiling(100 * all.Where(site => counts[site].Trials > 500).Max(site => Math.Max(fit.Effects[site].Rate.Upper!.Value, ProportionInterval.ClopperPearson(counts[site].Events, counts[site].Trials).Upper!.Value))) / 100;
double X(double rate) => 110 + (Math.Min(rate, most) / most * (Width - 130));
svg.Append("<text x=\"110\" y=\"20\" font-weight=\"bold\">Positivity, sites in the order of their true rates</text>\n");
for (var tick = 0.0; tick <= most + 1e-9; tick += 0.01)
    svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{X(tick):0.0} {Top - 8}V{Height - 40}\" stroke=\"#ddd\"/><text x=\"{X(tick):0.0}\" y=\"{Height - 24}\" text-anchor=\"middle\">{100 * tick:0} %</text>\n");
foreach (var (site, place) in all.OrderBy(site => trueRank[site]).Select((site, place) => (site, place)))
{
    double y = Top + 14 + (place * 34.5), above = y - 5, below = y + 5;
    var (raw, rate) = (ProportionInterval.ClopperPearson(counts[site].Events, counts[site].Trials), fit.Effects[site].Rate);
    svg.Append(CultureInfo.InvariantCulture, $"<text x=\"102\" y=\"{y + 4:0.0}\" text-anchor=\"end\">{sites[site].Name}</text>\n");
    svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{X(raw.Lower!.Value):0.0} {above:0.0}H{X(raw.Upper!.Value):0.0}\" stroke=\"#b3541e\" stroke-width=\"1.5\" stroke-dasharray=\"4 3\"/><circle cx=\"{X(raw.Estimate!.Value):0.0}\" cy=\"{above:0.0}\" r=\"4\" fill=\"#fff\" stroke=\"#b3541e\" stroke-width=\"1.5\"/>\n");
    svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{X(rate.Lower!.Value):0.0} {below:0.0}H{X(rate.Upper!.Value):0.0}\" stroke=\"#1d4e6b\" stroke-width=\"1.5\"/><circle cx=\"{X(rate.Value!.Value):0.0}\" cy=\"{below:0.0}\" r=\"4\" fill=\"#1d4e6b\"/>\n");
    svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{X(truth[site]):0.0} {y - 12:0.0}V{y + 12:0.0}\" stroke=\"#000\" stroke-width=\"2\"/>\n");
}

svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"116\" cy=\"{Height + 6}\" r=\"4\" fill=\"#fff\" stroke=\"#b3541e\" stroke-width=\"1.5\"/><text x=\"126\" y=\"{Height + 10}\">as counted</text><circle cx=\"216\" cy=\"{Height + 6}\" r=\"4\" fill=\"#1d4e6b\"/><text x=\"226\" y=\"{Height + 10}\">adjusted for the week</text><path d=\"M374 {Height - 4}v20\" stroke=\"#000\" stroke-width=\"2\"/><text x=\"382\" y=\"{Height + 10}\">true</text>\n");

const double Largest = 2600;
double U(double trials) => Width + 50 + (trials / Largest * (Width - 70));
double V(double rate) => Top + ((1 - (Math.Min(rate, most) / most)) * (Height - Top - 40));
svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{Width + 50}\" y=\"20\" font-weight=\"bold\">Funnel of what was counted: blind to the wave</text>\n");
for (var tick = 0.0; tick <= most + 1e-9; tick += 0.01)
    svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{U(0):0.0} {V(tick):0.0}H{U(Largest):0.0}\" stroke=\"#ddd\"/><text x=\"{U(0) - 6:0.0}\" y=\"{V(tick) + 4:0.0}\" text-anchor=\"end\">{100 * tick:0} %</text>\n");
for (var tick = 0; tick <= Largest; tick += 500)
    svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{U(tick):0.0}\" y=\"{Height - 24}\" text-anchor=\"middle\">{tick}</text>\n");
svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{U(Largest / 2):0.0}\" y=\"{Height - 6}\" text-anchor=\"middle\">tests</text><path d=\"M{U(0):0.0} {V(funnel.Target!.Value):0.0}H{U(Largest):0.0}\" stroke=\"#5b5b5b\"/>\n");
foreach (var (confidence, dash) in (ReadOnlySpan<(double, string)>)[(0.95, "4 3"), (0.998, "none")])
{
    foreach (var upper in (ReadOnlySpan<bool>)[true, false])
    {
        double[] limits = [.. Enumerable.Range(1, 260).Select(step => funnel.LimitsAt(10 * step, confidence)!.Value is var at && upper ? at.Upper : at.Lower)];
        var from = upper ? Array.FindIndex(limits, limit => limit <= most) : 0;
        svg.Append(CultureInfo.InvariantCulture, $"<path fill=\"none\" stroke=\"#5b5b5b\" stroke-dasharray=\"{dash}\" d=\"");
        for (var i = from; i < limits.Length; i++) svg.Append(CultureInfo.InvariantCulture, $"{(i == from ? 'M' : 'L')}{U(10 * (i + 1)):0.0} {V(limits[i]):0.0}");
        svg.Append("\"/>\n");
    }
}

foreach (var site in all)
{
    var outside = Word(funnel.Points[site]) != "within";
    var (x, y) = (U(counts[site].Trials), V(counts[site].Rate!.Value));
    svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{x:0.0}\" cy=\"{y:0.0}\" r=\"4\" fill=\"{(outside ? "#b3541e" : "#fff")}\" stroke=\"#b3541e\" stroke-width=\"1.5\"/>\n");
    if (outside) svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{x:0.0}\" y=\"{y - 9:0.0}\" text-anchor=\"middle\" stroke=\"#fff\" stroke-width=\"3\" paint-order=\"stroke\">{sites[site].Name}</text>\n");
}

svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{Width + 60} {Height + 6}h32\" stroke=\"#5b5b5b\" stroke-dasharray=\"4 3\"/><text x=\"{Width + 98}\" y=\"{Height + 10}\">95 % limits</text><path d=\"M{Width + 190} {Height + 6}h32\" stroke=\"#5b5b5b\"/><text x=\"{Width + 228}\" y=\"{Height + 10}\">99.8 % limits, exact</text>\n</svg>\n");
File.WriteAllText("artifacts/a-fair-comparison.svg", svg.ToString());
Console.WriteLine();
Console.WriteLine("wrote artifacts/a-fair-comparison.svg");
