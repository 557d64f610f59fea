#!/usr/bin/env dotnet
#:project ../src/ScreenStats.Statistics/ScreenStats.Statistics.csproj
#:property PublishAot=false

// How often does an interval hold the true rate, and how often does a rule raise its hand? Exactly, without simulation.
// Run it from the top of the checkout: dotnet run notebooks/10-coverage-and-operating-characteristics.cs

using System.Globalization;
using System.Text;
using ScreenStats.Statistics.Monitoring.Acceptance;
using ScreenStats.Statistics.Proportions;

// 1. For n trials and a true rate p the chance of each count is binomial, and each count has its interval. The coverage is the sum of the
//    chances of those counts whose interval holds p. Here n = 50, and p from 0.001 to 0.5 by 0.001.
const int Trials = 50;
double[] rates = [.. Enumerable.Range(1, 500).Select(step => step / 1000.0)];
var studies = IntervalMethods.All.Select(method => IntervalCoverage.Of(method, Trials)).ToList();

Console.WriteLine(FormattableString.Invariant($"95 % intervals of {Trials} trials, rates from 0.001 to 0.5"));
Console.WriteLine("method              mean coverage   least    at rate   mean width");
foreach (var study in studies)
{
    var covered = rates.Select(study.At).ToList();
    var least = covered.Min();
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
        $"{study.Method.Name(),-18} {covered.Average(),13:0.0000} {least,9:0.0000} {rates[covered.IndexOf(least)],9:0.000} {rates.Average(study.WidthAt),12:0.0000}"));
}

// 2. Against the paper. Brown, Cai and DasGupta (Stat Sci 2001;16:101-133) discuss the same figures; what follows is from memory of the paper,
//    and what is computed here is said so.
//    - They call Clopper-Pearson "wastefully conservative": its coverage never falls below 95 %, and here its mean lies well above it.
//    - They recommend Wilson or Jeffreys for small n: the mean lies near 95 %. Agresti-Coull they recommend for 40 trials and more: never far
//      below, somewhat above near 0, and wider.
//    - Wilson has a deep narrow dip where the rate falls just below the lower limit of one event in n. In the limit that limit is l/n with
//      (1 - l)² = z² l, so l = 0.1765, and only "no event" still covers: exp(-l) = 0.838. They print 0.838. We compute it.
var z = 1.959963984540054;
var l = 1 + (z * z / 2) - Math.Sqrt(Math.Pow(1 + (z * z / 2), 2) - 1);
Console.WriteLine();
Console.WriteLine(FormattableString.Invariant($"Wilson just below the lower limit of one event: limit exp(-{l:0.0000}) = {Math.Exp(-l):0.0000}"));
foreach (var n in (int[])[50, 500])
{
    var edge = ProportionInterval.Wilson(1, n).Lower!.Value;
    Console.WriteLine(FormattableString.Invariant(
        $"  n = {n}: {IntervalCoverage.Of(IntervalMethod.Wilson, n).At(Math.BitDecrement(edge)):0.0000} just below {edge:0.000000}, {IntervalCoverage.Of(IntervalMethod.Wilson, n).At(edge):0.0000} at it"));
}

//    - Jeffreys with its usual ends has such dips too: just below the 2.5 % quantile of one event, and just above the 97.5 % quantile of none.
foreach (var n in (int[])[50, 500])
{
    var jeffreys = IntervalCoverage.Of(IntervalMethod.Jeffreys, n);
    var below = Math.BitDecrement(ProportionInterval.Jeffreys(1, n).Lower!.Value);
    var above = Math.BitIncrement(ProportionInterval.Jeffreys(0, n).Upper!.Value);
    Console.WriteLine(FormattableString.Invariant($"Jeffreys, n = {n}: {jeffreys.At(below):0.0000} just below {below:0.000000}, {jeffreys.At(above):0.0000} just above {above:0.000000}"));
}

