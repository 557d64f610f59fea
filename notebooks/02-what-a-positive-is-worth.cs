#!/usr/bin/env dotnet
#:project ../src/ScreenStats/ScreenStats.csproj
#:project ../src/ScreenStats.Statistics/ScreenStats.Statistics.csproj
#:project ../src/ScreenStats.Counting/ScreenStats.Counting.csproj
#:project ../src/ScreenStats.Evaluation/ScreenStats.Evaluation.csproj
#:project ../src/ScreenStats.Records/ScreenStats.Records.csproj
#:property PublishAot=false

// What a positive is worth: of those who were sent home by a positive screen, how many had the infection? First by the rule that everybody should be able to do
// on paper, then as it was in a program, and how far either can be believed.
// Run it from the top of the checkout: dotnet run notebooks/02-what-a-positive-is-worth.cs
// A positive screen needs a confirmatory test whatever is said here, and a share says nothing of one person.

using System.Globalization;
using System.Text;
using ScreenStats;
using ScreenStats.Evaluation;
using ScreenStats.Statistics.Accuracy;

string Percent(double? share) => share is { } some ? (100 * some).ToString("0.0", CultureInfo.InvariantCulture) + " %" : "-";

// 1. Count people, not percentages. Of 10,000 people few have the infection. The screen finds most of those few, and errs in a small part of all the others; but a
//    small part of very many is many. "98 % specific" sounds as if a positive were right 98 times in 100. Look at the last column: the same screen, three places.
//    The share of positives that are real is the positive predictive value. It belongs to a screen AND a place, never to a screen alone.
const double Sensitivity = 0.842, Specificity = 0.98;
Console.WriteLine(FormattableString.Invariant($"1. Of 10,000 people screened once with sensitivity {Sensitivity} and specificity {Specificity}"));
Console.WriteLine("one in   infected   found   false alarms   positives that are real");
foreach (var oneIn in (int[])[10, 100, 1_000])
{
    var infected = 10_000.0 / oneIn;
    var (found, alarms) = (infected * Sensitivity, (10_000 - infected) * (1 - Specificity));
    var value = PredictiveValue.Positive(Sensitivity, Specificity, 1.0 / oneIn).Value!.Value;
    Console.WriteLine(FormattableString.Invariant($"{oneIn,6:N0} {infected,10:N0} {found,7:N0} {alarms,14:N0} {Percent(value),25}"));
    if (Math.Abs(value - (found / (found + alarms))) > 1e-12) throw new InvalidOperationException("Counting people and Bayes' rule are the same sum.");
}

// The regulator's letter to laboratories of 3 November 2020 said about 80, 30 and 4 in 100 of these three places (as quoted by the trade press).

// 2. Nobody knows a sensitivity. It was measured on some people: here 61 of 97 infected people found, and 2,391 of 2,400 others negative (the sample's stated kit; invented). Those counts have
//    an interval each, so the predictive value has one. Where infections are rare it hangs on the specificity nearly alone: nine false alarms were counted, and a kit with five or with
//    seventeen could have shown nine. That is most of the width below.
var (found97, negative2400) = (AccuracyStatement.FromCounts(61, 97), AccuracyStatement.FromCounts(2_391, 2_400));
Console.WriteLine();
Console.WriteLine("2. The same with accuracy as measured: 61 of 97, and 2,391 of 2,400");
Console.WriteLine("prevalence   predictive value    both uncertain       sensitivity exact    specificity exact");
foreach (var prevalence in (double[])[0.002, 0.004, 0.01, 0.05])
{
    var both = PredictiveValue.Positive(found97, negative2400, prevalence);
    var first = PredictiveValue.Positive(AccuracyStatement.Exact(61.0 / 97), negative2400, prevalence);
    var second = PredictiveValue.Positive(found97, AccuracyStatement.Exact(2_391.0 / 2_400), prevalence);
    Console.WriteLine(FormattableString.Invariant(
        $"{Percent(prevalence),10} {Percent(both.Value),18}    {Percent(both.Lower)} to {Percent(both.Upper)}     {Percent(first.Lower)} to {Percent(first.Upper)}     {Percent(second.Lower)} to {Percent(second.Upper)}"));
}

