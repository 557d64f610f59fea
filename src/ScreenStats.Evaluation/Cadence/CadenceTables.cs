using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence;

/// <summary>The tables of how often to screen.</summary>
internal static class CadenceTables
{
    private const string Bases =
        "either: the figure does not depend on it; as-stated: as the program file states it; all-brought-in and all-inside: the two bounds where it states nothing.";

    private const string Measures =
        "infectious-days-removed, share-removed: against no screening, in calendar days outside isolation, days off included; days-of-averted: those of infections averted, which are among them; caught-before-spread, detection: share of infections; infections-averted, outbreaks-avoided; screens, false-alarms, any-false-alarm, true-positives, predictive-value, days-lost; days-away-added: days that infected people are kept away more than their symptoms alone would keep them, where the policy states how long an isolation is; inconclusive: screens without a control line, inconclusive-tests and inconclusive-repeats: confirmatory tests and repeats that follow them as in the data.";

    public static Table<CadenceOutcome> Outcomes(CadenceFindings findings)
    {
        var every = findings.Options.ToDictionary(option => option.Option, option => option, StringComparer.Ordinal);
        return new(
            "cadence",
            "How often to screen",
            "What each way of screening gives and costs over the days looked at, for all people screened; (as done): with the gaps between a person's screens as they were.",
            [
                new("option", "Option", Unit.Text, "The way of screening.", row => Cell.Text(row.Option)),
                new("every_days", "Every so many days", Unit.Days, "Days from one screen to the next, on average on fixed weekdays.", row => Cell.NumberOr(every[row.Option].EveryDays, every[row.Option].EveryDaysUndefined ?? ""))
                {
                    Method = CadenceNotes.Schedule,
                },
                new("measure", "What", Unit.Text, Measures, row => Cell.Text(CadenceNames.Of(row.Measure))),
                new("basis", "Basis", Unit.Text, Bases, row => Cell.Text(CadenceNames.Of(row.Basis))),
                new("estimate", "Figure", Unit.Ratio, "At the central assumptions; shares and chances are fractions.", row => Number(row.Figure.Estimate, row.Figure)),
                new("lower", "Lower", Unit.Ratio, "Lower limit from the draws.", row => Limit(row.Figure.Lower, row.Figure)),
                new("upper", "Upper", Unit.Ratio, "Upper limit from the draws.", row => Limit(row.Figure.Upper, row.Figure)),
                Method<CadenceOutcome>(row => row.Figure),
                Confidence<CadenceOutcome>(row => row.Figure),
                new("leads", "Leads", Unit.Text, "yes where the basis is the one that is told first.", row => Cell.Text(row.Leads ? "yes" : "no")),
            ],
            findings.Outcomes);
    }

    public static Table<CadenceStep> Steps(ImmutableArray<CadenceStep> rows) => new(
        "cadence-steps",
        "What each step adds",
        "What the step from one option to the next more frequent one adds, and what it costs: the marginal gain, not the average.",
        [
            new("from", "From", Unit.Text, "The less frequent option.", row => Cell.Text(row.From)),
            new("to", "To", Unit.Text, "The more frequent one.", row => Cell.Text(row.To)),
            new("measure", "What", Unit.Text, "What is gained: infectious-days-removed, infections-averted or outbreaks-avoided.", row => Cell.Text(CadenceNames.Of(row.Measure))),
            new("gain", "Gain", Unit.Ratio, "What the step adds.", row => Number(row.Gain.Estimate, row.Gain)),
            new("lower", "Lower", Unit.Ratio, "Lower limit, from draws paired between both options.", row => Limit(row.Gain.Lower, row.Gain)),
            new("upper", "Upper", Unit.Ratio, "Upper limit likewise.", row => Limit(row.Gain.Upper, row.Gain)),
            new("more_screens", "More screens", Unit.Ratio, "Screens that it takes more.", row => Number(row.MoreScreens.Estimate, row.MoreScreens)) { Method = CadenceNotes.Draws },
            new("per_1000_screens", "Gain for 1,000 screens", Unit.Ratio, "The gain for each 1,000 more screens.", row => Number(row.PerThousandScreens.Estimate, row.PerThousandScreens)) { Method = CadenceNotes.Steps },
            new("per_1000_lower", "Lower", Unit.Ratio, "Lower limit of it.", row => Limit(row.PerThousandScreens.Lower, row.PerThousandScreens)) { Method = CadenceNotes.Steps },
            new("per_1000_upper", "Upper", Unit.Ratio, "Upper limit of it.", row => Limit(row.PerThousandScreens.Upper, row.PerThousandScreens)) { Method = CadenceNotes.Steps },
            new("more_false_alarms", "More false alarms", Unit.Ratio, "False alarms that come with it.", row => Number(row.MoreFalseAlarms.Estimate, row.MoreFalseAlarms)) { Method = CadenceNotes.Draws },
            Method<CadenceStep>(row => row.Gain),
            Confidence<CadenceStep>(row => row.Gain),
            new("per_false_alarm", "Gain for a false alarm", Unit.Ratio, "The gain for each false alarm more.", row => Number(row.PerFalseAlarm.Estimate, row.PerFalseAlarm)) { Method = CadenceNotes.Steps },
            new("per_false_alarm_lower", "Lower", Unit.Ratio, "Lower limit of it.", row => Limit(row.PerFalseAlarm.Lower, row.PerFalseAlarm)) { Method = CadenceNotes.Steps },
            new("per_false_alarm_upper", "Upper", Unit.Ratio, "Upper limit of it.", row => Limit(row.PerFalseAlarm.Upper, row.PerFalseAlarm)) { Method = CadenceNotes.Steps },
            new("basis", "Basis", Unit.Text, Bases, row => Cell.Text(CadenceNames.Of(row.Basis))),
            new("leads", "Leads", Unit.Text, "yes where basis and measure are those that are told first.", row => Cell.Text(row.Leads ? "yes" : "no")),
        ],
        rows);

