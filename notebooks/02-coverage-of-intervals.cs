#!/usr/bin/env dotnet
#:project ../src/ScreenStats.Statistics/ScreenStats.Statistics.csproj
#:property PublishAot=false

// How often does an interval hold the true rate? Exactly, without simulation.
// Run it from the top of the checkout: dotnet run notebooks/02-coverage-of-intervals.cs

using System.Globalization;
using System.Text;
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

// 4. The picture: coverage over the true rate, one panel a method, the line at 95 %.
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
