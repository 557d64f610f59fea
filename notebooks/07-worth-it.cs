#!/usr/bin/env dotnet
#:project ../src/ScreenStats/ScreenStats.csproj
#:project ../src/ScreenStats.Statistics/ScreenStats.Statistics.csproj
#:project ../src/ScreenStats.Counting/ScreenStats.Counting.csproj
#:project ../src/ScreenStats.Evaluation/ScreenStats.Evaluation.csproj
#:project ../src/ScreenStats.Records/ScreenStats.Records.csproj
#:property PublishAot=false

// Is it worth it: what screening costs for each of something, what the last step costs, what to choose at a price, when that turns, and how sure all of it is.
// Run it from the top of the checkout: dotnet run notebooks/07-worth-it.cs
// Money is never the whole of it: law, duty of care and what those who are screened want are in no sum here. Prices, people and places of the sample are fictional.

using System.Globalization;
using System.Text;
using ScreenStats;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Statistics.Cadence.Sojourn;
using ScreenStats.Statistics.Economics.Frontier;
using ScreenStats.Statistics.Economics.Turning;
using ScreenStats.Statistics.Economics.Uncertainty;
using ScreenStats.Statistics.Economics.Uncertainty.Acceptability;
using ScreenStats.Statistics.Economics.Uncertainty.Information;
using ScreenStats.Statistics.Economics.Yield;

string Money(double? amount) => amount is { } some ? some.ToString(Math.Abs(some) < 100 ? "N2" : "N0", CultureInfo.InvariantCulture) : "-";
string Number(double? figure, int digits = 1) => figure is { } some ? some.ToString("N" + digits, CultureInfo.InvariantCulture) : "-";
string Percent(double? share) => share is { } some ? (100 * some).ToString("0.0", CultureInfo.InvariantCulture) + " %" : "-";

var program = ScreeningProgram.Open("sample-data/marrowlight");
var tally = program.Read().Tally;
var findings = tally.Evaluate(program.Settings);
var (worth, cadence) = (findings.Worth, findings.Cadence);
var (value, judged) = (worth.Value!.Value, worth.Judged!);
Console.WriteLine(FormattableString.Invariant($"{program.Settings.Title}: options over {worth.Days} days for {worth.People} people, in {worth.Currency} of {worth.PriceYear}, perspective: {worth.Perspective}"));

// 1. Cost per what? The same money over five things. For each screen it looks cheap, and looks cheaper the more healthy people are screened. For each case it looks dear, and dearer the
//    better screening works: fewer infections leave fewer cases to find. Neither tells whether it was worth it, because nobody wants screens, or cases. What is wanted is fewer days on
//    which people infect others, and fewer infections; these cannot be counted, they come from a model, and their limits are wide. The first three are counted over the time of
//    the data, the last two are modelled over the days that options are compared for: their money is another, so that one must not be worked out from the other.
Console.WriteLine();
Console.WriteLine("1. Cost for each of something");
Console.WriteLine("                                   figure        limits");
foreach (var (measure, label) in (ReadOnlySpan<(string, string)>)
    [("total-cost", "in total, counted"), ("cost-per-screen", "for each screen"), ("cost-per-case", "for each case found"), ("cost-per-infectious-day", "for each infectious day removed"), ("cost-per-infection-averted", "for each infection averted")])
{
    var figure = worth.Figure(measure)?.Figure;
    Console.WriteLine($"{label,-32} {Money(figure?.Estimate),8}        {Money(figure?.Lower)} to {Money(figure?.Upper)}");
}

// The same bill in a calmer season, with half of the cases: "the cost of a case" doubles. Nothing got worse but the ratio.
StatedAmount Amount(EstimateFinding figure) => figure.Lower is { } lower && figure.Upper is { } upper ? new StatedAmount(figure.Estimate!.Value, lower, upper) : new StatedAmount(figure.Estimate!.Value);
var cost = ProgramCost.Of([.. worth.Costs.Where(item => !item.IsPart && item.Cost.Estimate is not null).Select(item => new CostItem(item.Name, Amount(item.Units), Amount(item.UnitCost)))]);
var cases = worth.Figure("total-cost")!.Figure.Estimate!.Value / worth.Figure("cost-per-case")!.Figure.Estimate!.Value;
foreach (var (label, found) in (ReadOnlySpan<(string, double)>)[("as it was", cases), ("half of the cases", cases / 2)])
{
    var each = CostYield.Per(cost, new StatedAmount(found));
    Console.WriteLine($"  {label,-18} {Number(found, 0),5} cases: {Money(each.Value)} for each (prices: {Money(each.Lower)} to {Money(each.Upper)})");
}

