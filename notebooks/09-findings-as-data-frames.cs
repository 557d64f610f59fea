#!/usr/bin/env dotnet
#:project ../src/ScreenStats/ScreenStats.csproj
#:project ../src/ScreenStats.Statistics/ScreenStats.Statistics.csproj
#:project ../src/ScreenStats.Counting/ScreenStats.Counting.csproj
#:project ../src/ScreenStats.Evaluation/ScreenStats.Evaluation.csproj
#:project ../src/ScreenStats.Records/ScreenStats.Records.csproj
#:package Microsoft.Data.Analysis
#:package ScottPlot
#:property PublishAot=false

// Findings as data frames, and your own plots: the report answers the usual questions; yours is another one. Every table of the evaluation is a data frame, so join, filter, group and draw.
// Run it from the top of the checkout: dotnet run notebooks/09-findings-as-data-frames.cs

using System.Globalization;
using Microsoft.Data.Analysis;
using ScottPlot;
using ScreenStats;
using ScreenStats.Evaluation;
using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Proportions;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
long Whole(object cell) => Convert.ToInt64(cell, CultureInfo.InvariantCulture);
var program = ScreeningProgram.Open("sample-data/marrowlight");
var findings = program.Read().Tally.Evaluate(program.Settings);

// 1. A table is a frame. Columns have the names of the csv file beside the report (tables/columns.csv says what each means), proportions are fractions, and a figure that is not defined is
//    null, never 0 and never NaN. A frame is for findings: never read exports with DataFrame.LoadCsv, which makes the person 002 the number 2.
var positivity = findings.Positivity.By(Grouping.Site).ToDataFrame();
Console.WriteLine("1. Positivity by site");
Console.WriteLine(string.Join(", ", positivity.Columns.Select(column => column.Name)));
foreach (var row in positivity.Rows)
    Console.WriteLine(FormattableString.Invariant($"  {row["level"],-12} {row["positives"],5} of {row["tests"],6}   {row["estimate"]:0.0000}  ({row["widened_lower"]:0.0000} to {row["widened_upper"]:0.0000})"));

// 2. Join two tables: is a site with many positives also one with many unusable runs? Frames join by a column; names that stand in both get a suffix.
var unusable = findings.InvalidRuns.By(Grouping.Site).ToDataFrame();
var joined = positivity.Merge(unusable, ["level"], ["level"], "_positive", "_unusable", JoinAlgorithm.Inner);
Console.WriteLine();
Console.WriteLine("2. Positivity beside unusable runs");
foreach (var row in joined.Rows.OrderByDescending(row => (double)row["estimate_unusable"]))
    Console.WriteLine(FormattableString.Invariant($"  {row["level_positive"],-12} {row["estimate_positive"]:0.0000}   {row["estimate_unusable"]:0.0000}"));
if (joined.Rows.Count != positivity.Rows.Count) throw new InvalidOperationException("Every site stands in both tables.");

// 3. Filter and add a column. Which sites had more than two unusable runs in a hundred? A condition on a column is a column of yes and no; arithmetic on columns is a column. But a ratio of two rates that you make
//    yourself has no interval: take the counts and ask the library, as in the next line. (Picked afterwards as the worst of six, so it is a question to look into, not a verdict.)
var clumsy = joined.Filter(joined["estimate_unusable"].ElementwiseGreaterThan(0.02));
joined["unusable_for_each_positive"] = joined["estimate_unusable"] / joined["estimate_positive"];
Console.WriteLine();
foreach (var row in clumsy.Rows)
{
    var (events, trials) = (Whole(row["inconclusive"]) + Whole(row["invalid"]), Whole(row["runs"]));
    var (allEvents, allTrials) = (unusable.Rows.Sum(one => Whole(one["inconclusive"]) + Whole(one["invalid"])), unusable.Rows.Sum(one => Whole(one["runs"])));
    var ratio = ProportionRatio.Koopman(events, trials, allEvents - events, allTrials - trials);
    Console.WriteLine(FormattableString.Invariant($"3. {row["level_positive"]}: {events} unusable of {trials} runs, {ratio.Value:0.0} times as many as elsewhere ({ratio.Lower:0.0} to {ratio.Upper:0.0})"));
}

