#!/usr/bin/env dotnet
#:project ../src/ScreenStats.Statistics/ScreenStats.Statistics.csproj
#:property PublishAot=false

// A bad lot: how soon does a nightly alarm see it, and how often does it cry without cause?
// Run it from the top of the checkout: dotnet run notebooks/05-when-the-alarm-comes.cs
// More programs, less noise in the figures: dotnet run notebooks/05-when-the-alarm-comes.cs -- 20000

using System.Globalization;
using System.Text;
using ScreenStats.Statistics.Monitoring.Lots;
using ScreenStats.Statistics.Monitoring.Sequential.Evidence;

// 1. The program. Ten lots are in use side by side for half a year, each for a tenth of the tests. A sound lot has one positive refuted by the
//    confirmatory test every 20 days; a faulty one has θ times as many from some day on. Each evening we look at all ten.
const int Lots = 10, Days = 180;
const double PerDay = 0.05, Alpha = 0.01;
var programs = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 2_000;

// 2. Three ways to look.
//    - "the same test every day": an exact test of each lot's refuted positives so far, given those of all lots, adjusted for ten lots, at 1 %. It
//      is right on any one day that was fixed beforehand. But a chance of 1 % tonight, another tomorrow, and so on for 180 evenings is not
//      a chance of 1 %: whoever looks often enough at a sound lot and stops when the figures are bad will see bad figures.
//    - "adjusted for 180 days": the same at 1 % / 180, so that all evenings together hold 1 %. That is honest, but one must know beforehand
//      how long one will look, and the longer that is the later the alarm.
//    - "evidence": what ScreenStats does. Every refuted positive falls on some lot; on a sound lot with its share of the tests, here p = 1/10. Think of
//      a bet at fair odds: you start with 1 and bet at each event that the lot is worse than the others by a factor θ. If the event falls on it you get
//      q/p times your money, else (1-q)/(1-p) times, q = θp / (1 - p + θp). If the lot is sound the bet is fair: on average, you neither win nor lose. So
//      a player who holds 1,000 times the stake has either been very lucky or the lot is not sound. How lucky? Ville's inequality
//      (1939) says it in one line: in a fair game the chance of EVER holding c times the stake is at most 1/c. Ever: not tonight, but on any of all
//      evenings, so you may look whenever you like and stop when you like. With ten lots the alarm is at 10 / 1 % = 1,000.
//      Nobody knows θ or the day on which the fault began, so the stake is spread over θ = 2, 4, …, 64 and over the weeks.
string[] ways = ["the same test every day", "adjusted for 180 days", "evidence"];
var tails = new Dictionary<(long, long), double>();
double Tail(long onLot, long all)
{
    if (!tails.TryGetValue((onLot, all), out var tail))
        tails[(onLot, all)] = tail = StratifiedExactTest.Binomial([new SharedStratum(onLot, all, 1.0 / Lots)]).AtLeastAsMany;
    return tail;
}

// The first alarm of each way: on any lot where all are sound, else on the faulty one. Day 0 is the first day; null where none comes.
int?[] FirstAlarms(Random random, double factor, int faultFrom)
{
    var first = new int?[ways.Length];
    var counts = new long[Lots];
    var evidence = Enumerable.Range(0, Lots).Select(_ => new RestartingEvidence(RestartingEvidence.Excess)).ToArray();
    var threshold = AlarmThreshold.OfLots(Lots, Alpha).LogEvidence;
    for (var day = 0; day < Days; day++)
    {
        var today = new long[Lots];
        for (var lot = 0; lot < Lots; lot++) today[lot] = Poisson(random, PerDay * (lot == 0 && day >= faultFrom ? factor : 1));
        var events = today.Sum();
        if (events == 0) continue;
        for (var lot = 0; lot < Lots; lot++) counts[lot] += today[lot];
        var all = counts.Sum();
        for (var lot = 0; lot < (factor > 1 ? 1 : Lots); lot++)
        {
            var adjusted = Lots * Tail(counts[lot], all);
            evidence[lot].StartAt((day / 7) + 1);
            evidence[lot].Add(1.0 / Lots, today[lot], events);
            if (adjusted < Alpha) first[0] ??= day;
            if (adjusted * Days < Alpha) first[1] ??= day;
            if (evidence[lot].LogEvidence >= threshold) first[2] ??= day;
        }
    }

    return first;
}

// 3. No lot is faulty: how often is there an alarm at any time in half a year?
var random = new Random(20_261_125);
var sound = Enumerable.Range(0, programs).Select(_ => FirstAlarms(random, 1, 0)).ToList();
Console.WriteLine(FormattableString.Invariant($"{programs} programs of {Lots} lots and {Days} days; seed 20261125"));
Console.WriteLine();
Console.WriteLine("All lots sound: share of programs with any alarm in half a year (promised: at most 1 %)");
for (var way = 0; way < ways.Length; way++)
    Console.WriteLine(FormattableString.Invariant($"  {ways[way],-24} {100.0 * sound.Count(one => one[way] is not null) / programs,6:0.00} %"));