// 2. The last step. A famous sum: six tests for blood in the stool of 10,000 people, to be sure that no cancer of the bowel is missed. Each test finds 11 in 12 of those not found yet. After
//    six the average is still 2,451 dollars a cancer, which looks like a bargain; the sixth test alone found 0.0003 cancers, at 47 million each. An average over all steps
//    mixes the good money of the first with the bad money of the last. So look at each step alone. (Published figures from memory: Neuhauser and Lewicki, N Engl J Med 1975;293:226.)
var stool = new RepeatedTestPool
{
    People = 10_000, Cases = 71.94207, Sensitivity = 11.0 / 12, ProneToFalsePositive = 846.8389, FalsePositiveChance = 0.365079, CostOfFirstTest = 4, CostOfFurtherTest = 1, CostOfWorkUp = 100,
};
double[] published = [1_175, 5_492, 49_150, 469_534, 4_724_695, 47_107_214];
var tests = MarginalCost.Of([.. RepeatedTest.Of(stool, published.Length).Select(step => new OptionOutcome(step.Cost, step.Cases))]);
Console.WriteLine();
Console.WriteLine("2. Six tests of everybody, dollars for each case");
Console.WriteLine("tests   found    average   of the last step   as published");
foreach (var step in tests)
{
    Console.WriteLine(FormattableString.Invariant($"{step.Index + 1,5} {step.Outcome.Effect,8:0.0000} {Money(step.AverageCost.Value),9} {Money(step.MarginalCost.Value),18} {Money(published[step.Index]),14}"));
    // The authors divided by cases printed to four decimals: of what the sixth step adds that leaves one digit.
    if (Math.Abs((step.MarginalCost.Value!.Value / published[step.Index]) - 1) > (step.Index < 5 ? 0.001 : 0.07)) throw new InvalidOperationException("The published figures should come out.");
}

Console.WriteLine();
Console.WriteLine($"The sample, {worth.Currency} spent for each infection averted, against the next less frequent option:");
Console.WriteLine("                        average   of the last step");
var steps = worth.Figures.Where(figure => figure.Measure == "average-cost").Select(figure => (figure.Basis, Average: figure.Figure.Estimate, Last: worth.Figure("marginal-cost", figure.Basis)?.Figure.Estimate)).ToList();
foreach (var (name, average, last) in steps) Console.WriteLine($"{name,-22} {Money(average),8} {Money(last),18}");

// 3. The frontier. An option that costs more and does less than another is dominated, whatever an infection is worth. One that a mix of two others beats (some sites one way, the rest the other)
//    is extendedly dominated. What is left can be the answer for somebody, and what one more effect costs rises from step to step. The option with the lowest AVERAGE cost wins nothing for it:
//    it may be the smallest step of all. Cost is here what is spent less what illness and outbreaks cost where they are averted; it may be below 0.
OptionOutcome Outcome(WorthOption option) => new(option.Cost.Estimate!.Value, option.Effect.Estimate!.Value);
OptionOutcome[] outcomes = [.. worth.Options.Where(option => !option.IsAsDone).Select(Outcome)];
var places = CostEffectivenessFrontier.Of(outcomes);
string Name(WorthOption option) => option.Option + (option.Confirmation is WorthConfirmation.Without ? ", unconfirmed" : option.Confirmation is WorthConfirmation.Pooled ? ", pooled" : "");
Console.WriteLine();
Console.WriteLine("3., 4. Options: cost, infections averted, one more against the next cheaper on the frontier, and what is gained at a value");
double[] values = [value / 2, value, 2 * value];
Console.WriteLine($"{"",-34} {"cost",8} {"averted",8} {"one more",9}   {string.Join(" ", values.Select(at => $"{"at " + Money(at),9}"))}");
foreach (var place in places)
{
    var option = worth.Options[place.Index];
    if (place.Standing == OptionStanding.OnFrontier != (option.Standing == WorthStanding.OnFrontier)) throw new InvalidOperationException("The report and this notebook should agree on the frontier.");
    var (one, gains) = (place.Standing switch
    {
        OptionStanding.OnFrontier => place.IncrementalRatio.Value is { } ratio ? Money(ratio) : "",
        OptionStanding.StrictlyDominated => "worse",
        OptionStanding.ExtendedlyDominated => "by a mix",
        _ => "the same",
    }, values.Select(at => $"{Money(NetBenefit.Of(place.Outcome, at)),9}"));
    Console.WriteLine($"{Name(option),-34} {Money(place.Outcome.Cost),8} {Number(place.Outcome.Effect),8} {one,9}   {string.Join(" ", gains)}");
}