// 4. Group. From weeks to months: never average rates, add counts and let the library make the rate. The average of weekly rates gives a week of ten tests the same say as one of three thousand. Here
//    weeks are alike, so the two are near each other; an average still has no interval.
var weeks = findings.Positivity.By(Grouping.Period).ToDataFrame();
weeks["month"] = new StringDataFrameColumn("month", weeks.Rows.Select(row => ((DateTime)row["period_start"]).ToString("yyyy-MM", CultureInfo.InvariantCulture)));
var months = weeks.GroupBy("month").Sum("tests", "positives").OrderBy("month");
var average = weeks.GroupBy("month").Mean("estimate");
Console.WriteLine();
Console.WriteLine("4. By month          positivity    interval             average of weekly rates");
foreach (var row in months.Rows)
{
    var share = ProportionInterval.Wilson(Whole(row["positives"]), Whole(row["tests"]));
    var mean = average.Rows.Single(one => (string)one["month"] == (string)row["month"])["estimate"];
    Console.WriteLine(FormattableString.Invariant($"  {row["month"]} {share.Trials,7} tests {share.Estimate,10:0.00000}    {share.Lower:0.00000} to {share.Upper:0.00000}   {mean,10:0.00000}"));
}

if (months.Rows.Sum(row => Whole(row["tests"])) != findings.Positivity.Program.Trials) throw new InvalidOperationException("The months add up to the program.");

// 5. Your own plot. ScottPlot draws what a frame holds; on a machine without fonts it draws no text and says nothing, so name one that is there. Draw the interval with the point, always; make a point with few counts
//    faint; begin the axis at zero; say in the title what is to be seen. And do not let colour alone tell anything. A site that stands apart is a
//    question, not an answer: one of the sites below had the faulty lot (notebook 03), and why rates must be compared fairly is notebook 04.
Fonts.AddFontFile("Report Sans", "src/ScreenStats.Reporting/Assets/SourceSans3-Regular.ttf");
Fonts.Default = "Report Sans";
var ink = Color.FromHex("#1d4e6b");
Plot plot = new();
plot.Font.Set("Report Sans");
foreach (var (row, index) in joined.Rows.OrderBy(row => (double)row["estimate_positive"]).Select((row, index) => (row, index)))
{
    var (estimate, lower, upper) = (100 * (double)row["estimate_positive"], 100 * (double)row["widened_lower_positive"], 100 * (double)row["widened_upper_positive"]);
    var shade = Whole(row["positives"]) < 20 ? ink.WithAlpha(0.45) : ink;
    var line = plot.Add.Line(lower, index, upper, index);
    line.Color = shade;
    line.LineWidth = 2;
    var marker = plot.Add.Marker(estimate, index, MarkerShape.FilledCircle, 9, shade);
    marker.LegendText = "";
    var label = plot.Add.Text(FormattableString.Invariant($"{row["level_positive"]}  ({row["positives"]} of {row["tests"]})"), upper + 0.03, index);
    label.Alignment = Alignment.MiddleLeft;
    label.LabelFontColor = ink;
}

var all = 100 * findings.Positivity.Program.Estimate!.Value;
var rule = plot.Add.VerticalLine(all, 1.5f, Color.FromHex("#8a3d12"), LinePattern.Dashed);
rule.LabelText = "";
plot.Axes.SetLimits(0, 1.4 * 100 * positivity.Rows.Max(row => (double)row["widened_upper"]), -0.7, joined.Rows.Count - 0.3);
plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.EmptyTickGenerator();
plot.HideGrid();
plot.Axes.Bottom.Label.Text = "positive of valid tests, per cent (dashed: all sites); limits widened for clusters";
var apart = joined.Rows.Where(row => 100 * (double)row["widened_lower_positive"] > all || 100 * (double)row["widened_upper_positive"] < all).Select(row => (string)row["level_positive"]).ToList();
plot.Title(apart.Count == 0 ? "The limits of every site hold the positivity of all sites" : "Limits that leave out the positivity of all sites: " + string.Join(", ", apart));
Directory.CreateDirectory("artifacts");
plot.SavePng("artifacts/findings-as-data-frames.png", 900, 420);
File.WriteAllText("artifacts/findings-as-data-frames.svg", plot.GetSvgXml(900, 420));
Console.WriteLine();
Console.WriteLine("wrote artifacts/findings-as-data-frames.png and .svg");

// 6. Take a frame along. A csv from a frame is a table for another program; the report has all of them already, with what each column means, and typed in workbook.xlsx.
DataFrame.SaveCsv(months, "artifacts/positivity-by-month.csv");
Console.WriteLine("wrote artifacts/positivity-by-month.csv:");
Console.WriteLine(File.ReadAllText("artifacts/positivity-by-month.csv").TrimEnd());
