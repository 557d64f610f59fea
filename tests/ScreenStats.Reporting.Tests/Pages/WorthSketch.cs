using System.Collections.Immutable;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Lists;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Reporting.Tests.Pages;

/// <summary>Findings of whether it is worth it with invented figures: what a page makes of them does not hang on how they were computed.</summary>
internal static class WorthSketch
{
    private static readonly (string Option, WorthConfirmation Confirmation, double Cost, double Effect, WorthStanding Standing, string By, double? Ratio)[] Ways =
    [
        ("none", WorthConfirmation.NotNeeded, 0, 0, WorthStanding.OnFrontier, "", null), ("monthly", WorthConfirmation.Confirmed, 21_000, 4, WorthStanding.ExtendedlyDominated, "none and weekly with confirmatory tests", null),
        ("monthly", WorthConfirmation.Without, 23_000, 4, WorthStanding.Dominated, "monthly with confirmatory tests", null), ("weekly", WorthConfirmation.Confirmed, 75_000, 15, WorthStanding.OnFrontier, "", 5_000),
        ("weekly", WorthConfirmation.Without, 84_000, 15, WorthStanding.Dominated, "weekly with confirmatory tests", null), ("twice-weekly", WorthConfirmation.Confirmed, 129_000, 24, WorthStanding.OnFrontier, "", 6_000),
        ("daily", WorthConfirmation.Confirmed, 429_000, 36, WorthStanding.OnFrontier, "", 25_000),
    ];

    public static Findings With(Findings findings, double? value = 8_000, bool priced = true)
    {
        var sketched = CadenceSketch.With(findings);
        return sketched with { Worth = Of(sketched.Worth, value, priced) };
    }