// 4. Net benefit. State what one infection averted is worth and the choice is a subtraction: value times effect, less cost. The ratios of the frontier are just the values at which the best option
//    changes, so that the frontier is the answer for everybody, and the net benefit for whoever names a value. Naming it is not the statistician's; that it changes the answer is.
Console.WriteLine("Best, by what one infection averted is worth:");
foreach (var place in places.Where(place => place.Standing == OptionStanding.OnFrontier).OrderBy(place => place.BestFrom))
{
    Console.WriteLine($"  from {Money(place.BestFrom),8} {(place.BestTo is { } to ? "to " + Money(to) : "on"),-11} {Name(worth.Options[place.Index])}");
}

foreach (var at in values)
{
    var best = NetBenefit.Best(outcomes, at)[0];
    if (!(places[best].BestFrom <= at && (places[best].BestTo is not { } end || at <= end))) throw new InvalidOperationException("The best at a value should be the one of the frontier there.");
}

// 5. When it turns. A decision that holds at today's figures is worth little without the figure at which it stops holding. On a napkin: one screen costs c; it finds an infected person with chance p s,
//    which is worth B; and it calls a healthy one infected with chance (1 - p)(1 - Sp), which costs h. Set the sum to 0 and solve. B is taken from the report: all that the option judged
//    gains, shared out over those it finds. The napkin knows no spread: that with more infection about each one averted spares more. The model of the report does, and its incidence is a search.
double Turn(string figure) => worth.Turn(figure)!.Present!.Value;
double Does(CadenceMeasure measure) => cadence.Outcome(judged.Option, measure)!.Figure.Estimate!.Value;
double Assumed(string name) => cadence.Assumptions.Single(row => row.Assumption == name).Value!.Value;
var (screen, alarm) = (Turn("cost-of-screen"), program.Settings.Costs.ConfirmatoryTest!.Value + (Assumed("false-alarm-days") * program.Settings.Costs.WorkingDay!.Value));
var gain = new ScreenGain
{
    Prevalence = Turn("prevalence"), Sensitivity = Assumed("sensitivity"), Specificity = Turn("specificity"), CostOfScreen = screen, CostOfFalsePositive = alarm,
    BenefitOfTruePositive = (judged.NetBenefit.Estimate!.Value + (Does(CadenceMeasure.Screens) * screen) + (Does(CadenceMeasure.FalseAlarms) * alarm)) / Does(CadenceMeasure.TruePositives),
};
Console.WriteLine();
Console.WriteLine($"5. When it turns, for {Name(judged)}");
Console.WriteLine(FormattableString.Invariant($"one screen: {Money(gain.CostOfScreen)} to do, {Money(gain.CostOfFalsePositive)} for a false alarm; finding somebody is worth {Money(gain.BenefitOfTruePositive)}, and must be worth {Money(BreakEven.BenefitOfTruePositive(gain).Value)}"));
Console.WriteLine("                                                                 on a napkin    in the model   as it is (limits)");
foreach (var turn in worth.Turns.Where(turn => turn.Figure != "half-false-prevalence"))
{
    var napkin = turn.Figure switch { "prevalence" => BreakEven.Prevalence(gain).Value, "specificity" => BreakEven.Specificity(gain).Value, "cost-of-screen" => BreakEven.CostOfScreen(gain).Value, _ => null };
    string Shown(double? figure) => turn.Unit == "share" ? figure is { } share ? FormattableString.Invariant($"{100 * share:0.00} %") : "-" : Money(figure);
    Console.WriteLine($"{turn.Name + " (" + turn.Unit + ")",-62} {Shown(napkin),13} {(turn.BreakEven is null ? turn.BreakEvenUndefined : Shown(turn.BreakEven)),15}   {Shown(turn.Present)}{(turn.Lower is null ? "" : $" ({Shown(turn.Lower)} to {Shown(turn.Upper)})")}");
}