// 3. What it means for a screen. Positivity is a fraction of a percent, so such dips lie where we work: with few positives read Clopper-Pearson or mid-P
//    beside Wilson, and where a decision hangs on a tail use the exact test. The full grid (n from 5 to 500) is in
//    tests/reference/studies/coverage-study.csv.

// 4. A rule has no coverage, it has an operating characteristic: how often it says yes, over everything that could be true. One number ("it is 90 % sure") is one point of that curve. Take the oldest rule of all: of a new
//    lot, run 60 control swabs that must be negative, and use the lot if none is positive. How often is a lot used that has so many false positives? By the binomial distribution, a sum of one line. Look at both ends:
//    a lot of 1 in 20 still gets through in one of twenty, and a good lot of 1 in 500 is sent back in one of nine. With more swabs, and one positive allowed, the curve is steeper: it parts good from bad, for more money.
SamplingPlan[] plans = [new(60, 0), new(60, 1), new(300, 2)];
double[] lots = [0.0005, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1];
Console.WriteLine();
Console.WriteLine("4. Chance that a lot is used, by its share of false positives");
Console.WriteLine("swabs   positives allowed   " + string.Join("  ", lots.Select(rate => (100 * rate).ToString("0.##", CultureInfo.InvariantCulture).PadLeft(5) + " %")) + "   used by even chance at");
foreach (var plan in plans)
{
    Console.WriteLine(FormattableString.Invariant($"{plan.Size,5} {plan.AcceptanceNumber,19}   ")
        + string.Join("  ", lots.Select(rate => OperatingCharacteristic.Acceptance(plan, rate).ToString("0.000", CultureInfo.InvariantCulture).PadLeft(7)))
        + FormattableString.Invariant($"   {100 * OperatingCharacteristic.RateAccepted(plan, 0.5)!.Value,20:0.00} %"));
}

if (Math.Abs(OperatingCharacteristic.Acceptance(plans[0], 0.05) - Math.Pow(0.95, 60)) > 1e-12) throw new InvalidOperationException("None of sixty is 0.95 to the power of 60.");

// 5. The rule in force is another: the evaluation flags a lot by its refuted positives among screens, exact and paid for all lots (notebook 03). Its curve, for ten other lots of 5,000 tests each with 1 refuted in 1,000.
//    The first column is what it costs: a sound lot is flagged in fewer than 1 of 1,000 programs a lot. The others are what it buys. Where the chance is small the rule is blind, and a report that finds nothing has shown nothing.
var flag = new FlagRule { Rate = 0.001, OtherTrials = 50_000, Lots = 11 };
double[] times = [1, 2, 3, 5, 10];
Console.WriteLine();
Console.WriteLine("5. Chance that a lot is flagged, by how many times as bad as the others");
Console.WriteLine("tests   " + string.Join(" ", times.Select(time => FormattableString.Invariant($"{time + "-fold",9}"))));
foreach (var tests in (long[])[500, 2_000, 5_000, 20_000])
    Console.WriteLine(FormattableString.Invariant($"{tests,5:0}   ") + string.Join(" ", FlagCurve.Chances(flag, tests, times).Select(chance => chance.ToString("0.0000", CultureInfo.InvariantCulture).PadLeft(9))));

