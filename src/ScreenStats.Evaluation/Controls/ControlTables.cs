using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Controls;

internal static class ControlTables
{
    /// <summary>What a failed control asks for.</summary>
    public const string WhatToDo = "stop, find the cause, repeat the controls; consider testing the people concerned again: local rules decide";

    public static Table<ControlRow> Controls(ImmutableArray<ControlRow> rows) => new(
        "controls",
        "Control swabs",
        "Runs of control swabs: what they should show against what they showed. They are not screens and are in no other figure. Of kits only those with a failed "
        + "control are listed. Tables by operator are for training, not for discipline.",
        [
            new("by", "By", Unit.Text, "By what the program is broken down.", row => Cell.Text(LevelNames.Of(row.Grouping))),
            new("level", "Level", Unit.Text, "The site, lot, kit or operator; empty for the whole program.", row => row.Level.Length == 0 ? Cell.Empty : Cell.Text(row.Level)),
            new("expected", "Expected", Unit.Text, "What the swab should show.", row => Cell.Text(row.Expected)),
            new("runs", "Runs", Unit.Count, "All such runs.", row => Cell.Count(row.Runs)),
            new("negative", "Negative", Unit.Count, "Runs that were negative.", row => Cell.Count(row.Negative)),
            new("positive", "Positive", Unit.Count, "Runs that were positive.", row => Cell.Count(row.Positive)),
            new("inconclusive", "Inconclusive", Unit.Count, "Runs with a test line and no control line.", row => Cell.Count(row.Inconclusive)),
            new("invalid", "Invalid", Unit.Count, "Runs with neither line.", row => Cell.Count(row.Invalid)),
            new("as_expected", "As expected", Unit.Count, "Runs that showed what they should.", row => Cell.Count(row.AsExpected.Events)),
            .. ShareColumns.For<ControlRow>(row => row.AsExpected),
            new("failed", "Failed", Unit.Count, "Runs that did not show what they should: what the comparison is of.", row => Cell.Count(row.Failed)),
            .. LevelComparisons.Columns<ControlRow>(row => row.Comparison),
        ],
        rows);

    public static Table<ControlBracket> Brackets(ImmutableArray<ControlBracket> rows) => new(
        "control-brackets",
        "Failed control swabs and what they leave in doubt",
        "Each control swab that did not show what it should, the last passed control of the same site, lot and kind before it and the next after it, and the screening "
        + "runs of that site and lot between them. The days of both are counted whole, so these are upper counts. Brackets may overlap: they do not add up.",
        [
            new("site", "Site", Unit.Text, "Site of the control.", row => Cell.Text(row.Site)),
            new("lot", "Lot", Unit.Text, "Its lot.", row => Cell.Text(row.Lot)),
            new("kit", "Kit", Unit.Text, "Its kit.", row => Cell.Text(row.Kit)),
            new("operator", "Operator", Unit.Text, "Pseudonym of the operator; for training, not for discipline.", row => Cell.Text(row.Operator)),
            new("day", "Day", Unit.Date, "Local day of the control.", row => Cell.Date(row.Day)),
            new("time", "Time", Unit.Text, "Local time of the control; empty where only a date is recorded.", row => Time(row.Time)),
            new("expected", "Expected", Unit.Text, "What the swab should show.", row => Cell.Text(row.Expected)),
            new("observed", "Observed", Unit.Text, "What it showed.", row => Cell.Text(row.Observed)),
            new("controls", "Controls", Unit.Count, "Runs of control swabs that are alike in all of this.", row => Cell.Count(row.Controls)),
            new("last_passed", "Last passed", Unit.Date, "Day of the last passed control before it; empty where there is none: the runs count from the first on.", row => Cell.Date(row.LastPassedDay)),
            new("last_passed_time", "At", Unit.Text, "Time of that control.", row => Time(row.LastPassedTime)),
            new("next_passed", "Next passed", Unit.Date, "Day of the next passed control after it; empty where there is none yet: the runs count to the last.", row => Cell.Date(row.NextPassedDay)),
            new("next_passed_time", "At", Unit.Text, "Time of that control.", row => Time(row.NextPassedTime)),
            new("runs", "Runs between", Unit.Count, "Screening runs of the site and lot from the day of the last passed control to the day of the next, both whole: at most so many.", row => Cell.Count(row.Runs)),
            new("positives", "Positive", Unit.Count, "Positive runs among them.", row => Cell.Count(row.Positives)),
            new("negatives", "Negative", Unit.Count, "Negative runs among them.", row => Cell.Count(row.Negatives)),
            new("next_step", "What to do", Unit.Text, "What a failed control asks for.", _ => Cell.Text(WhatToDo)),
        ],
        rows);