// Never believe a break-even that was not put back. Evaluate the sample again with the weekly incidence stated, at the turn and around it. And see what a manager should: where the option judged
//    ceases to pay another may still, so that "does not pay" means "step down" before it means "stop".
if (worth.Turn("weekly-incidence") is { BreakEven: { } weekly })
{
    Console.WriteLine("put back: infected a week, per 1,000    gain of the option judged    the option that gains most");
    foreach (var times in (double[])[0.4, 0.7, 1, 1.5])
    {
        var stated = program.Settings with { Cadence = program.Settings.Cadence with { Incidence = new StatedRange(times * weekly / 7000) } };
        var again = tally.Evaluate(stated).Worth;
        var own = again.Options.Single(option => option.Key == judged.Key);
        Console.WriteLine($"{Number(times * weekly, 2),39} {Money(own.NetBenefit.Estimate),28}    {Name(again.Best!)}");
        if (worth.Ladder.LastOrDefault(rung => rung.From <= times * weekly * (1 + 1e-9)) is { } there && there.Option != again.Best!.Option) throw new InvalidOperationException("The rungs of the report should name the option that gains most.");
        if (times == 1 && Math.Abs(own.NetBenefit.Estimate!.Value) > 0.01 * own.Spending.Estimate!.Value) throw new InvalidOperationException("At the break-even the gain should be 0.");
    }
}

// The report has the same as rungs, found exactly. What was true on average need not be true now: look where the last days of the data lie, and how wide their limits are.
Console.WriteLine("rungs: " + string.Join("; ", worth.Ladder.Select(rung => $"{rung.Option} from {Number(rung.From, 2)}")));
foreach (var period in worth.Periods)
    Console.WriteLine($"{(period == worth.Periods[0] ? "all" : "last")} {period.Days} days: {Number(period.WeeklyIncidence.Estimate, 2)} ({Number(period.WeeklyIncidence.Lower, 2)} to {Number(period.WeeklyIncidence.Upper, 2)}; cases found: {period.Cases}): {period.Option} gains most; at the limits {period.OptionAtLower} and {period.OptionAtUpper}");

// 6. How sure? Draw every figure that is uncertain from what is known of it, work out all options at each draw, and count. Two questions must be kept apart. "How often does it pay?" is about regret. "What to
//    choose now?" is about the mean, and that option need not be the one that is best most often. What it would be worth to know more is the mean of what the choice of now loses where it
//    turns out wrong: no study is worth more than that. First on the napkin, where all of it is twenty lines, then from the report, where the model stands behind each draw.
const int Draws = 4000;
const ulong Seed = 20_261_126;
var sensitivity = cadence.Assumptions.Single(row => row.Assumption == "sensitivity");
UncertainFigure Ranged(WorthTurn turn, Func<double, double, double, UncertainFigure> family) =>
    turn is { Lower: { } lower, Upper: { } upper, Present: { } present } ? family(present, lower, upper) : UncertainFigure.Fixed(turn.Present!.Value);
var drawn = new (string Name, IReadOnlyList<double> Values)[]
{
    ("infected among those screened", ParameterDraws.Of(Ranged(worth.Turn("prevalence")!, (_, lower, upper) => UncertainFigure.LognormalByRange(lower, upper)), "infected", Draws, Seed)),
    ("sensitivity of one screen", ParameterDraws.Of(sensitivity is { Lower: { } least, Upper: { } most } ? UncertainFigure.BetaByRange(sensitivity.Value!.Value, least, most) : UncertainFigure.Fixed(sensitivity.Value!.Value), "sensitivity", Draws, Seed)),
    ("cost of a screen", ParameterDraws.Of(Ranged(worth.Turn("cost-of-screen")!, (present, lower, upper) => UncertainFigure.GammaByRange(present, lower, upper)), "screen", Draws, Seed)),
};
var screens = Does(CadenceMeasure.Screens);
double[] zeros = new double[Draws], foundBy = new double[Draws], costOf = new double[Draws];
for (var draw = 0; draw < Draws; draw++)
{
    var (infected, finds, each) = (drawn[0].Values[draw], drawn[1].Values[draw], drawn[2].Values[draw]);
    foundBy[draw] = screens * infected * finds;
    costOf[draw] = screens * (each + ((1 - infected) * (1 - gain.Specificity) * alarm));
}

