#!/usr/bin/env dotnet
#:project ../src/ScreenStats/ScreenStats.csproj
#:project ../src/ScreenStats.Statistics/ScreenStats.Statistics.csproj
#:project ../src/ScreenStats.Counting/ScreenStats.Counting.csproj
#:project ../src/ScreenStats.Evaluation/ScreenStats.Evaluation.csproj
#:project ../src/ScreenStats.Records/ScreenStats.Records.csproj
#:property PublishAot=false

// The same from counts only: no rows, no people, just the totals of a paper or of a monthly sheet. How much of the evaluation is still there, and what is lost?
// Run it from the top of the checkout: dotnet run notebooks/08-from-counts-only.cs

using System.Globalization;
using System.Text;
using ScreenStats;
using ScreenStats.Evaluation;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Bounds;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Prevalence;
using ScreenStats.Statistics.Proportions;
using ScreenStats.Statistics.Verification;

string Percent(double? share, int digits = 1) => share is { } some ? (100 * some).ToString("0." + new string('0', digits), CultureInfo.InvariantCulture) + " %" : "-";

// 1. Four numbers of a paper. A program of 537 workplaces printed: 903,408 valid tests, 1,322 positive, 1,103 of these with a conclusive confirmatory result, 462 of them refuted (Gans et al., JAMA
//    2022;327:485-486). That is enough for the question that everybody asks first. Beside it stand what most readers forget: the 219 without a conclusion.
const long ValidTests = 903_408, Positives = 1_322, Conclusive = 1_103, Refuted = 462;
var real = ProportionInterval.Wilson(Conclusive - Refuted, Conclusive);
const long Open = Positives - Conclusive;
Console.WriteLine("1. What was a positive worth?");
Console.WriteLine(FormattableString.Invariant($"  {real.Successes} of {real.Trials} real: {Percent(real.Estimate)} ({Percent(real.Lower)} to {Percent(real.Upper)})"));
Console.WriteLine(FormattableString.Invariant($"  {Open} positives are open: between {Percent((double)(Conclusive - Refuted) / Positives)} (all refuted) and {Percent((double)(Conclusive - Refuted + Open) / Positives)} (all real)"));

// 2. How often does the screen err? False alarms per test need the refuted positives and ALL valid tests, and again the open ones make a range. The specificity is one minus that, nearly: infected people among the
//    tests are so few that they do not show. What is more, the positivity alone proves something: false alarms cannot be more than all positives, so no specificity below one minus the positivity is
//    possible, however the confirmatory tests came out. A leaflet that says "99.0 %" is refuted by this without any confirmatory test.
var proof = SpecificityProof.FromPositivity(Positives, ValidTests);
Console.WriteLine();
Console.WriteLine("2. False alarms");
foreach (var (label, alarms) in (ReadOnlySpan<(string, long)>)[("refuted", Refuted), ("refuted or open", Refuted + Open)])
{
    var rate = ProportionInterval.Wilson(alarms, ValidTests);
    Console.WriteLine(FormattableString.Invariant($"  {label,-16} {Percent(rate.Estimate, 3)} of tests ({Percent(rate.Lower, 3)} to {Percent(rate.Upper, 3)})"));
}

Console.WriteLine(FormattableString.Invariant($"  from the positivity alone: specificity at least {Percent(proof.SpecificityLower, 3)}"));
foreach (var stated in (double[])[0.99, 0.998, 0.9995])
    Console.WriteLine(FormattableString.Invariant($"  stated {Percent(stated, 2),8}: {SpecificityComparison.Of(Refuted, Open, ValidTests, AccuracyStatement.Exact(stated)).Outcome switch { SpecificityOutcome.Compatible => "compatible with these counts", SpecificityOutcome.NotCompatible => "not compatible with these counts", _ => "cannot be told: the open ones decide" }}"));

