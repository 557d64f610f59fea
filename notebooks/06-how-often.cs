#!/usr/bin/env dotnet
#:project ../src/ScreenStats/ScreenStats.csproj
#:project ../src/ScreenStats.Statistics/ScreenStats.Statistics.csproj
#:project ../src/ScreenStats.Counting/ScreenStats.Counting.csproj
#:project ../src/ScreenStats.Evaluation/ScreenStats.Evaluation.csproj
#:project ../src/ScreenStats.Records/ScreenStats.Records.csproj
#:property PublishAot=false

// How often to screen: from a formula that fits on a napkin to the answer of the report, and held against a workforce whose truth we set.
// Run it from the top of the checkout: dotnet run notebooks/06-how-often.cs
// A negative screen does not rule out infection, and local rules on who stays away and for how long come before any figure here.

using System.Globalization;
using System.Text;
using ScreenStats;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Statistics.Cadence.Correlation;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Intervals;

string Percent(double? share) => share is { } some ? (100 * some).ToString("0.0", CultureInfo.InvariantCulture) + " %" : "-";
double[] intervals = [1, 2, 3.5, 7, 14, 30];

// 1. The formula. An infection can be detected from day 2 to 12 and is passed on from day 3 to 9; a screen in that window is positive with chance 0.7. Nobody knows
//    when it began, so the first screen falls anywhere. That is enough for the chance to find it and the share of the infectious days that fall after somebody is sent
//    home. What to look at is the last column, what ONE MORE screen adds: the average flatters the frequent options, because the first screens did the work.
var windows = new InfectionWindows(2, 12, 3, 9);
const double Sensitivity = 0.7;
Console.WriteLine("1. One infection, by the formula (result at once)");
Console.WriteLine("every   screens in   found   infectious   with a delay   added by each");
Console.WriteLine("days    30 days              days gone    of 1 day       more screen");
(double Screens, double Removed) before = (0, 0);
foreach (var days in intervals.Reverse())
{
    var routine = new ScreeningRoutine(days, Sensitivity);
    var removed = ScreeningYield.FractionRemoved(routine, windows, delayDays: 0).Value!.Value;
    Console.WriteLine(FormattableString.Invariant(
        $"{days,5} {30 / days,11:0.0} {Percent(ScreeningYield.DetectionProbability(routine, windows)),9} {Percent(removed),11} {Percent(ScreeningYield.FractionRemoved(routine, windows, 1).Value),14} {100 * (removed - before.Removed) / ((30 / days) - before.Screens),11:0.0} points"));
    before = (30 / days, removed);
}

double Kept(double days, double delay) => ScreeningYield.FractionRemoved(new ScreeningRoutine(days, Sensitivity), windows, delay).Value!.Value;
Console.WriteLine(FormattableString.Invariant(
    $"A day of delay costs a daily program {100 * (Kept(1, 0) - Kept(1, 1)):0} points, half of its screens {100 * (Kept(1, 0) - Kept(2, 0)):0}: mend the delay before you shorten the interval."));

// 2. By day. Real chances rise and fall. The by-day model takes any curve; with a box for a curve it must give the formula, and does to the last digits. With a curve
//    of the same mean the answer is another: what counts is the chance on the days before and while it is passed on, not the mean.
var box = InfectionCourse.Windows(windows, Sensitivity);
var curve = InfectionCourse.ByDay([new(2, 0, 0), new(3, 0.35, 0), new(5, 0.95, 1), new(7, 0.95, 0.8), new(9, 0.8, 0), new(12, 0.4, 0)]);
var worst = intervals.Max(days => Math.Abs(
    CourseYield.Of(box, ScreeningSchedule.Every(days), new ScreeningRules()).FractionRemoved.Value!.Value - ScreeningYield.FractionRemoved(new ScreeningRoutine(days, Sensitivity), windows, 0).Value!.Value));
if (worst > 1e-9) throw new InvalidOperationException("A box must give the closed form.");
Console.WriteLine();
Console.WriteLine(FormattableString.Invariant($"2., 3. By day: a box gives the formula (largest difference {worst:0.0E+0}); a curve does not"));