// 6. The first picture: coverage over the true rate, one panel a method, the line at 95 %.
Directory.CreateDirectory("artifacts");
var svg = new StringBuilder();
const int Width = 420, Height = 170;
svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {2 * Width} {3 * Height}\" role=\"img\" font-family=\"sans-serif\" font-size=\"12\">\n");
svg.Append(CultureInfo.InvariantCulture, $"<title>Coverage of 95 % intervals, {Trials} trials</title><desc>Exact coverage of six methods over true rates from 0.001 to 0.5; each with a line at 0.95.</desc>\n");
for (var panel = 0; panel < studies.Count; panel++)
{
    var (left, top) = (panel % 2 * Width, panel / 2 * Height);
    double X(double rate) => left + 45 + (rate / 0.5 * (Width - 65));
    double Y(double coverage) => top + 25 + ((1 - Math.Max(0.8, coverage)) / 0.2 * (Height - 60));
    svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{left + 45}\" y=\"{top + 16}\">{studies[panel].Method.Name()}</text>\n");
    foreach (var tick in (double[])[0.8, 0.9, 0.95, 1])
        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{left + 40}\" y=\"{Y(tick) + 4:0.0}\" text-anchor=\"end\">{tick:0.00}</text><path d=\"M{X(0):0.0} {Y(tick):0.0}H{X(0.5):0.0}\" stroke=\"{(tick == 0.95 ? "#b3541e" : "#ddd")}\"/>\n");
    foreach (var tick in (double[])[0, 0.1, 0.2, 0.3, 0.4, 0.5])
        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{X(tick):0.0}\" y=\"{top + Height - 18}\" text-anchor=\"middle\">{tick:0.0}</text>\n");
    svg.Append("<path fill=\"none\" stroke=\"#1d4e6b\" d=\"");
    for (var i = 0; i < rates.Length; i++)
        svg.Append(CultureInfo.InvariantCulture, $"{(i == 0 ? 'M' : 'L')}{X(rates[i]):0.0} {Y(studies[panel].At(rates[i])):0.0}");
    svg.Append("\"/>\n");
}

svg.Append("</svg>\n");
File.WriteAllText("artifacts/coverage-of-intervals.svg", svg.ToString());
Console.WriteLine();
Console.WriteLine("wrote artifacts/coverage-of-intervals.svg");

// 7. The second: the three plans of section 4 as curves, named where they end.
svg.Clear();
double PlanX(double rate) => 50 + (rate / 0.1 * 520);
double PlanY(double chance) => 20 + ((1 - chance) * 220);
svg.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 760 290\" role=\"img\" font-family=\"sans-serif\" font-size=\"12\">\n<title>Operating characteristic of three plans</title><desc>Chance that a lot is used over its share of false positives: with 300 swabs and two positives allowed the curve falls steeply, with 60 swabs slowly.</desc>\n");
for (var tick = 0; tick <= 4; tick++)
    svg.Append(CultureInfo.InvariantCulture, $"<text x=\"44\" y=\"{PlanY(tick / 4.0) + 4:0.0}\" text-anchor=\"end\">{25 * tick} %</text><path d=\"M50 {PlanY(tick / 4.0):0.0}H570\" stroke=\"#ddd\"/>\n");
for (var tick = 0; tick <= 10; tick += 2)
    svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{PlanX(tick / 100.0):0.0}\" y=\"258\" text-anchor=\"middle\">{tick} %</text>\n");
string[] dashes = ["none", "8 4", "2 4"];
foreach (var (plan, index) in plans.Select((plan, index) => (plan, index)))
{
    var path = string.Join("L", Enumerable.Range(0, 101).Select(step => FormattableString.Invariant($"{PlanX(step / 1000.0):0.0} {PlanY(OperatingCharacteristic.Acceptance(plan, step / 1000.0)):0.0}")));
    svg.Append(CultureInfo.InvariantCulture, $"<path fill=\"none\" stroke=\"#1d4e6b\" stroke-width=\"2\" stroke-dasharray=\"{dashes[index]}\" d=\"M{path}\"/><path d=\"M590 {60 + (24 * index)}h36\" stroke=\"#1d4e6b\" stroke-width=\"2\" stroke-dasharray=\"{dashes[index]}\"/><text x=\"632\" y=\"{64 + (24 * index)}\">{plan.Size} swabs, {plan.AcceptanceNumber} allowed</text>\n");
}

svg.Append("<text x=\"50\" y=\"280\">share of false positives of the lot; upright: chance that it is used</text>\n</svg>\n");
File.WriteAllText("artifacts/operating-characteristics.svg", svg.ToString());
Console.WriteLine("wrote artifacts/operating-characteristics.svg");
