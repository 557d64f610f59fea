#!/usr/bin/env dotnet
#:project ../src/ScreenStats/ScreenStats.csproj
#:project ../src/ScreenStats.Statistics/ScreenStats.Statistics.csproj
#:project ../src/ScreenStats.Counting/ScreenStats.Counting.csproj
#:project ../src/ScreenStats.Evaluation/ScreenStats.Evaluation.csproj
#:project ../src/ScreenStats.Records/ScreenStats.Records.csproj
#:property PublishAot=false

// Finding a bad lot: which of the lots in use makes false alarms, how sure is that, and what would have stayed unseen?
// Run it from the top of the checkout: dotnet run notebooks/03-finding-a-bad-lot.cs
// A flag says that a lot needs looking into. It never says that one person's positive was false, or that anybody may return to work.

using System.Globalization;
using System.Text;
using ScreenStats;
using ScreenStats.Evaluation;
using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Monitoring.Acceptance;
using ScreenStats.Statistics.Multiplicity;
using ScreenStats.Statistics.Proportions;

string PerThousand(double? share) => share is { } some ? (1_000 * some).ToString("0.00", CultureInfo.InvariantCulture) : "-";
string Chance(double? p) => p is { } some ? some.ToString(some < 0.001 ? "0.0e+0" : "0.000", CultureInfo.InvariantCulture) : "-";

var program = ScreeningProgram.Open("sample-data/marrowlight");
var findings = program.Read().Tally.Evaluate(program.Settings);

// 1. Do not look at positives, look at refuted positives. In a wave every lot that is in use has many positives, because there are many infections; that is the screen at work. A lot is bad
//    where the confirmatory test says no. And do not look at rates alone: the lots with the highest and the lowest rates are the smallest ones, for they have room to be far off by
//    chance. Intervals show it; but eleven intervals side by side are eleven chances to be fooled.
var lots = findings.Lots.Where(lot => lot.RefutedPUndefined is null).OrderByDescending(lot => (double)lot.Refuted / lot.Tests).ToList();
var (allTests, allRefuted) = (lots.Sum(lot => lot.Tests), lots.Sum(lot => lot.Refuted));
Console.WriteLine("1. Refuted positives of each lot, per 1,000 valid tests");
Console.WriteLine("lot         tests   positives   refuted   per 1,000     interval");
foreach (var lot in lots)
{
    var rate = ProportionInterval.Wilson(lot.Refuted, lot.Tests);
    Console.WriteLine(FormattableString.Invariant($"{lot.Lot,-8} {lot.Tests,8} {lot.Positives,11} {lot.Refuted,9} {PerThousand(rate.Estimate),11}     {PerThousand(rate.Lower)} to {PerThousand(rate.Upper)}"));
}

Console.WriteLine(FormattableString.Invariant($"all      {allTests,8} {lots.Sum(lot => lot.Positives),11} {allRefuted,9} {PerThousand((double)allRefuted / allTests),11}"));

// 2. One question to each lot. Put all valid tests into an urn, colour the refuted ones, and draw as many as this lot has: how often would there be as many coloured ones as it had, or more? That
//    is an exact chance (hypergeometric); no curve is fitted, nothing is approximate, and a small lot answers by itself that it cannot know. Then pay for having asked many: Holm multiplies the
//    smallest chance by the number of lots, the next by one less, and so on. Flagged is what stays below 0.01.
//    One trap is left: the bad lot's false alarms are in the urn too, so they make all others look good. So the worst lot is set apart, and the rest is asked afresh; the last column is that round.
double Tail(long refuted, long tests, long of, long among) => Hypergeometric.UpperTail(refuted, among, of, tests);
var first = lots.Select(lot => Tail(lot.Refuted, lot.Tests, allRefuted, allTests)).ToList();
var adjusted = MultipleComparisons.Holm(first).ToList();
var worst = lots[adjusted.IndexOf(adjusted.Min())];
var rest = lots.Where(lot => lot != worst).ToList();
var second = rest.Select(lot => Tail(lot.Refuted, lot.Tests, rest.Sum(one => one.Refuted), rest.Sum(one => one.Tests))).ToList();
var again = MultipleComparisons.Holm(second).ToList();
Console.WriteLine();
Console.WriteLine("2. The chance of so many, by the draw alone");
Console.WriteLine("lot         by itself   of eleven   without the worst");
foreach (var (lot, index) in lots.Select((lot, index) => (lot, index)))
    Console.WriteLine(FormattableString.Invariant($"{lot.Lot,-8} {Chance(first[index]),12} {Chance(adjusted[index]),11} {(lot == worst ? "set apart" : Chance(again[rest.IndexOf(lot)])),19}"));

