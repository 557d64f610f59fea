using System.Collections.Immutable;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Tests.Pages;

/// <summary>Findings of how often to screen with invented figures: what a page makes of them does not hang on how they were computed.</summary>
internal static class CadenceSketch
{
    private static readonly (string Option, double Days, double Share)[] Ways =
        [("none", 0, 0), ("monthly", 30, 0.11), ("fortnightly", 14, 0.22), ("weekly", 7, 0.38), ("twice-weekly", 3.5, 0.55), ("every-second-day", 2, 0.66), ("daily", 1, 0.74)];

    public static Findings With(Findings findings, CadenceBasis basis = CadenceBasis.AsStated, string? chosen = "weekly", string? planned = "twice-weekly") =>
        findings with { Cadence = Of(findings.Cadence, basis, chosen, planned) };

    private static CadenceFindings Of(CadenceFindings found, CadenceBasis basis, string? chosen, string? planned)
    {
        ImmutableArray<CadenceOptionFinding> options = [.. Ways.Select(way => Option(way.Option, way.Days, planned, chosen)), Option(CadenceOptionFinding.AsDone, 4.2, planned, chosen) with { IsAsDone = true }];
        var outcomes = ImmutableArray.CreateBuilder<CadenceOutcome>();
        CadenceBasis[] bases = basis == CadenceBasis.AllBroughtIn ? [CadenceBasis.AllBroughtIn, CadenceBasis.AllInside] : [basis];
        foreach (var (option, days, share) in Ways.Append((CadenceOptionFinding.AsDone, 4.2, 0.5)))
        {
            var screens = days == 0 ? 0 : 900 * 91 / days;
            void Add(CadenceMeasure measure, double value, CadenceBasis of = CadenceBasis.Either) =>
                outcomes.Add(new CadenceOutcome($"{option}|{of}|{measure}", option, measure, of, of is CadenceBasis.Either || of == basis, Figure(value, CadenceWordingIsShare(measure))));
            Add(CadenceMeasure.Screens, screens);
            Add(CadenceMeasure.FalseAlarms, 0.0025 * screens);
            Add(CadenceMeasure.DaysLost, 0.004 * screens);
            Add(CadenceMeasure.AnyFalseAlarm, 1 - Math.Pow(0.9975, screens / 900));
            Add(CadenceMeasure.Detection, 1.2 * share);
            Add(CadenceMeasure.CaughtBeforeSpread, 0.3 * share);
            foreach (var of in bases)
            {
                var more = of == CadenceBasis.AllInside ? 1.7 : 1;
                Add(CadenceMeasure.InfectiousDaysRemoved, more * 400 * share, of);
                Add(CadenceMeasure.ShareRemoved, Math.Min(1, share * (of == CadenceBasis.AllInside ? 1.2 : 1)), of);
                Add(CadenceMeasure.InfectionsAverted, more * 40 * share, of);
                if (days > 0) Add(CadenceMeasure.PredictiveValue, 0.3 - (0.1 * share), of);
            }
        }

        return found with
        {
            Days = 91,
            People = 900,
            Worthwhile = 3,
            WorthwhileUndefined = null,
            LeadingBasis = basis,
            Options = options,
            Outcomes = outcomes.ToImmutable(),
            Steps = [.. Ways.Zip(Ways.Skip(1)).SelectMany(pair => bases.Select(of => Step(pair.First, pair.Second, of, of == basis)))],
            Choices = chosen is null ? [] : [.. Ways.Select(way => new CadenceChoice($"{way.Option}|{basis}", way.Option, basis, true, way.Option == chosen ? 0.7 : way.Option == "monthly" ? 0.3 : 0, way.Option == chosen))],
            Assumptions =
            [
                Assumption("sensitivity", "sensitivity of one screen", 0.8, 0.74, 0.85, "share", CadenceOrigin.Data), Assumption("incidence", "infections per person-day", 0.00045, 0.0003, 0.0007, "per person-day", CadenceOrigin.Data),
                Assumption("delay", "days from a positive screen to staying away", 0.2, 0.1, 0.5, "days", CadenceOrigin.Stated), Assumption("people", "people screened", 900, null, null, "people", CadenceOrigin.Stated),
                Assumption("reproduction", "infections that one case causes inside without screening", null, null, null, "infections", CadenceOrigin.NotKnown),
            ],
            Swings =
            [
                Swing("incidence", "infections per person-day", 0.0003, 0.0007, 110, 240, chosen is null ? null : "monthly", chosen), Swing("sensitivity", "sensitivity of one screen", 0.74, 0.85, 145, 160, chosen, chosen),
                Swing("delay", "days from a positive screen to staying away", 0.1, 0.5, 156, 141, chosen, chosen),
            ],
            Adherence =
            [
                new("days-between-screens", Point(3.5), Point(4.2), Point(1.2), "days"), new("screens", Point(20_000), Point(16_700), Point(0.835), "screens"),
                new("share-removed", Point(0.55), Figure(0.5, share: true), Point(0.91), "share"),
            ],
            Inputs = found.Inputs with { Gaps = [new(2, 5_000), new(3, 7_000), new(4, 2_500), new(7, 900), new(11, 200), new(40, 30)] },
            Missing = ["falseAlarmDays: working days lost to false alarms"],
        };
    }