// 3. Who is missed once is missed again. Swabs, noses and loads differ between people, so that the misses of one person go together. A correlation of 0 multiplies chances as if
//    each screen were a new person's; near 1 more screens find nothing more. It costs the frequent options most, for they live on second chances.
var symptoms = new SymptomOnset(share: 0.5, medianDays: 5, logSpread: 0.35, isolationShare: 0.9);
Console.WriteLine("every   box     curve   curve, misses repeat with correlation   and half get symptoms,   on Mondays and Thursdays only");
Console.WriteLine("days                       0.2       0.5       0.9             90 % of them stay away    4 in 5 screens taken");
foreach (var days in (ReadOnlySpan<double>)[1, 2, 3.5, 7, 14])
{
    string Removed(InfectionCourse course, double correlation) => Percent(CourseYield.Of(course, ScreeningSchedule.Every(days), new ScreeningRules { MissCorrelation = correlation }).FractionRemoved.Value);
    var fixedDays = days == 3.5 ? Percent(CourseYield.Of(curve, ScreeningSchedule.OnWeekdays([DayOfWeek.Monday, DayOfWeek.Thursday]) with { Participation = 0.8 }, new ScreeningRules { MissCorrelation = 0.2 }).FractionRemoved.Value) : "";
    Console.WriteLine(FormattableString.Invariant($"{days,5} {Removed(box, 0),8} {Removed(curve, 0),8} {Removed(curve, 0.2),8} {Removed(curve, 0.5),9} {Removed(curve, 0.9),9} {Removed(curve with { Symptoms = symptoms }, 0.2),18} {fixedDays,30}"));
}

// How large the correlation is must come from people tested again and again. Here a public table of rapid tests two days apart (of people positive by PCR on the first day): among those
//    without symptoms independent misses would give 89 % found by three tests, 56 % were. A table cannot tell how much of that is people who are missed again, how much
//    people who had recovered or left in between. Under every assumption on that the estimate is another: state a range, and look in the report at what it does.
var serial = SerialTestFit.Of(SerialTests.AntigenLetter2022, new SerialTestOptions());
var bounds = SerialTestFit.Bounds(SerialTests.AntigenLetter2022);
Console.WriteLine();
Console.WriteLine("3. Found by the first tests of people without symptoms, two days apart");
Console.WriteLine("tests   observed   were misses independent   as fitted");
foreach (var cell in serial.Cells.Where(cell => cell.Cell is { Group: "without symptoms", Day: 0 }))
    Console.WriteLine($"{cell.Cell.Tests,5} {Percent(cell.Observed.Value),10} {Percent(cell.Independent),25} {Percent(cell.Fitted),11}");
Console.WriteLine(FormattableString.Invariant($"correlation of misses: {serial.Correlation.Value:0.00} (limits {serial.Correlation.Lower:0.00} to {serial.Correlation.Upper:0.00}); under other assumptions {bounds.Estimates!.Value.Lower:0.00} to {bounds.Estimates.Value.Upper:0.00}"));

// 4. A workforce whose truth we set: 900 people, half a year, 60 infections per 100,000 person-days, all brought in. They are to be screened on Mondays and Thursdays; four in five
//    screens are taken. The course is the box of above, misses repeat with correlation 0.3, two in a thousand screens of healthy people are positive, and every positive goes
//    to a confirmatory test that errs never. Whoever is confirmed stays away for ten days.
const int People = 900, Days = 182, Away = 10;
const double Incidence = 0.0006, Correlation = 0.3, Specificity = 0.998, Taken = 0.8, Threshold = 0.5244005127080407; // the 0.7 quantile of the normal distribution
var random = new Random(20_260_206);
double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
bool Positive(double person) => (Math.Sqrt(Correlation) * person) + (Math.Sqrt(1 - Correlation) * Normal()) < Threshold;
bool Detectable(double age) => age is >= 2 and < 12;
var first = new DateOnly(2025, 9, 1);
var (screens, confirmatory) = (new StringBuilder("person,site,collected_at,result\n"), new StringBuilder("person,collected_at,result\n"));
var (infections, found, infectiousDaysGone, runs) = (0, 0, 0.0, 0);
for (var person = 0; person < People; person++)
{
    var (effect, infectedAt, awayUntil, known) = (Normal(), double.PositiveInfinity, -1.0, false);
    for (var day = 0; day < Days; day++)
    {
        if (double.IsPositiveInfinity(infectedAt) && random.NextDouble() < Incidence) (infectedAt, infections) = (day + random.NextDouble(), infections + 1);
        if (first.AddDays(day).DayOfWeek is not (DayOfWeek.Monday or DayOfWeek.Thursday) || day < awayUntil || random.NextDouble() >= Taken) continue;
        var age = day + 0.5 - infectedAt;
        var infected = Detectable(age);
        var positive = infected ? Positive(effect) : random.NextDouble() > Specificity;
        runs++;
        screens.Append(CultureInfo.InvariantCulture, $"p{person},Main works,{first.AddDays(day):yyyy-MM-dd},{(positive ? "positive" : "negative")}\n");
        if (!positive) continue;
        confirmatory.Append(CultureInfo.InvariantCulture, $"p{person},{first.AddDays(day):yyyy-MM-dd},{(infected ? "positive" : "negative")}\n");
        if (!infected || known) continue;
        (known, awayUntil, found) = (true, day + Away, found + 1);
        infectiousDaysGone += Math.Clamp(9 - age, 0, 6);
    }
}