OptionDraws[] napkinOptions = [new(zeros, zeros), new(costOf, foundBy)];
var table = NetBenefitTable.Of(napkinOptions, gain.BenefitOfTruePositive);
var everything = PerfectInformation.OfEverything(table);
var curve = AcceptabilityCurve.Of(napkinOptions, [gain.BenefitOfTruePositive])[0];
Console.WriteLine();
Console.WriteLine("6. How sure");
Console.WriteLine($"napkin: it pays in {Percent(curve.Chances[1])} of {Number(Draws, 0)} draws; on average {Money(curve.MeanNetBenefits[1])} are gained; to choose: {(curve.Best == 1 ? Name(judged) : "no screening")}");
Console.WriteLine($"   to know everything before choosing is worth at most {Money(everything.Value)} (standard error {Money(everything.StandardError)})");
foreach (var (name, parameter) in drawn)
{
    var known = PerfectInformation.OfParameter(table, parameter);
    Console.WriteLine($"   to know {name}: {Money(known.Value)} (standard error {Money(known.StandardError)})");
}

Console.WriteLine($"report: it pays in {Percent(worth.PaysShare)} of {Number(worth.Draws, 0)} draws; it gains {Money(judged.NetBenefit.Estimate)} at the centre ({Money(judged.NetBenefit.Lower)} to {Money(judged.NetBenefit.Upper)}), {Money(judged.MeanNetBenefit)} on average");
foreach (var row in worth.Information.Where(row => row.Parameter == "everything" || row.Value > 2 * (row.StandardError ?? 0)))
    Console.WriteLine($"   to know {row.Name}: {Money(row.Value)} (standard error {Money(row.StandardError)})");
Console.WriteLine("   what moves it most, between the ends of its range:");
foreach (var swing in worth.Swings.Take(4)) Console.WriteLine($"   {swing.Name}: {Money(swing.Low)} to {Money(swing.High)}");
Console.WriteLine("share of draws in which an option is the best (* to choose there, by the mean):");
var shown = worth.Acceptability.GroupBy(row => row.Option).Where(rows => rows.Any(row => row.Share >= 0.05 || row.OnFrontier)).Select(rows => worth.Options.Single(option => option.Key == rows.Key)).ToList();
Console.WriteLine($"{"one is worth",12} {string.Join(" ", shown.Select(option => $"{Name(option),20}"))}");
foreach (var rows in worth.Acceptability.GroupBy(row => row.Value).OrderBy(rows => rows.Key).Where((rows, index) => index % 3 == 0 || rows.Key == value))
{
    Console.WriteLine($"{Money(rows.Key),12} {string.Join(" ", shown.Select(option => rows.Single(row => row.Option == option.Key) is var row ? $"{Percent(row.Share) + (row.OnFrontier ? " *" : "  "),20}" : ""))}");
}

// A napkin is surer than it has a right to be: it takes as exact what it does not hold, here how many infections follow from one. The same is true of the report one step up: what its model
//    leaves out altogether (whom screening makes careless, what an outbreak does to a name, who would be infected twice) is in none of its draws. Shares of draws say how sure the model is.

// 7. What this cannot do. It does not find the right value of an infection averted, nor whose money counts: change the perspective and costs move from one pocket to the other. It says nothing of who
//    bears what: the gain may be the company's, the lost days those of the people screened. And an option nobody wrote into the program file is compared with nothing. The sentences of the report:
Console.WriteLine();
Console.WriteLine("The report says:");
foreach (var sentence in worth.Sentences.Take(4)) Console.WriteLine("  " + sentence.Text);

