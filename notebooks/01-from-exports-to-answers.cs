#!/usr/bin/env dotnet
#:project ../src/ScreenStats/ScreenStats.csproj
#:project ../src/ScreenStats.Statistics/ScreenStats.Statistics.csproj
#:project ../src/ScreenStats.Counting/ScreenStats.Counting.csproj
#:project ../src/ScreenStats.Evaluation/ScreenStats.Evaluation.csproj
#:project ../src/ScreenStats.Records/ScreenStats.Records.csproj
#:project ../src/ScreenStats.Reporting/ScreenStats.Reporting.csproj
#:package Microsoft.Data.Analysis
#:property PublishAot=false

// From exports to answers, through the library's face.
// Run it from the top of the checkout: dotnet run notebooks/01-from-exports-to-answers.cs

using ScreenStats;
using ScreenStats.Evaluation;
using ScreenStats.Reporting;
using ScreenStats.Statistics.Proportions;

// 1. Open a program: a folder of exports, with a program.json that says what cannot be seen in them.
var program = ScreeningProgram.Open("sample-data/marrowlight");

// 2. Read it. Rows become counts; every row is accounted for in the ledger. From here on no person exists.
var reading = program.Read();
Console.WriteLine($"{reading.Diagnostics.Length} kinds of findings in the data; the first three:");
foreach (var diagnostic in reading.Diagnostics.Take(3)) Console.WriteLine($"  {diagnostic.Code}: {diagnostic.Message}");

// 3. Evaluate. The answers come first, each with its figure, its interval and the condition under which it holds.
var findings = reading.Tally.Evaluate(program.Settings);
Console.WriteLine();
foreach (var sentence in findings.Answers.Sentences) Console.WriteLine(sentence.Text);

// 4. Every finding is a table, and every table a data frame: here positivity by site.
Console.WriteLine();
Console.WriteLine(findings.Positivity.By(Grouping.Site).ToDataFrame().Head(6));

// 5. Rows stay typed. Which lots need looking into?
foreach (var lot in findings.Lots.Where(lot => lot.Flag != Flag.None)) Console.WriteLine($"look into lot {lot.Lot}: {lot.Flag}");

// 6. Single methods are there by name, with the inputs in the result.
var interval = ProportionInterval.Wilson(81, 263, confidence: 0.95);
Console.WriteLine(FormattableString.Invariant($"81/263 = {interval.Estimate:0.0000} ({interval.Lower:0.0000} to {interval.Upper:0.0000})"));

// 7. And the whole report, as the runner writes it.
Report.Write(findings, "artifacts/notebook-report");
Console.WriteLine("wrote artifacts/notebook-report/report.html");