    public static Table<CadenceChoice> Choices(ImmutableArray<CadenceChoice> rows) => new(
        "cadence-choice",
        "How sure the choice is",
        "In which share of the draws each option is the one to choose by what the program file says a step must add. Empty where it says nothing of that.",
        [
            new("option", "Option", Unit.Text, "The way of screening.", row => Cell.Text(row.Option)),
            new("share_of_draws", "Share of draws", Unit.Proportion, "In which it is chosen.", row => Cell.Number(row.ShareOfDraws)) { Method = CadenceNotes.Choice },
            new("chosen", "Chosen", Unit.Text, "yes for the one chosen at the central assumptions.", row => Cell.Text(row.Chosen ? "yes" : "no")),
            new("basis", "Basis", Unit.Text, Bases, row => Cell.Text(CadenceNames.Of(row.Basis))),
            new("leads", "Leads", Unit.Text, "yes where the basis is the one that is told first.", row => Cell.Text(row.Leads ? "yes" : "no")),
        ],
        rows);

    public static Table<CadenceIncidenceRange> Ranges(ImmutableArray<CadenceIncidenceRange> rows) => new(
        "cadence-incidence",
        "The option by how much infection there is",
        "Between which numbers of infections per 100,000 person-days each option is the one to choose, all other assumptions at their centre. Empty where nothing states what a step must add.",
        [
            new("option", "Option", Unit.Text, "The way of screening.", row => Cell.Text(row.Option)),
            new("from", "From", Unit.Ratio, "From so many infections per 100,000 person-days.", row => Cell.Number(row.From)) { Method = CadenceNotes.Turns },
            new("to", "To", Unit.Ratio, "Up to so many; empty for the last.", row => row.To is { } to ? Cell.Number(to) : Cell.Empty) { Method = CadenceNotes.Turns },
            new("assumed", "Assumed", Unit.Text, "yes where the infections that the answer assumes lie.", row => Cell.Text(row.HasData ? "yes" : "no")),
            new("last_days", "Last days", Unit.Text, "yes where those of the last 28 days of the data lie.", row => Cell.Text(row.HasRecent ? "yes" : "no")),
        ],
        rows);

    public static Table<CadenceAssumption> Assumptions(ImmutableArray<CadenceAssumption> rows) => new(
        "cadence-assumptions",
        "What the answer rests on",
        "Every figure that the answer rests on, with its 95 % range and where it comes from. What is not known is not made up: its source says what is done without it.",
        [
            new("assumption", "Assumption", Unit.Text, "The figure.", row => Cell.Text(row.Assumption)),
            new("value", "Value", Unit.Ratio, "Its value.", row => Cell.NumberOr(row.Value, row.ValueUndefined ?? "not known")),
            new("lower", "Lower", Unit.Ratio, "Lower end of its range; empty where it is taken as exact.", row => row.Lower is { } lower ? Cell.Number(lower) : Cell.Empty),
            new("upper", "Upper", Unit.Ratio, "Upper end of its range; empty likewise.", row => row.Upper is { } upper ? Cell.Number(upper) : Cell.Empty),
            new("unit", "Unit", Unit.Text, "In what it is measured; shares are fractions.", row => Cell.Text(row.Unit)),
            new("origin", "Origin", Unit.Text, "stated, taken from your data, or not known.", row => Cell.Text(CadenceNames.Of(row.Origin))),
            new("source", "Source", Unit.Text, "Where it comes from, or what is done without it.", row => row.Source.Length == 0 ? Cell.Empty : Cell.Text(row.Source)),
            new("name", "Name", Unit.Text, "What it is called.", row => Cell.Text(row.Name)),
            new("method", "Method", Unit.Text, "The method that made it or its range.", row => row.Method is { } method ? Cell.Text(method) : Cell.Empty),
        ],
        rows);