// 3. How many were infected? Corrected for the errors of the test, if they are known, the prevalence behind a positivity is a sum of one line (Rogan and Gladen). Where infections are rare the correction takes
//    away nearly everything: the answer hangs on the fourth digit of the specificity. When it comes out below zero, not the people but the stated figure is wrong.
Console.WriteLine();
Console.WriteLine("3. True prevalence behind the positivity, sensitivity 61/97");
foreach (var stated in (double[])[0.998, 0.9988, 0.9995])
{
    var corrected = RoganGladen.Estimate(Positives, ValidTests, AccuracyStatement.FromCounts(61, 97), AccuracyStatement.Exact(stated));
    Console.WriteLine(FormattableString.Invariant($"  specificity {Percent(stated, 2)}: {Percent(corrected.Value, 3)} ({Percent(corrected.Lower, 3)} to {Percent(corrected.Upper, 3)}){(corrected.ApparentBelowFalsePositiveRate ? "; fewer positives than that specificity allows, so it is not these tests'" : "")}"));
}

// 4. A fourfold table with holes. Who was positive is looked at, who was negative hardly ever. Of 429 positive pictures 263 were verified, of 221 negative ones only 81 (hepatic scintigraphy, Drum and Christacopoulos 1972,
//    counts from memory). Whoever divides the verified only finds a sensitivity of 90 %: those who were missed were not looked for. Taking each verified negative for as many as it stands for gives 84 %.
//    And where nobody knows why just these were verified, bounds that assume nothing say what the counts prove: little.
var counts = new VerificationCounts(positives: 429, confirmed: 231, refuted: 32, negatives: 221, missed: 27, agreed: 54);
var accuracy = BeggGreenes.Of(counts);
var region = AccuracyBounds.Of(counts);
Console.WriteLine();
Console.WriteLine("4. Partly verified:      verified only   corrected   interval             nothing assumed");
foreach (var (label, measure, naive) in (ReadOnlySpan<(string, AccuracyMeasure, double)>)[("sensitivity", AccuracyMeasure.Sensitivity, 231.0 / (231 + 27)), ("specificity", AccuracyMeasure.Specificity, 54.0 / (54 + 32))])
{
    var figure = accuracy[measure];
    var bounds = region[measure].Bounds;
    Console.WriteLine(FormattableString.Invariant($"   {label,-22} {Percent(naive),12} {Percent(figure.Value),11}   {Percent(figure.Logit?.Lower)} to {Percent(figure.Logit?.Upper)}     {Percent(bounds?.Lower)} to {Percent(bounds?.Upper)}"));
}

// Printed by those who worked it out (from memory): 0.836 and 0.738.
if (Math.Abs(accuracy.Sensitivity.Value!.Value - 0.836) > 5e-4 || Math.Abs(accuracy.Specificity.Value!.Value - 0.738) > 5e-4) throw new InvalidOperationException("The printed figures should come out.");

// 5. Two groups, four numbers: is one lot worse than the rest? Take the totals of the sample program as a monthly sheet would give them.
var program = ScreeningProgram.Open("sample-data/marrowlight");
var findings = program.Read().Tally.Evaluate(program.Settings);
var lot = findings.Lots.Single(one => one.Flag.HasFlag(Flag.Refuted));
var others = findings.Lots.Where(one => one != lot).ToList();
var (otherRefuted, otherTests) = (others.Sum(one => one.Refuted), others.Sum(one => one.Tests));
var ratio = ProportionRatio.Koopman(lot.Refuted, lot.Tests, otherRefuted, otherTests);
Console.WriteLine();
Console.WriteLine(FormattableString.Invariant($"5. Lot {lot.Lot}: {lot.Refuted} refuted of {lot.Tests} tests, all others {otherRefuted} of {otherTests}: {ratio.Value:0.0} times as many ({ratio.Lower:0.0} to {ratio.Upper:0.0}); Fisher's exact test {FisherExact.TwoSided(lot.Refuted, lot.Tests, otherRefuted, otherTests):0.0e+0}"));
Console.WriteLine("   (fair only if this lot was named before anybody looked: one that was picked because it looks worst must pay for all that were looked at, see notebook 03)");

// 6. What is lost. Totals do not say that the same people came again and again, nor that a wave went through one site after the other. So intervals from totals are too narrow, and nothing in the totals says by how much. Totals BY SITE
//    give some of it back: if sites differ by more than chance, it shows. What people add can only be seen in rows. Below: the same positivity three times.
var sites = findings.Sites.Select(site => (site.Tests, Events: site.Positives)).ToList();
var (tests, events) = (sites.Sum(site => site.Tests), sites.Sum(site => site.Events));
var plain = ProportionInterval.Wilson(events, tests);
var bySite = WidenedInterval.Wilson(events, tests, DesignEffect.Of(ClusterSums.From(sites)));
var whole = findings.PredictiveValue.Observed;
var rows = findings.Positivity.Program;
Console.WriteLine();
Console.WriteLine(FormattableString.Invariant($"6. Positivity {events} of {tests}: {Percent(plain.Estimate, 2)}"));
Console.WriteLine(FormattableString.Invariant($"  from the two totals        {Percent(plain.Lower, 2)} to {Percent(plain.Upper, 2)}"));
Console.WriteLine(FormattableString.Invariant($"  from totals by site        {Percent(bySite.Interval?.Lower, 2)} to {Percent(bySite.Interval?.Upper, 2)} (design effect {bySite.DesignEffect:0.0})"));
Console.WriteLine(FormattableString.Invariant($"  from rows (evaluate)       {Percent(rows.WidenedLower, 2)} to {Percent(rows.WidenedUpper, 2)} (design effect {rows.DesignEffect:0.0}, the largest over people, sites and site-weeks)"));

// The plain figures are the evaluation's own: from counts or from rows, it is the same library.
if (plain.Lower != rows.Lower || plain.Upper != rows.Upper) throw new InvalidOperationException("Counts and rows give the same plain interval.");
if (ProportionInterval.Wilson(whole.Events, whole.Trials).Lower != whole.Lower) throw new InvalidOperationException("Counts and rows give the same predictive value.");

// 7. The picture: for each of the four questions what the counts say, and what they leave open.
(string Label, double? Low, double? High, double? Point)[] bars =
[
    ("1. real of positives, interval", real.Lower, real.Upper, real.Estimate),
    ("    … with the open ones", (double)(Conclusive - Refuted) / Positives, (double)(Conclusive - Refuted + Open) / Positives, null),
    ("4. sensitivity, corrected", accuracy.Sensitivity.Logit?.Lower, accuracy.Sensitivity.Logit?.Upper, accuracy.Sensitivity.Value),
    ("    … nothing assumed", region[AccuracyMeasure.Sensitivity].Bounds?.Lower, region[AccuracyMeasure.Sensitivity].Bounds?.Upper, null),
    ("4. specificity, corrected", accuracy.Specificity.Logit?.Lower, accuracy.Specificity.Logit?.Upper, accuracy.Specificity.Value),
    ("    … nothing assumed", region[AccuracyMeasure.Specificity].Bounds?.Lower, region[AccuracyMeasure.Specificity].Bounds?.Upper, null),
];
const int Width = 720;
var height = 60 + (28 * bars.Length);
double X(double share) => 230 + (share * (Width - 260));
var svg = new StringBuilder();
svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Width} {height}\" role=\"img\" font-family=\"sans-serif\" font-size=\"12\">\n<title>What counts alone say and leave open</title><desc>Three figures with their 95 % intervals, each above the wider range that is possible where nothing is assumed of those who were not verified.</desc>\n");
for (var tick = 0; tick <= 4; tick++)
    svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{X(tick / 4.0):0.0} 12V{height - 36}\" stroke=\"#ddd\"/><text x=\"{X(tick / 4.0):0.0}\" y=\"{height - 18}\" text-anchor=\"middle\">{25 * tick} %</text>\n");