// By hand and by the evaluation: the same figures, or something is wrong.
var flagged = lots.Where(lot => lot.Flag.HasFlag(Flag.Refuted)).ToList();
Console.WriteLine("flagged by the evaluation: " + string.Join(", ", flagged.Select(lot => lot.Lot)));
if (flagged.Count != 1 || flagged[0] != worst || worst.Lot != "D-0719") throw new InvalidOperationException("The faulty lot of the sample data is D-0719, and no other.");
if (Math.Abs((worst.RefutedP!.Value / first.Min()) - 1) > 1e-9 || rest.Zip(again).Any(pair => Math.Abs(pair.First.RefutedPHolm!.Value - pair.Second) > 1e-9)) throw new InvalidOperationException("The evaluation asks the same question.");

// 3. The lot, or the place where it was used? Two sites had it. Seen as a whole they look bad as well, and one would train their staff for nothing. So compare within: only tests of the same site in
//    the same week, with this lot and with others. What a site or a week does is then the same on both sides. "Expected" is what the lot would have had at the rate of its neighbours.
Console.WriteLine();
Console.WriteLine("3. Within the same site and week");
foreach (var row in findings.LotTests.Rows.Where(row => row.Measure == "refuted" && row.PUndefined is null).OrderBy(row => row.P).Take(3))
    Console.WriteLine(FormattableString.Invariant($"{row.Place,-8} {row.Observed,3} refuted, {row.Expected:0.0} expected; {row.Strata} site-weeks; chance {Chance(row.P)}, of all lots {Chance(row.PHolm)}"));
Console.WriteLine("sites, refuted per 1,000 tests:   all lots   without the flagged lot's");
foreach (var site in findings.Sites.OrderByDescending(site => site.Refuted))
    Console.WriteLine(FormattableString.Invariant($"  {site.Site,-12} {PerThousand((double)site.Refuted / site.Tests),27} {PerThousand((double)(site.Refuted - Of(site.Site)) / site.Tests),13}"));
long Of(string site) => worst.RefutedPlaces.Where(place => place.Name == site).Sum(place => place.Events);

// 4. What the rule would have seen, and what not. A rule that never cries without cause may be blind. So ask it beforehand: a lot with so many tests, so many times as bad as the others; in how
//    many of 100 programs is it flagged? Half a lot of kits with twice the false alarms goes unseen, and no statistics can change that: only more tests, or control swabs, can. Say so in the report.
var rule = new FlagRule { Rate = (double)rest.Sum(lot => lot.Refuted) / rest.Sum(lot => lot.Tests), OtherTrials = rest.Sum(lot => lot.Tests), Lots = lots.Count };
double[] times = [2, 3, 5, 10, 20, 50];
Console.WriteLine();
Console.WriteLine(FormattableString.Invariant($"4. Flagged in how many of 100, where the others have {PerThousand(rule.Rate)} refuted per 1,000 tests"));
Console.WriteLine("tests with the lot   " + string.Join(" ", times.Select(time => FormattableString.Invariant($"{time + "-fold",8}"))) + "   even chance at");
foreach (var tests in (long[])[200, 1_000, 5_000])
{
    var chances = FlagCurve.Chances(rule, tests, times);
    Console.WriteLine(FormattableString.Invariant($"{tests,18:N0}   ") + string.Join(" ", chances.Select(chance => FormattableString.Invariant($"{100 * chance,8:0}"))) + FormattableString.Invariant($"   {FlagCurve.Ratio(rule, tests, 0.5):0.0}-fold"));
}

// 5. And how often would it cry without cause? Two thousand programs with lots of these sizes, all sound. "Twice the average" is the rule of thumb in many offices; "below 0.05 each" is what is left
//    of statistics where nobody pays for having asked often.
const int Programs = 2_000;
var random = new Random(20_261_126);
var sound = (double)rest.Sum(lot => lot.Refuted) / rest.Sum(lot => lot.Tests);
var cries = new int[3];
for (var one = 0; one < Programs; one++)
{
    var drawn = lots.Select(lot => Binomial(random, lot.Tests, sound)).ToList();
    var among = drawn.Sum();
    var tails = lots.Select((lot, index) => among == 0 ? 1 : Tail(drawn[index], lot.Tests, among, allTests)).ToList();
    if (lots.Where((lot, index) => drawn[index] > 2.0 * among / allTests * lot.Tests).Any()) cries[0]++;
    if (tails.Min() < 0.05) cries[1]++;
    if (MultipleComparisons.Holm(tails).Min() < 0.01) cries[2]++;
}