// 5. The report gets the two exports and what a company would state: the course, how far misses repeat, what was planned, what a thousand screens must remove. It is told neither the
//    incidence nor who took part. Three ways to say how much infection comes in: the positivity of the screens is a share of screens and goes up when people are screened less;
//    cases by person-day are too few, for some infections were never found; the third divides by the chance to be found under the gaps as they were.
const string Folder = "artifacts/how-often";
Directory.CreateDirectory(Folder);
File.WriteAllText(Path.Combine(Folder, "screening.csv"), screens.ToString());
File.WriteAllText(Path.Combine(Folder, "confirmatory.csv"), confirmatory.ToString());
File.WriteAllText(Path.Combine(Folder, "program.json"), """
    {
      "title": "A workforce whose truth is known (drawn)", "timeZone": "Etc/UTC",
      "cadence": {
        "options": ["none", "monthly", "fortnightly", "weekly", {"weekdays": ["Monday", "Thursday"], "name": "Mondays and Thursdays"}, "every-second-day", "daily"],
        "planned": {"weekdays": ["Monday", "Thursday"], "name": "Mondays and Thursdays"},
        "course": {
          "kind": "windows", "source": "fictional study",
          "detectable": {"from": {"value": 2, "lower": 1.6, "upper": 2.5}, "to": {"value": 12, "lower": 11, "upper": 13}},
          "infectious": {"from": {"value": 3, "lower": 2.5, "upper": 3.5}, "to": {"value": 9, "lower": 8, "upper": 10}}
        },
        "sensitivity": {"value": 0.7, "lower": 0.6, "upper": 0.79}, "repeatedMisses": {"value": 0.3, "lower": 0.1, "upper": 0.5},
        "delayDays": 0, "broughtIn": 1, "worthwhile": 2, "falseAlarmDays": 1, "people": 900, "days": 91, "source": "fictional committee"
      }
    }

    """);
var program = ScreeningProgram.Open(Folder);
var findings = program.Read().Tally.Evaluate(program.Settings);
var cadence = findings.Cadence;
CadenceAssumption Assumed(string name) => cadence.Assumptions.Single(row => row.Assumption == name);
Console.WriteLine();
Console.WriteLine(FormattableString.Invariant($"4., 5. A workforce with known truth: {infections} infections, {found} found, {runs:N0} screens"));
Console.WriteLine("infections per 100,000 person-days:");
Console.WriteLine(FormattableString.Invariant($"   the positivity of the screens, taken for it   {1e5 * found / runs,6:0.0}   (a share of screens, not a rate)"));
Console.WriteLine(FormattableString.Invariant($"   cases found by person-day                     {1e5 * Assumed("found-per-person-day").Value,6:0.0}   (too few: a lower bound)"));
var incidence = Assumed("incidence");
Console.WriteLine(FormattableString.Invariant($"   by the chance to be found under the real gaps {1e5 * incidence.Value,6:0.0}   ({1e5 * incidence.Lower:0.0} to {1e5 * incidence.Upper:0.0})"));
Console.WriteLine(FormattableString.Invariant($"   that happened                                 {1e5 * infections / (People * (double)Days),6:0.0}   (drawn at {1e5 * Incidence:0.0})"));
if (!(incidence.Lower <= Incidence && Incidence <= incidence.Upper)) throw new InvalidOperationException("The limits should hold the incidence that was set.");

// 6. The options, against the truth. The truth comes from drawing infections and screens one by one, not from the model: it knows nothing of quadrature. The limits are wide,
//    and mostly not for want of data: what is not known is the course and the sensitivity. That is why the tornado of the report stands beside its picture.
double Truth(Func<double, IEnumerable<double>> schedule)
{
    const int Draws = 20_000;
    var gone = 0.0;
    for (var draw = 0; draw < Draws; draw++)
    {
        var effect = Normal();
        foreach (var age in schedule(random.NextDouble()))
        {
            if (age >= 12) break;
            if (age < 2 || random.NextDouble() >= Taken || !Positive(effect)) continue;
            gone += Math.Clamp(9 - age, 0, 6);
            break;
        }
    }

    return gone / (6 * Draws);
}