    private static WorthFindings Of(WorthFindings found, double? value, bool priced)
    {
        var options = Ways.Select(way => Option(way, value, priced)).ToImmutableArray();
        double[] grid = [0, 4_000, 8_000, 12_000];
        return found with
        {
            Currency = priced ? "EUR" : "units of money (no currency stated)",
            PriceYear = priced ? 2024 : null,
            PriceYearUndefined = priced ? null : "not stated",
            Perspective = priced ? "employer" : "",
            Days = 91,
            People = 900,
            Draws = 2_000,
            Effect = WorthEffect.InfectionsAverted,
            Value = priced ? value : null,
            ValueUndefined = priced && value is not null ? null : "not stated",
            AnyStated = priced,
            Costs =
            [
                Item("screens", "screens", priced ? 6.35 : null, 59_000, false), Item("kits", "test devices", priced ? 3.2 : null, 59_000, true), Item("confirmatory-tests", "confirmatory tests of positives", priced ? 58 : null, 321, false),
                Item("isolation", "days of isolation of cases found", null, 448, false),
            ],
            Figures =
            [
                Figure("total-cost", "counted", "money", priced ? new(null, "not all of its items are priced and counted", 390_000, null, "price-times-number", null) : EstimateFinding.Undefined("no price is stated")),
                Figure("cost-per-screen", "counted", "money for each screen", priced ? Around(6.6) : EstimateFinding.Undefined("no price is stated")), Figure("screens-per-case", "counted", "screens for each case", Around(923)),
                Figure("real-positives", "counted", "share", Around(0.4)), Figure("days-kept-out", "modelled", "days", Around(241)), Figure("days-lost", "modelled", "working days", Around(55)),
                Figure("cost-per-infection-averted", "modelled", "money for each infection", priced ? new(9_600, null, 800, null, "percentiles-by-angle", 0.95) : EstimateFinding.Undefined("no price is stated")),
                .. priced ? [
                    Figure("average-cost", "monthly", "money", Around(7_100)), Figure("average-cost", "weekly", "money", Around(7_000)), Figure("marginal-cost", "weekly", "money", Around(6_700)),
                    Figure("average-cost", "daily", "money", Around(14_300)), Figure("marginal-cost", "daily", "money", Around(42_000)), Figure("screens-per-person", "rule", "screens", Point(12)),
                ] : Array.Empty<WorthFigure>(),
            ],
            Options = options,
            Turns =
            [
                .. priced && value is not null ? [
                    Turn("weekly-incidence", "infections in a week", "per 1,000 people in a week", 3.65, 4.79, 3.12, 9.5, WorthPays.Above), Turn("specificity", "specificity of a screen", "share", 0.994, 0.9988, 0.9984, 0.9991, WorthPays.Above),
                    Turn("cost-of-screen", "cost of a screen", "money", 8.15, 9.35, null, null, WorthPays.Below), Turn("participation", "due screens that are taken", "share", null, 0.8, null, null, WorthPays.Always),
                ] : Array.Empty<WorthTurn>(),
                Turn("half-false-prevalence", "people infected among those screened, below which half of the alarms are false", "share", 0.0019, 0.0022, 0.0012, 0.006, WorthPays.Above),
            ],
            Ladder = priced && value is not null ? [new("none", "none", WorthConfirmation.NotNeeded, 0, 2.4, true, false), new("weekly", "weekly", WorthConfirmation.Confirmed, 2.4, 5.1, false, true), new("daily", "daily", WorthConfirmation.Without, 5.1, null, false, false)] : [],
            PaysShare = priced && value is not null ? 0.52 : null,
            Acceptability = !priced ? [] : [.. grid.SelectMany(at => new[] { Likely(at, "none|not-needed", 0.9 - (at / 16_000), at <= 4_000), Likely(at, "weekly|confirmed", 0.1 + (at / 16_000), at > 4_000) })],
            Information = !priced ? [] :
            [
                new("everything", "everything that is uncertain", 45_000, 1_100, "x"), new("incidence", "infections per person-day", 26_000, 1_300, "x"), new("kit", "price of a test device", 90, 80, "x"),
                new("sample-of-negatives", "whether negatives are infected", 4_000, 300, "x", 1_200, 69_600),
            ],
            Swings = !priced ? [] :
            [
                Swing("incidence", "infections per person-day", 0.00046, 0.00096, -20_000, 128_000, "none|not-needed", "twice-weekly|confirmed"), Swing("kit", "price of a test device", 2.6, 4.1, 68_000, 25_000, "twice-weekly|confirmed", "twice-weekly|confirmed"),
                Swing("operator-minutes", "operator's minutes for a screen", 1, 6, 67_000, 17_000, "twice-weekly|confirmed", "twice-weekly|confirmed"),
            ],
            DecisionCurve = [new(0.001, Around(0.8), Around(0.4), "screen"), new(0.2, Around(-0.1), Around(-200), "no-one") { WithoutFlaggedLots = new(Around(0.5), Around(-200), "screen") }],
            Rules = priced ? [Period(new DateOnly(2025, 1, 6), "monthly", "weekly", true), Period(new DateOnly(2025, 2, 3), "weekly", "weekly", false) with { WithoutFlaggedLots = Others("monthly") }] : [],
            Criteria = [.. Enumerable.Range(1, 10).Select(item => Criterion("wilson-jungner", item)), .. Enumerable.Range(1, 28).Select(item => Criterion("cheers-2022", item))],
            Missing = ["isolationDay: what cases found cost"],
            Sentences =
            [
                new Sentence("Weekly screening pays at the central figures."), new Sentence("The effect is infections averted."),
                new Sentence("The program kept {0} infectious days out of work.", new FigureReference("worth.figures[days-kept-out|modelled].figure.estimate", Cell.Number(241), Unit.Ratio)),
                new Sentence("The rule asks each person for {0} screens.", new FigureReference("worth.figures[screens-per-person|rule].figure.estimate", Cell.Number(12), Unit.Ratio)),
                new Sentence("Stating these would allow more: isolationDay: what cases found cost."),
            ],
        };
    }