    public static Table<CadenceSwing> Swings(ImmutableArray<CadenceSwing> rows) => new(
        "cadence-sensitivity",
        "Which assumptions matter most",
        "Infectious days that the option spoken of removes, with each assumption at the ends of its 95 % range and the others at their centre; the one that does most first.",
        [
            new("assumption", "Assumption", Unit.Text, "As in the table of assumptions.", row => Cell.Text(row.Assumption)),
            new("at_lower", "Lower end", Unit.Ratio, "The lower end of its range.", row => Cell.Number(row.AtLower)) { Method = CadenceNotes.OneWay },
            new("at_upper", "Upper end", Unit.Ratio, "The upper end of its range.", row => Cell.Number(row.AtUpper)) { Method = CadenceNotes.OneWay },
            new("low", "Days at the lower end", Unit.Ratio, "Infectious days removed at the lower end.", row => Cell.Number(row.Low)) { Method = CadenceNotes.OneWay },
            new("high", "Days at the upper end", Unit.Ratio, "Infectious days removed at the upper end.", row => Cell.Number(row.High)) { Method = CadenceNotes.OneWay },
            new("swing", "Swing", Unit.Ratio, "How far they lie apart.", row => Cell.Number(row.Swing)) { Method = CadenceNotes.OneWay },
            new("option_at_lower", "Option at the lower end", Unit.Text, "The option chosen there; empty where nothing states what a step must add.", row => Word(row.OptionAtLower)) { Method = CadenceNotes.OneWay },
            new("option_at_upper", "Option at the upper end", Unit.Text, "The option chosen there; empty likewise.", row => Word(row.OptionAtUpper)) { Method = CadenceNotes.OneWay },
            new("name", "Name", Unit.Text, "What it is called.", row => Cell.Text(row.Name)),
        ],
        rows);

    public static Table<CadenceAdherence> Adherences(ImmutableArray<CadenceAdherence> rows) => new(
        "cadence-adherence",
        "Plan and practice",
        "What was planned against what was done: days between screens, screens done of those due, positives followed up, and what both find and remove.",
        [
            new("measure", "What", Unit.Text, "days-between-screens, screens, followed-up-positives, detection, share-removed or infectious-days-removed.", row => Cell.Text(row.Measure)),
            new("planned", "Planned", Unit.Ratio, "As planned.", row => Number(row.Planned.Estimate, row.Planned)) { Method = CadenceNotes.Adherence },
            new("observed", "Done", Unit.Ratio, "As done.", row => Number(row.Observed.Estimate, row.Observed)) { Method = CadenceNotes.Adherence },
            new("share", "Share", Unit.Ratio, "Done divided by planned.", row => Number(row.Share.Estimate, row.Share)) { Method = CadenceNotes.Adherence },
            new("observed_lower", "Done, lower", Unit.Ratio, "Lower limit of what was done.", row => Limit(row.Observed.Lower, row.Observed)) { Method = CadenceNotes.Adherence },
            new("observed_upper", "Done, upper", Unit.Ratio, "Upper limit of what was done.", row => Limit(row.Observed.Upper, row.Observed)) { Method = CadenceNotes.Adherence },
            new("unit", "Unit", Unit.Text, "In what both are measured.", row => Cell.Text(row.Unit)),
        ],
        rows);

    private static Cell Number(double? value, EstimateFinding of) => Cell.NumberOr(value, of.EstimateUndefined ?? "not known");

    private static Cell Limit(double? value, EstimateFinding of) => value is { } some ? Cell.Number(some) : of.EstimateUndefined is { } reason ? Cell.Undefined(reason) : Cell.Empty;

    private static Cell Word(string? value) => value is null ? Cell.Empty : Cell.Text(value);

    private static Column<TRow> Method<TRow>(Func<TRow, EstimateFinding> figure) =>
        new("method", "Method", Unit.Text, "Method of the figure and its limits.", row => figure(row).Method is { } method ? Cell.Text(method) : Cell.Empty);

    private static Column<TRow> Confidence<TRow>(Func<TRow, EstimateFinding> figure) =>
        new("confidence", "Confidence", Unit.Proportion, "Confidence of the limits.", row => figure(row).Confidence is { } confidence ? Cell.Number(confidence) : Cell.Empty);
}