IEnumerable<double> Every(double days, double phase)
{
    for (var age = phase * days; age < 12; age += days) yield return age;
}

IEnumerable<double> MondaysAndThursdays(double phase)
{
    var from = 7 * phase;
    for (var week = 0; week < 4; week++)
    {
        foreach (var day in (double[])[0.5, 3.5])
        {
            if ((7 * week) + day >= from) yield return (7 * week) + day - from;
        }
    }
}

Console.WriteLine();
Console.WriteLine("6. Share of infectious days removed in the next quarter");
Console.WriteLine("option                    screens   false     removed (95 % limits)       true     for each 1,000 more screens");
Console.WriteLine("                                    alarms                                         infectious days (limits)");
var rows = new List<(string Name, double Burden, double Share, double Lower, double Upper, double True, bool Planned, bool Chosen)>();
foreach (var option in cadence.Options.Where(option => !option.IsAsDone))
{
    var share = cadence.Outcome(option.Option, CadenceMeasure.ShareRemoved)!.Figure;
    var screensOf = cadence.Outcome(option.Option, CadenceMeasure.Screens)!.Figure.Estimate!.Value;
    var truth = option.IsNone ? 0 : option.IsPlanned ? Truth(MondaysAndThursdays) : Truth(phase => Every(option.EveryDays!.Value, phase));
    rows.Add((option.Option, screensOf / cadence.People / cadence.Days * 30, share.Estimate!.Value, share.Lower!.Value, share.Upper!.Value, truth, option.IsPlanned, option.IsChosen));
    var step = cadence.Steps.FirstOrDefault(step => step.Leads && step.To == option.Option)?.PerThousandScreens;
    Console.WriteLine(FormattableString.Invariant(
        $"{option.Option + (option.IsChosen ? " *" : ""),-23} {screensOf,9:N0} {cadence.Outcome(option.Option, CadenceMeasure.FalseAlarms)!.Figure.Estimate,8:0.0}   {Percent(share.Estimate),7} ({Percent(share.Lower)} to {Percent(share.Upper)}){"",3} {Percent(truth),8}     {(step is null ? "" : FormattableString.Invariant($"{step.Estimate:0.00} ({step.Lower:0.00} to {step.Upper:0.00})"))}"));
    if (truth < share.Lower - 0.005 || truth > share.Upper + 0.005) throw new InvalidOperationException($"The limits of {option.Option} should hold the truth.");
}

var done = cadence.Outcome(CadenceOptionFinding.AsDone, CadenceMeasure.ShareRemoved)!.Figure;
Console.WriteLine(FormattableString.Invariant($"as done, by the real gaps: {Percent(done.Estimate)} ({Percent(done.Lower)} to {Percent(done.Upper)}); of the infections that were drawn: {Percent(infectiousDaysGone / (6.0 * infections))}"));
Console.WriteLine();
Console.WriteLine("What the report says of it (* chosen: what a thousand more screens must remove is a decision of the company, not of the model):");
foreach (var sentence in cadence.Sentences) Console.WriteLine("  " + sentence.Text);
foreach (var choice in cadence.Choices.Where(choice => choice.Leads && choice.ShareOfDraws >= 0.05)) Console.WriteLine($"  {choice.Option}: chosen in {Percent(choice.ShareOfDraws)} of the draws");
foreach (var swing in cadence.Swings.Take(3)) Console.WriteLine(FormattableString.Invariant($"  matters most: {swing.Name}, {swing.Low:0} to {swing.High:0} infectious days removed between the ends of its range"));

// 7. What this cannot do. A course that is wrong altogether is in no limits. Who avoids the screen because of a sore throat is not in the participation. And here all infections were
//    brought in: where some spread inside, fewer infections follow from each one that is caught, and the gain is larger; the report then needs to know how many are brought in,
//    or gives both bounds.