Console.WriteLine();
Console.WriteLine(FormattableString.Invariant($"5. {Programs} programs of sound lots (seed 20261126): a lot is blamed in"));
foreach (var (label, index) in (ReadOnlySpan<(string, int)>)[("twice the average", 0), ("below 0.05 each", 1), ("exact, Holm, below 0.01", 2)])
    Console.WriteLine(FormattableString.Invariant($"  {label,-24} {100.0 * cries[index] / Programs,6:0.0} % of programs"));
if (cries[2] > 0.01 * Programs + (3 * Math.Sqrt(0.01 * Programs))) throw new InvalidOperationException("The rule promises at most one program in a hundred.");

// 6. The picture: each lot with its interval, the average of the others as a line, the flagged one named in words and not by colour alone. What to do then: stop the lot, keep its kits, ask the maker, and leave the
//    isolation of people who were positive with it to those who decide that. How soon a nightly look would have seen it: notebook 05.
const int Width = 720;
var height = 70 + (26 * lots.Count);
var most = lots.Max(lot => ProportionInterval.Wilson(lot.Refuted, lot.Tests).Upper!.Value);
double X(double rate) => 110 + (Math.Sqrt(rate / most) * (Width - 260));
var svg = new StringBuilder();
svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Width} {height}\" role=\"img\" font-family=\"sans-serif\" font-size=\"12\">\n<title>Refuted positives by lot</title><desc>Refuted positives per 1,000 valid tests of {lots.Count} lots with 95 % intervals, on a square-root scale; {worst.Lot} lies far above all others.</desc>\n");
foreach (var tick in (double[])[0, 0.001, 0.002, 0.005, 0.01, 0.015])
{
    if (tick > most) continue;
    svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{X(tick):0.0} 20V{height - 40}\" stroke=\"#ddd\"/><text x=\"{X(tick):0.0}\" y=\"{height - 24}\" text-anchor=\"middle\">{1_000 * tick:0}</text>\n");
}

svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{X(sound):0.0} 20V{height - 40}\" stroke=\"#b3541e\" stroke-dasharray=\"5 4\"/><text x=\"{X(sound) + 4:0.0}\" y=\"14\" fill=\"#8a3d12\">the others together: {PerThousand(sound)}</text>\n");
foreach (var (lot, index) in lots.Select((lot, index) => (lot, index)))
{
    var (rate, y) = (ProportionInterval.Wilson(lot.Refuted, lot.Tests), 36 + (26 * index));
    svg.Append(CultureInfo.InvariantCulture, $"<text x=\"100\" y=\"{y + 4}\" text-anchor=\"end\">{lot.Lot}</text><path d=\"M{X(rate.Lower!.Value):0.0} {y}H{X(rate.Upper!.Value):0.0}\" stroke=\"#1d4e6b\"/>");
    svg.Append(lot == worst
        ? string.Create(CultureInfo.InvariantCulture, $"<path d=\"M{X(rate.Estimate!.Value) - 6:0.0} {y}l6 -6l6 6l-6 6z\" fill=\"#1d4e6b\"/><text x=\"{X(rate.Upper.Value) + 8:0.0}\" y=\"{y + 4}\">to be looked into</text>\n")
        : string.Create(CultureInfo.InvariantCulture, $"<circle cx=\"{X(rate.Estimate!.Value):0.0}\" cy=\"{y}\" r=\"4\" fill=\"#1d4e6b\"/>\n"));
}

svg.Append(CultureInfo.InvariantCulture, $"<text x=\"110\" y=\"{height - 6}\">refuted positives per 1,000 valid tests (square-root scale)</text>\n</svg>\n");
Directory.CreateDirectory("artifacts");
File.WriteAllText("artifacts/finding-a-bad-lot.svg", svg.ToString());
Console.WriteLine();
Console.WriteLine("wrote artifacts/finding-a-bad-lot.svg");

// Events among many trials that are rare: gaps between them are geometric.
static long Binomial(Random random, long trials, double rate)
{
    var events = 0L;
    var scale = Math.Log(1 - rate);
    for (var at = (long)(Math.Log(1 - random.NextDouble()) / scale); at < trials; at += 1 + (long)(Math.Log(1 - random.NextDouble()) / scale)) events++;
    return events;
}