    public static Table<ControlDuty> Duties(ImmutableArray<ControlDuty> rows) => new(
        "control-duties",
        "Occasions for control swabs",
        "A lot's first day at a site, an operator's first day, a site's first day and each day on which a site screens: how many had no passed control on or before that "
        + "day. Screens are counted by day, so a control later on the same day counts. The program file says which occasions ask for one (policy, controlsRequired); the others are information.",
        [
            new("trigger", "Occasion", Unit.Text, "new-lot, new-operator, new-site or daily.", row => Cell.Text(LevelNames.Of(row.Trigger))),
            LevelColumns.By<ControlDuty>(row => row.Grouping),
            LevelColumns.Level<ControlDuty>(row => row.Level),
            new("required", "Required", Unit.Text, "Whether the program file asks for a control then.", row => Cell.Text(row.IsRequired ? "yes" : "no")),
            new("due", "Occasions", Unit.Count, "How many there were.", row => row.Unknown is { } why ? Cell.Undefined(why) : Cell.Count(row.Missed.Trials)),
            new("missed", "Without control", Unit.Count, "Those without a passed control on or before their day.", row => row.Unknown is { } why ? Cell.Undefined(why) : Cell.Count(row.Missed.Events)),
            new("runs_without_control", "Runs without", Unit.Count, "Screening runs before the first control of what started; for daily, on days without one.", row => row.Unknown is { } why ? Cell.Undefined(why) : Cell.Count(row.RunsWithoutControl)),
            .. ShareColumns.For<ControlDuty>(row => row.Missed),
        ],
        rows);

    public static Table<ControlStart> Starts(ImmutableArray<ControlStart> rows, PolicySettings policy) => new(
        "control-starts",
        "Started without a control swab",
        "Lots (at each site), operators and sites without a passed control on or before their first day. Days without one are many and are counted in control-duties.",
        [
            new("trigger", "Occasion", Unit.Text, "new-lot, new-operator or new-site.", row => Cell.Text(LevelNames.Of(row.Trigger))),
            new("level", "Started", Unit.Text, "The lot, operator or site.", row => Cell.Text(row.Level)),
            new("site", "Site", Unit.Text, "The site; for an operator that of the first day.", row => Cell.Text(row.Site)),
            new("required", "Required", Unit.Text, "Whether the program file asks for a control then.", row => Cell.Text(policy.ControlsRequired.Contains(row.Trigger) ? "yes" : "no")),
            new("first_day", "First day", Unit.Date, "Day of the first screening run.", row => Cell.Date(row.FirstDay)),
            new("first_control_day", "First control", Unit.Date, "Day of the first passed control; empty where there is none.", row => Cell.Date(row.FirstControlDay)),
            new("runs_without_control", "Runs without", Unit.Count, "Screening runs before that day.", row => Cell.Count(row.RunsWithoutControl)),
        ],
        rows);

    private static Cell Time(TimeOnly? time) => time is { } at ? Cell.Text(at.ToString("HH:mm", CultureInfo.InvariantCulture)) : Cell.Empty;
}