// 8. The picture. Left above, the six tests: average and last step. Right above, options by what they avert and cost, with the frontier. Left below, what each gains by what an infection averted is worth: the
//    highest line is the choice. Right below, how sure that is. Names stand at the lines, not in a legend; the option judged has the thick line.
const int Width = 500, Height = 330, Left = 70, Right = 128, Top = 40, Bottom = 52;
var svg = new StringBuilder();
svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {2 * Width} {2 * Height}\" role=\"img\" font-family=\"sans-serif\" font-size=\"11\">\n");
svg.Append("<title>Is it worth it</title><desc>Four panels: cost for each case on average and of the last of six tests; options by infections averted and cost with the frontier; net benefit of options by the value of an infection averted; share of draws in which each option is the best.</desc>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n");
var (column, line) = (0, 0);
(double From, double To) wide = (0, 1), high = (0, 1);
double X(double at) => (column * Width) + Left + ((at - wide.From) / (wide.To - wide.From) * (Width - Left - Right));
double Y(double at) => (line * Height) + Height - Bottom - ((at - high.From) / (high.To - high.From) * (Height - Top - Bottom));
void Panel(int across, int down, string title, string below, (double, double) horizontal, (double, double) vertical, IEnumerable<(double At, string Word)> ticks, IEnumerable<(double At, string Word)> marks)
{
    (column, line, wide, high) = (across, down, horizontal, vertical);
    svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{(column * Width) + 12}\" y=\"{(line * Height) + 20}\" font-weight=\"bold\" font-size=\"12\">{title}</text><text x=\"{(X(wide.From) + X(wide.To)) / 2:0.0}\" y=\"{((line + 1) * Height) - 14}\" text-anchor=\"middle\">{below}</text>\n");
    foreach (var (at, word) in marks) svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{X(wide.From):0.0} {Y(at):0.0}H{X(wide.To):0.0}\" stroke=\"#ddd\"/><text x=\"{X(wide.From) - 6:0.0}\" y=\"{Y(at) + 4:0.0}\" text-anchor=\"end\">{word}</text>\n");
    foreach (var (at, word) in ticks) svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{X(at):0.0}\" y=\"{Y(high.From) + 17:0.0}\" text-anchor=\"middle\">{word}</text>\n");
}

void Curve(IEnumerable<(double X, double Y)> points, string style) =>
    svg.Append(CultureInfo.InvariantCulture, $"<path fill=\"none\" {style} d=\"M{string.Join("L", points.Select(point => FormattableString.Invariant($"{X(point.X):0.0} {Y(point.Y):0.0}")))}\"/>\n");
void Dot(double x, double y, bool filled) => svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{X(x):0.0}\" cy=\"{Y(y):0.0}\" r=\"4\" fill=\"{(filled ? "#1d4e6b" : "#fff")}\" stroke=\"#1d4e6b\"/>\n");
void Text(double x, double y, string words, bool bold = false, string anchor = "start") =>
    svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{x:0.0}\" y=\"{y:0.0}\" text-anchor=\"{anchor}\"{(bold ? " font-weight=\"bold\"" : "")}>{words}</text>\n");
// Names at the right ends of lines, moved apart where they would touch.
void Names(IEnumerable<(double Y, string Name, bool Bold)> ends)
{
    var last = double.NegativeInfinity;
    foreach (var (y, name, bold) in ends.OrderBy(end => Y(end.Y)))
    {
        last = Math.Max(last + 13, Y(y) + 4);
        Text(X(wide.To) + 6, last, name, bold);
    }
}

IEnumerable<(double, string)> Ticks(double from, double to, Func<double, string> word)
{
    var step = Math.Pow(10, Math.Floor(Math.Log10(to - from)));
    step *= (to - from) / step > 5 ? 2 : (to - from) / step > 2 ? 1 : 0.5;
    for (var at = Math.Ceiling(from / step) * step; at <= to; at += step) yield return (at, word(at));
}

string Whole(double amount) => amount.ToString("N0", CultureInfo.InvariantCulture);
const string Line = "stroke=\"#1d4e6b\" stroke-width=\"2\"", Thin = "stroke=\"#1d4e6b\" stroke-width=\"1.3\"", Thick = "stroke=\"#1d4e6b\" stroke-width=\"3.2\"", Dashed = "stroke=\"#b3541e\" stroke-width=\"1.6\" stroke-dasharray=\"6 3\"";
Panel(0, 0, "Six tests: dollars for each case (each mark ten times)", "tests of each person", (1, 6), (3, 8), Enumerable.Range(1, 6).Select(test => ((double)test, $"{test}")), Enumerable.Range(3, 6).Select(power => ((double)power, power < 6 ? Whole(Math.Pow(10, power)) : Whole(Math.Pow(10, power - 6)) + " million")));
Curve(tests.Select(step => (step.Index + 1.0, Math.Log10(step.MarginalCost.Value!.Value))), Line);
Curve(tests.Select(step => (step.Index + 1.0, Math.Log10(step.AverageCost.Value!.Value))), Dashed);
Names([(Math.Log10(tests[5].MarginalCost.Value!.Value), "of the last test", true), (Math.Log10(tests[5].AverageCost.Value!.Value), "on average", false)]);