    private static WorthOption Option((string Option, WorthConfirmation Confirmation, double Cost, double Effect, WorthStanding Standing, string By, double? Ratio) way, double? value, bool priced)
    {
        var confirmation = way.Confirmation switch { WorthConfirmation.NotNeeded => "not-needed", WorthConfirmation.Without => "without", _ => "confirmed" };
        EstimateFinding Priced(double amount) => !priced && way.Cost > 0 ? EstimateFinding.Undefined("the cost of a screen is not stated") : Around(amount);
        return new WorthOption
        {
            Key = $"{way.Option}|{confirmation}",
            Option = way.Option,
            Confirmation = way.Confirmation,
            Spending = Priced(way.Cost * 1.2),
            Cost = Priced(way.Cost),
            Effect = Around(way.Effect),
            NetBenefit = value is { } worth && priced ? Around((worth * way.Effect) - way.Cost) : EstimateFinding.Undefined("not known"),
            MeanNetBenefit = null,
            MeanNetBenefitUndefined = "not known",
            Standing = priced ? way.Standing : WorthStanding.NotKnown,
            DominatedBy = priced ? way.By : "",
            IncrementalRatio = priced && way.Ratio is { } ratio ? Around(ratio) : EstimateFinding.Undefined("not known"),
            BestShare = priced && value is not null ? 0.25 : null,
            BestShareUndefined = priced && value is not null ? null : "not known",
            IsBest = priced && value is not null && way is { Option: "weekly", Confirmation: WorthConfirmation.Confirmed },
            IsJudged = way is { Option: "twice-weekly", Confirmation: WorthConfirmation.Confirmed },
            IsNone = way.Cost == 0,
        };
    }

    private static WorthCostItem Item(string item, string name, double? price, double units, bool part) => new()
    {
        Item = item,
        Name = name,
        UnitCost = price is { } one ? Around(one) : EstimateFinding.Undefined("not stated"),
        Units = Point(units),
        Cost = price is { } each ? Around(each * units) : EstimateFinding.Undefined("its price is not stated"),
        Origin = price is null ? CadenceOrigin.NotKnown : CadenceOrigin.Stated,
        Source = price is null ? "" : "a fictional price list",
        IsPart = part,
    };

    private static WorthFigure Figure(string measure, string basis, string unit, EstimateFinding figure) => new($"{measure}|{basis}", measure, basis, unit, figure);

    private static WorthTurn Turn(string figure, string name, string unit, double? at, double present, double? lower, double? upper, WorthPays pays) => new()
    {
        Figure = figure,
        Name = name,
        Unit = unit,
        BreakEven = at,
        BreakEvenUndefined = at is null ? "it pays at every value" : null,
        Present = present,
        PresentUndefined = null,
        Lower = lower,
        Upper = upper,
        Pays = pays,
        Method = at is null ? null : "break-even",
    };

    private static WorthAcceptability Likely(double value, string option, double share, bool chosen) => new(FormattableString.Invariant($"{value}|{option}"), value, option, share, chosen);

    private static WorthSwing Swing(string figure, string name, double lower, double upper, double low, double high, string atLower, string atUpper) => new()
    {
        Figure = figure,
        Name = name,
        AtLower = lower,
        AtUpper = upper,
        Low = low,
        High = high,
        Swing = Math.Abs(high - low),
        BestAtLower = atLower,
        BestAtUpper = atUpper,
    };

    private static WorthRulePeriod Period(DateOnly from, string inForce, string next, bool sure) => new()
    {
        Period = from,
        Days = 28,
        Tests = 900,
        Positives = 9,
        Positivity = new(0.01, null, 0.005, 0.019, "wilson", 0.95),
        InForce = inForce,
        Next = next,
        IsSure = sure,
        ScreensPerPerson = 4,
    };

    private static WorthRuleReading Others(string inForce) => new()
    {
        Tests = 800,
        Positives = 1,
        Positivity = new(0.00125, null, 0.0002, 0.007, "wilson", 0.95),
        InForce = inForce,
        Next = inForce,
        IsSure = true,
        ScreensPerPerson = 1,
    };

    private static WorthCriterion Criterion(string list, int item) => new(FormattableString.Invariant($"{list}|{item}"), list, item, FormattableString.Invariant($"Question {item} of {list}?"), item % 2 == 0 ? "stated" : "not stated", "");

    private static EstimateFinding Around(double value) => value == 0 ? Point(0) : new(value, null, value - (0.2 * Math.Abs(value)), value + (0.25 * Math.Abs(value)), "worth-draws", 0.95);

    private static EstimateFinding Point(double value) => new(value, null, null, null, "price-times-number", null);
}