// 8. The picture: left, what assumptions do to the same schedule; right, the answer with its limits, and the truth.
const int Width = 480, Height = 360, Top = 40, Bottom = 50;
var svg = new StringBuilder();
svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {2 * Width} {Height + 30}\" role=\"img\" font-family=\"sans-serif\" font-size=\"12\">\n");
svg.Append("<title>How often to screen</title><desc>Share of infectious days removed by screens per person in 30 days: left, from the closed form, with misses that repeat, and with a delay; right, the answer of the report with its limits and the truth.</desc>\n");
svg.Append("<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n");
double X(double burden, int panel) => (panel * Width) + 50 + (burden / 31 * (Width - 80));
double Y(double share) => Top + ((1 - share) * (Height - Top - Bottom));
foreach (var (panel, title) in (ReadOnlySpan<(int, string)>)[(0, "The same screens under other assumptions"), (1, "The answer, its limits, and the truth")])
{
    svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{X(0, panel):0}\" y=\"20\" font-weight=\"bold\">{title}</text>\n");
    for (var tick = 0; tick <= 100; tick += 20) svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{X(0, panel):0.0} {Y(tick / 100.0):0.0}H{X(31, panel):0.0}\" stroke=\"#ddd\"/><text x=\"{X(0, panel) - 6:0.0}\" y=\"{Y(tick / 100.0) + 4:0.0}\" text-anchor=\"end\">{tick} %</text>\n");
    for (var tick = 0; tick <= 30; tick += 10) svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{X(tick, panel):0.0}\" y=\"{Height - Bottom + 18}\" text-anchor=\"middle\">{tick}</text>\n");
    svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{X(15.5, panel):0.0}\" y=\"{Height - Bottom + 36}\" text-anchor=\"middle\">screens per person in 30 days</text>\n");
}

double[] many = [.. Enumerable.Range(0, 60).Select(index => Math.Exp(Math.Log(40) * (1 - (index / 59.0))))];
foreach (var (name, delay, correlation, dash, off) in (ReadOnlySpan<(string, double, double, string, double)>)
    [("result at once, misses independent", 0, 0, "none", -9), ("misses repeat (correlation 0.9)", 0, 0.9, "6 3", 27), ("result after 2 days", 2, 0, "2 3", 27)])
{
    svg.Append(CultureInfo.InvariantCulture, $"<path fill=\"none\" stroke=\"#1d4e6b\" stroke-width=\"2\" stroke-dasharray=\"{dash}\" d=\"M{X(0, 0):0.0} {Y(0):0.0}");
    double Gone(double days) => CourseYield.Of(box, ScreeningSchedule.Every(days), new ScreeningRules { DelayDays = delay, MissCorrelation = correlation }).FractionRemoved.Value!.Value;
    foreach (var days in many) svg.Append(CultureInfo.InvariantCulture, $"L{X(30 / days, 0):0.0} {Y(Gone(days)):0.0}");
    svg.Append(CultureInfo.InvariantCulture, $"\"/><text x=\"{X(31, 0):0.0}\" y=\"{Y(Gone(1)) + off:0.0}\" text-anchor=\"end\">{name}</text>\n");
}

svg.Append("<path fill=\"#1d4e6b\" fill-opacity=\"0.14\" d=\"M");
foreach (var row in rows) svg.Append(CultureInfo.InvariantCulture, $"{X(row.Burden, 1):0.0} {Y(row.Upper):0.0} ");
foreach (var row in Enumerable.Reverse(rows)) svg.Append(CultureInfo.InvariantCulture, $"{X(row.Burden, 1):0.0} {Y(row.Lower):0.0} ");
svg.Append("Z\"/><path fill=\"none\" stroke=\"#1d4e6b\" stroke-width=\"2\" d=\"M");
foreach (var row in rows) svg.Append(CultureInfo.InvariantCulture, $"{X(row.Burden, 1):0.0} {Y(row.Share):0.0} ");
svg.Append("\"/>\n");
foreach (var row in rows)
{
    svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{X(row.Burden, 1):0.0}\" cy=\"{Y(row.Share):0.0}\" r=\"4\" fill=\"#1d4e6b\"/><path d=\"M{X(row.Burden, 1) - 8:0.0} {Y(row.True):0.0}h16\" stroke=\"#000\" stroke-width=\"2\"/>\n");
    if (row.Burden > 2.5 || row.Chosen) svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{X(row.Burden, 1) + (row.Burden > 20 ? -4 : 8):0.0}\" y=\"{Y(row.Lower) + 14:0.0}\" text-anchor=\"{(row.Burden > 20 ? "end" : "start")}\"{(row.Planned || row.Chosen ? " font-weight=\"bold\"" : "")}>{row.Name}{(row.Planned ? ", planned" : "")}{(row.Chosen ? ", chosen" : "")}</text>\n");
}

svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{Width + 60}\" cy=\"{Height + 6}\" r=\"4\" fill=\"#1d4e6b\"/><text x=\"{Width + 70}\" y=\"{Height + 10}\">the report</text><path d=\"M{Width + 160} {Height + 6}h16\" stroke=\"#000\" stroke-width=\"2\"/><text x=\"{Width + 182}\" y=\"{Height + 10}\">true</text>\n</svg>\n");
File.WriteAllText("artifacts/how-often.svg", svg.ToString());
Console.WriteLine();
Console.WriteLine("wrote artifacts/how-often.svg");