var (mostEffect, mostCost) = (1.05 * outcomes.Max(outcome => outcome.Effect), 1.05 * outcomes.Max(outcome => outcome.Cost));
var leastCost = Math.Min(0, 1.05 * outcomes.Min(outcome => outcome.Cost));
Panel(1, 0, $"Options: cost in {worth.Currency}; filled and joined: on the frontier", "infections averted", (Math.Min(0, outcomes.Min(outcome => outcome.Effect)), mostEffect), (leastCost, mostCost), Ticks(0, mostEffect, Whole), Ticks(leastCost, mostCost, Whole));
var lineEnd = Math.Min(mostEffect, mostCost / value);
Curve([(0, 0), (lineEnd, value * lineEnd)], Dashed);
var frontier = places.Where(place => place.Standing == OptionStanding.OnFrontier).OrderBy(place => place.Outcome.Effect).ToList();
Curve(frontier.Select(place => (place.Outcome.Effect, place.Outcome.Cost)), Line);
foreach (var place in places) Dot(place.Outcome.Effect, place.Outcome.Cost, place.Standing == OptionStanding.OnFrontier);
foreach (var place in frontier) Text(X(place.Outcome.Effect) + 8, Y(place.Outcome.Cost) + 13, Name(worth.Options[place.Index]), worth.Options[place.Index].IsJudged);
Text(X(0.6 * lineEnd) - 8, Y(0.6 * value * lineEnd) - 4, $"pays below: {Money(value)} for each", anchor: "end");

var mostValue = worth.Acceptability.Max(row => row.Value);
double[] ends = [.. frontier.SelectMany(place => (double[])[NetBenefit.Of(place.Outcome, 0), NetBenefit.Of(place.Outcome, mostValue)])];
Panel(0, 1, $"What each gains, in {worth.Currency}: the highest line is the choice", $"value of one infection averted, {worth.Currency}", (0, mostValue), (ends.Min(), ends.Max()), Ticks(0, mostValue, Whole), Ticks(ends.Min(), ends.Max(), Whole));
Curve([(value, ends.Min()), (value, ends.Max())], Dashed);
foreach (var place in frontier) Curve([(0, NetBenefit.Of(place.Outcome, 0)), (mostValue, NetBenefit.Of(place.Outcome, mostValue))], worth.Options[place.Index].IsJudged ? Thick : Thin);
Names(frontier.Select(place => (NetBenefit.Of(place.Outcome, mostValue), Name(worth.Options[place.Index]), worth.Options[place.Index].IsJudged)));
Text(X(value) + 5, Y(ends.Max()) + 10, "stated");

Panel(1, 1, "How often each is the best; ringed: to choose there", $"value of one infection averted, {worth.Currency}", (0, mostValue), (0, 1), Ticks(0, mostValue, Whole), Enumerable.Range(0, 6).Select(fifth => (fifth / 5.0, $"{20 * fifth} %")));
Curve([(value, 0), (value, 1)], Dashed);
foreach (var option in shown)
{
    var rows = worth.Acceptability.Where(row => row.Option == option.Key).OrderBy(row => row.Value).ToList();
    Curve(rows.Select(row => (row.Value, row.Share)), option.IsJudged ? Thick : Thin);
    foreach (var row in rows.Where(row => row.OnFrontier)) Dot(row.Value, row.Share, false);
}

Names(shown.Select(option => (worth.Acceptability.Where(row => row.Option == option.Key).MaxBy(row => row.Value)!.Share, Name(option), option.IsJudged)));
svg.Append("</svg>\n");
Directory.CreateDirectory("artifacts");
File.WriteAllText("artifacts/worth-it.svg", svg.ToString());
Console.WriteLine();
Console.WriteLine("wrote artifacts/worth-it.svg");