    private static bool CadenceWordingIsShare(CadenceMeasure measure) => ScreenStats.Reporting.Pages.Cadence.CadenceWording.IsShare(measure);

    private static CadenceOptionFinding Option(string name, double days, string? planned, string? chosen) => new()
    {
        Option = name,
        EveryDays = days == 0 ? null : days,
        EveryDaysUndefined = days == 0 ? "nobody is screened" : null,
        Weekdays = "",
        ScreensPerDay = days == 0 ? 0 : 1 / days,
        IsNone = days == 0,
        IsAsDone = false,
        IsPlanned = name == planned,
        IsChosen = name == chosen,
        Leads = name == (chosen ?? planned),
    };

    private static CadenceStep Step((string Option, double Days, double Share) from, (string Option, double Days, double Share) to, CadenceBasis basis, bool leads)
    {
        var gain = 400 * (to.Share - from.Share);
        var screens = 900 * 91 * ((1 / to.Days) - (from.Days == 0 ? 0 : 1 / from.Days));
        return new CadenceStep
        {
            Key = $"{from.Option}|{to.Option}|{basis}",
            From = from.Option,
            To = to.Option,
            Measure = CadenceMeasure.InfectiousDaysRemoved,
            Basis = basis,
            Leads = leads,
            Gain = Figure(gain),
            MoreScreens = Figure(screens),
            PerThousandScreens = Figure(1000 * gain / screens),
            MoreFalseAlarms = Figure(0.0025 * screens),
            PerFalseAlarm = Figure(gain / (0.0025 * screens)),
        };
    }

    private static CadenceAssumption Assumption(string id, string name, double? value, double? lower, double? upper, string unit, CadenceOrigin origin) => new()
    {
        Assumption = id,
        Name = name,
        Value = value,
        ValueUndefined = value is null ? "not known" : null,
        Lower = lower,
        Upper = upper,
        Unit = unit,
        Origin = origin,
        Source = origin == CadenceOrigin.NotKnown ? "both bounds are given" : "a fictional source",
        Method = value is null ? null : "stated",
    };

    private static CadenceSwing Swing(string id, string name, double lower, double upper, double low, double high, string? atLower, string? atUpper) => new()
    {
        Assumption = id,
        Name = name,
        AtLower = lower,
        AtUpper = upper,
        Low = low,
        High = high,
        Swing = Math.Abs(high - low),
        OptionAtLower = atLower,
        OptionAtUpper = atUpper,
    };

    private static EstimateFinding Figure(double value, bool share = false) => new(value, null, 0.8 * value, share ? Math.Min(1, 1.2 * value) : 1.25 * value, "cadence-draws", 0.95);

    private static EstimateFinding Point(double value) => new(value, null, null, null, "plan-and-practice", null);
}