// 3. Better than to expect is to count. A program that sends its positives to a confirmatory test can look: confirmed of those with a conclusion. Three honest doubts belong beside the figure.
//    - Few counts: the interval. And the same people at the same sites come again and again, so the interval is widened (the design effect says by how much as many runs it is as if fewer).
//    - Positives without a conclusion: if those who never came for the confirmatory test are other people than those who came, the share is wrong. The bounds take all of them as
//      refuted, then all as confirmed. No statistics can do better without looking at them; whoever wants a narrower answer must follow up.
//    - "Refuted" is the confirmatory test's word, which misses some: corrected where its accuracy is stated.
var program = ScreeningProgram.Open("sample-data/marrowlight");
var tally = program.Read().Tally;
var findings = tally.Evaluate(program.Settings);
var worth = findings.PredictiveValue;
Console.WriteLine();
Console.WriteLine($"3. As it was: {program.Settings.Title}");
Console.WriteLine(FormattableString.Invariant($"{worth.Observed.Events} confirmed of {worth.Observed.Trials} with a conclusion: {Percent(worth.Observed.Estimate)}; {Percent(worth.Observed.Lower)} to {Percent(worth.Observed.Upper)} as if every run stood alone, {Percent(worth.Observed.WidenedLower)} to {Percent(worth.Observed.WidenedUpper)} widened (design effect {worth.Observed.DesignEffect:0.0})"));
Console.WriteLine(FormattableString.Invariant($"{worth.Bounds.WithoutConclusion} of {worth.Bounds.Positives} positives have no conclusion: anything from {Percent(worth.Bounds.Lower)} to {Percent(worth.Bounds.Upper)} is possible"));
Console.WriteLine(FormattableString.Invariant($"corrected for the confirmatory test's own errors: {Percent(worth.Corrected.Estimate)} ({Percent(worth.Corrected.Lower)} to {Percent(worth.Corrected.Upper)})"));

// 4. One figure hides two programs. A lot that is faulty makes false alarms, and every honest lot is blamed for them. Without the lots flagged for refuted positives the same screens are worth
//    much more; with them alone, next to nothing. Always ask what the share is made of before the test, or the idea of screening, is blamed. (How such a lot is found: notebook 03.)
Console.WriteLine();
Console.WriteLine("4. What the share is made of");
Console.WriteLine("                                   confirmed   of    share    interval");
void Line(string label, long confirmed, long conclusive)
{
    var share = ScreenStats.Statistics.Proportions.ProportionInterval.Wilson(confirmed, conclusive);
    Console.WriteLine(FormattableString.Invariant($"{label,-34} {confirmed,9} {conclusive,4} {Percent(share.Estimate),8}    {Percent(share.Lower)} to {Percent(share.Upper)}"));
}

Line("all lots", worth.Observed.Events, worth.Observed.Trials);
Line("without " + string.Join(", ", worth.FlaggedLots), worth.WithoutFlaggedLots.Events, worth.WithoutFlaggedLots.Trials);
Line("only " + string.Join(", ", worth.FlaggedLots), worth.Observed.Events - worth.WithoutFlaggedLots.Events, worth.Observed.Trials - worth.WithoutFlaggedLots.Trials);
if (!worth.FlaggedLots.SequenceEqual(["D-0719"])) throw new InvalidOperationException("The faulty lot of the sample data is D-0719.");

// 5. It moves with the infection, not with the test. In the wave a positive is worth more, after it less: same kits, same people. So a figure of last winter is none for next summer, and one
//    figure for half a year is an average over both. A week has few positives: read the intervals, not the points.
var weeks = findings.TruePrevalence.Periods.Where(week => week.Apparent.Trials > 0).ToList();
var observed = tally.Cells.Screens.Where(cell => cell.Outcome == ScreenStats.Counting.Cubes.Outcome.Positive && !worth.FlaggedLots.Contains(cell.Lot))
    .GroupBy(cell => cell.Day.AddDays(-(((int)cell.Day.DayOfWeek + 6) % 7)))
    .ToDictionary(week => week.Key, week => (Confirmed: week.Sum(cell => cell.FollowUp == ScreenStats.Counting.Cubes.FollowUp.Confirmed ? cell.Runs : 0), Refuted: week.Sum(cell => cell.FollowUp == ScreenStats.Counting.Cubes.FollowUp.Refuted ? cell.Runs : 0)));
Console.WriteLine();
Console.WriteLine("5. By week, without the faulty lot: positives that were real");
Console.WriteLine("week of      confirmed   refuted     share    interval");
var points = new List<(DateOnly Week, long Trials, double Share, double Lower, double Upper)>();
foreach (var week in weeks)
{
    var (confirmed, refuted) = observed.GetValueOrDefault(week.PeriodStart!.Value);
    if (confirmed + refuted == 0) continue;
    var share = ScreenStats.Statistics.Proportions.ProportionInterval.Wilson(confirmed, confirmed + refuted);
    points.Add((week.PeriodStart.Value, confirmed + refuted, share.Estimate!.Value, share.Lower!.Value, share.Upper!.Value));
    Console.WriteLine(FormattableString.Invariant($"{week.PeriodStart:yyyy-MM-dd} {confirmed,11} {refuted,9} {Percent(share.Estimate),9}    {Percent(share.Lower)} to {Percent(share.Upper)}"));
}