// 4. One lot is faulty, from the first day or from day 90 on: how many days until the alarm, and in how many programs does it come at all? Programs with an
//    alarm before the fault are left out. The same test every day is the fastest because it cries without cause; the fair race is
//    between the other two. Against a fault from the first day evidence is a little sooner, and it needs no last day; against one that begins late
//    it is far ahead: the test counts the good months in the lot's favour, evidence bets on every week anew.
Console.WriteLine();
Console.WriteLine("One lot faulty: median days from the fault to the alarm, and share of programs with the alarm before the end");
Console.WriteLine("fault    begins on day   " + string.Join("   ", ways.Select(way => way.PadLeft(24))));
var fivefold = new Dictionary<int, List<int?[]>>();
foreach (var from in (int[])[0, 90])
{
    foreach (var factor in (double[])[2, 3, 5, 10, 20])
    {
        var faulty = Enumerable.Range(0, programs / 2).Select(_ => FirstAlarms(random, factor, from)).ToList();
        if (factor == 5) fivefold[from] = faulty;
        var cells = Enumerable.Range(0, ways.Length).Select(way =>
        {
            var fair = faulty.Where(one => one[way] is null || one[way] >= from).ToList();
            var days = fair.Select(one => one[way] - from ?? int.MaxValue).Order().ToList();
            var median = days[days.Count / 2];
            return FormattableString.Invariant($"{(median == int.MaxValue ? "not by the end" : $"{median + 1} days"),14} {100.0 * days.Count(day => day < int.MaxValue) / days.Count,6:0} %").PadLeft(24);
        });
        Console.WriteLine(FormattableString.Invariant($"{factor,4}-fold {from,14}   ") + string.Join("   ", cells));
    }
}

// 5. The picture: left, sound programs with an alarm by each day; right, programs with a fivefold fault from day 90 with the alarm by each day.
const int Width = 460, Height = 300;
string[] dashes = ["2 4", "8 4", "none"];
string[] colours = ["#b3541e", "#5b5b5b", "#1d4e6b"];
var svg = new StringBuilder();
svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {2 * Width} {Height + 50}\" role=\"img\" font-family=\"sans-serif\" font-size=\"12\">\n");
svg.Append("<title>When the alarm comes</title><desc>Share of programs with an alarm by day, for three ways to look; left with sound lots only, right with a fivefold fault from day 90 on.</desc>\n");
void Panel(int left, string title, List<int?[]> all, double top)
{
    double X(double day) => left + 50 + (day / Days * (Width - 70));
    double Y(double share) => 30 + ((1 - (share / top)) * (Height - 70));
    svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{left + 50}\" y=\"18\">{title}</text>\n");
    for (var tick = 0; tick <= 4; tick++)
        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{left + 44}\" y=\"{Y(top * tick / 4) + 4:0.0}\" text-anchor=\"end\">{100 * top * tick / 4:0.#} %</text><path d=\"M{X(0):0.0} {Y(top * tick / 4):0.0}H{X(Days):0.0}\" stroke=\"#ddd\"/>\n");
    for (var day = 0; day <= Days; day += 30)
        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{X(day):0.0}\" y=\"{Height - 22}\" text-anchor=\"middle\">{day}</text>\n");
    svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{X(Days / 2.0):0.0}\" y=\"{Height - 6}\" text-anchor=\"middle\">day</text>\n");
    for (var way = 0; way < ways.Length; way++)
    {
        svg.Append(CultureInfo.InvariantCulture, $"<path fill=\"none\" stroke=\"{colours[way]}\" stroke-width=\"2\" stroke-dasharray=\"{dashes[way]}\" d=\"M{X(0):0.0} {Y(0):0.0}");
        for (var day = 0; day < Days; day++)
            svg.Append(CultureInfo.InvariantCulture, $"L{X(day + 1):0.0} {Y((double)all.Count(one => one[way] <= day) / all.Count):0.0}");
        svg.Append("\"/>\n");
    }
}

var most = Enumerable.Range(0, ways.Length).Max(way => (double)sound.Count(one => one[way] is not null) / programs);
Panel(0, "Sound lots: alarms without cause by day", sound, Math.Max(0.02, Math.Ceiling(most * 50) / 50));
Panel(Width, "Fivefold fault from day 90: alarms by day", fivefold[90], 1);
for (var way = 0; way < ways.Length; way++)
    svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{50 + (way * 280)} {Height + 24}h36\" stroke=\"{colours[way]}\" stroke-width=\"2\" stroke-dasharray=\"{dashes[way]}\"/><text x=\"{92 + (way * 280)}\" y=\"{Height + 28}\">{ways[way]}</text>\n");
svg.Append("</svg>\n");
Directory.CreateDirectory("artifacts");
File.WriteAllText("artifacts/when-the-alarm-comes.svg", svg.ToString());
Console.WriteLine();
Console.WriteLine("wrote artifacts/when-the-alarm-comes.svg");

static long Poisson(Random random, double mean)
{
    var (limit, product, count) = (Math.Exp(-mean), random.NextDouble(), 0L);
    while (product > limit)
    {
        product *= random.NextDouble();
        count++;
    }

    return count;
}