foreach (var (bar, index) in bars.Select((bar, index) => (bar, index)))
{
    var y = 28 + (28 * index);
    svg.Append(CultureInfo.InvariantCulture, $"<text x=\"10\" y=\"{y + 4}\" xml:space=\"preserve\">{bar.Label}</text>");
    svg.Append(bar.Point is { } point
        ? string.Create(CultureInfo.InvariantCulture, $"<path d=\"M{X(bar.Low!.Value):0.0} {y}H{X(bar.High!.Value):0.0}\" stroke=\"#1d4e6b\" stroke-width=\"2\"/><circle cx=\"{X(point):0.0}\" cy=\"{y}\" r=\"4\" fill=\"#1d4e6b\"/>\n")
        : string.Create(CultureInfo.InvariantCulture, $"<path d=\"M{X(bar.Low!.Value):0.0} {y - 5}H{X(bar.High!.Value):0.0}v10H{X(bar.Low.Value):0.0}z\" fill=\"none\" stroke=\"#1d4e6b\" stroke-dasharray=\"4 3\"/>\n"));
}

svg.Append("</svg>\n");
Directory.CreateDirectory("artifacts");
File.WriteAllText("artifacts/from-counts-only.svg", svg.ToString());
Console.WriteLine();
Console.WriteLine("wrote artifacts/from-counts-only.svg");