// 6. Two positives are better than one? Only as far as they err by themselves. Multiplying says that a second positive screen makes nearly sure; but what made the first one wrong (a bad lot, something in the
//    specimen) makes the second one wrong too. The product is the best case. The confirmatory test is of another kind, which is why it is asked.
var screen = new ScreenAccuracy(found97, negative2400);
Console.WriteLine();
Console.WriteLine("6. Positive twice, if each screen erred by itself (it does not)");
foreach (var prevalence in (double[])[0.002, 0.004, 0.01])
{
    var twice = SerialTesting.Repeated(screen, 2, PositiveRule.All);
    Console.WriteLine(FormattableString.Invariant($"  prevalence {Percent(prevalence)}: once {Percent(PredictiveValue.Positive(found97, negative2400, prevalence).Value)}, twice at best {Percent(PredictiveValue.Positive(twice.Sensitivity, twice.Specificity, prevalence).Value)}; but sensitivity falls from {Percent(screen.Sensitivity.Value)} to {Percent(twice.Sensitivity.Value)}"));
}

// 7. The picture: left, the predictive value over the prevalence for the stated kit, with its band; right, the weeks as counted with their intervals, faint where fewer than five had a conclusion.
const int Width = 480, Height = 320;
var svg = new StringBuilder();
svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {2 * Width} {Height}\" role=\"img\" font-family=\"sans-serif\" font-size=\"12\">\n");
svg.Append("<title>What a positive is worth</title><desc>Left: share of positives that are real over the prevalence, rising from near 0 to near 1, with its 95 % band. Right: the same share as counted by week, high in the winter wave and low before and after.</desc>\n");
double Y(double share) => 30 + ((1 - share) * (Height - 80));
void Frame(int left, string title)
{
    svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{left + 50}\" y=\"18\">{title}</text>\n");
    for (var tick = 0; tick <= 4; tick++)
        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{left + 44}\" y=\"{Y(tick / 4.0) + 4:0.0}\" text-anchor=\"end\">{25 * tick} %</text><path d=\"M{left + 50} {Y(tick / 4.0):0.0}H{left + Width - 20}\" stroke=\"#ddd\"/>\n");
}

Frame(0, "Expected, by prevalence (61/97 and 2,391/2,400)");
double LogX(double prevalence) => 50 + ((Math.Log10(prevalence) + 4) / 3 * (Width - 70));
var curve = PredictiveCurve.Prevalences(0.0001, 0.1, 61).Select(prevalence => (X: LogX(prevalence), Value: PredictiveValue.Positive(found97, negative2400, prevalence))).ToList();
string Path(IEnumerable<(double X, double Y)> at) => "M" + string.Join("L", at.Select(one => FormattableString.Invariant($"{one.X:0.0} {one.Y:0.0}")));
svg.Append(CultureInfo.InvariantCulture, $"<path fill=\"#1d4e6b\" fill-opacity=\"0.18\" d=\"{Path(curve.Select(one => (one.X, Y(one.Value.Lower!.Value))).Concat(curve.AsEnumerable().Reverse().Select(one => (one.X, Y(one.Value.Upper!.Value)))))}Z\"/>\n");
svg.Append(CultureInfo.InvariantCulture, $"<path fill=\"none\" stroke=\"#1d4e6b\" stroke-width=\"2\" d=\"{Path(curve.Select(one => (one.X, Y(one.Value.Value!.Value))))}\"/>\n");
foreach (var (prevalence, label) in (ReadOnlySpan<(double, string)>)[(0.0001, "1 in 10,000"), (0.001, "1 in 1,000"), (0.01, "1 in 100"), (0.1, "1 in 10")])
    svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{LogX(prevalence):0.0}\" y=\"{Height - 30}\" text-anchor=\"middle\">{label}</text>\n");
Frame(Width, "As counted, by week, without the faulty lot");
var (from, to) = (weeks[0].PeriodStart!.Value.DayNumber, weeks[^1].PeriodStart!.Value.DayNumber);
foreach (var (week, trials, share, lower, upper) in points)
{
    var x = Width + 60 + ((double)(week.DayNumber - from) / (to - from) * (Width - 90));
    var faint = trials < 5 ? " opacity=\"0.45\"" : "";
    svg.Append(CultureInfo.InvariantCulture, $"<g{faint}><path d=\"M{x:0.0} {Y(lower):0.0}V{Y(upper):0.0}\" stroke=\"#1d4e6b\"/><circle cx=\"{x:0.0}\" cy=\"{Y(share):0.0}\" r=\"3.5\" fill=\"#1d4e6b\"/></g>\n");
}

svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{Width + 50}\" y=\"{Height - 30}\">{weeks[0].PeriodStart:yyyy-MM-dd}</text><text x=\"{(2 * Width) - 20}\" y=\"{Height - 30}\" text-anchor=\"end\">{weeks[^1].PeriodStart:yyyy-MM-dd}</text>\n</svg>\n");
Directory.CreateDirectory("artifacts");
File.WriteAllText("artifacts/what-a-positive-is-worth.svg", svg.ToString());
Console.WriteLine();
Console.WriteLine("wrote artifacts/what-a-positive-is-worth.svg");
