using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Worth.Lists;

/// <summary>Wilson and Jungner's ten criteria for screening, as far as the data can answer, in words of our own.</summary>
/// <remarks>Source: Wilson JMG, Jungner G, Principles and Practice of Screening for Disease, World Health Organization 1968. Where a figure decides, the line that it is held against stands in the evidence.</remarks>
internal static class ScreeningCriteria
{
    private const string Met = "met";
    private const string NotMet = "not met";
    private const string InPart = "in part";
    private const string ForPeople = "for people to say";

    /// <summary>From this share on followed-up positives, or screens taken, are called enough.</summary>
    private const double Enough = 0.9;

    /// <summary>From this share of draws on the costs are called balanced, and up to its complement not.</summary>
    private const double Sure = 0.8;

    public static IEnumerable<WorthCriterion> Of(WorthFindings findings, CadenceFindings cadence, ProgramSettings settings, Tally tally)
    {
        yield return Row(1, "Is the condition an important health problem?", Problem(findings));
        yield return Row(2, "Is there an accepted treatment, or something that helps, for those found?", settings.Policy.IsolationDays is { } days
            ? (InPart, $"those found are kept away for {Count(days)} days, which protects others; treatment is not in the data") : (ForPeople, "treatment is not in the data"));
        yield return Row(3, "Are there facilities for diagnosis and treatment?", Facilities(cadence));
        yield return Row(4, "Is there a stage that can be recognised before the harm is done?", Stage(findings, cadence));
        yield return Row(5, "Is there a suitable test?", Test(findings, cadence));
        yield return Row(6, "Is the test acceptable to those who are screened?", Acceptable(cadence));
        yield return Row(7, "Is the course of the condition well enough understood?", Course(settings));
        yield return Row(8, "Is it agreed what happens with whom?", settings.Policy.IsolationDays is null
            ? (InPart, $"positives are to be confirmed within {Number(settings.Policy.ConfirmWithinHours, Unit.Hours)} hours; how long a case is kept away is not stated")
            : (Met, $"positives are to be confirmed within {Number(settings.Policy.ConfirmWithinHours, Unit.Hours)} hours, and cases kept away for {Count(settings.Policy.IsolationDays.Value)} days"));
        yield return Row(9, "Are the costs in balance with what is gained?", Balance(findings));
        yield return Row(10, "Is finding cases a continuing process?", Continuing(tally));
    }

    private static (string, string) Problem(WorthFindings findings) => findings.Turn("weekly-incidence") is { Present: { } weekly } turn
        ? (ForPeople, $"{Number(weekly, Unit.Ratio)} in 1,000 people infected in a week{Limits(turn.Lower, turn.Upper, Unit.Ratio)}; how ill they become is not in the data")
        : (ForPeople, "the incidence is not known, and how ill people become is not in the data");

    private static (string, string) Facilities(CadenceFindings cadence) => cadence.Inputs.FollowThrough is { Estimate: { } share } followed
        ? (share >= Enough ? Met : InPart, $"{Number(share, Unit.Proportion)} of positives got a conclusive confirmatory result{Limits(followed.Lower, followed.Upper, Unit.Proportion)}; held against {Number(Enough, Unit.Proportion)}")
        : (ForPeople, "no positive was due for a confirmatory test");

    // Met only where the ranges lie apart: centres alone would call met what nearly half of the uncertainty speaks against.
    private static (string, string) Stage(WorthFindings findings, CadenceFindings cadence)
    {
        var draws = cadence.Work!.Draws;
        var at = draws.Centre;
        if (at[Parameter.DetectableFrom] is not { } detectable || at[Parameter.InfectiousFrom] is not { } infectious) return (ForPeople, "when an infection can be detected, and when it is passed on, is not stated as windows");
        var delay = at[Parameter.Delay] ?? 0;
        (double Lower, double Upper) Ends(Parameter parameter, double centre) => draws.Ends(parameter) ?? (centre, centre);
        string Day(Parameter parameter, double centre) => Number(centre, Unit.Days) + (draws.Ends(parameter) is { } ends ? Limits(ends.Lower, ends.Upper, Unit.Days) : "");
        var (from, late, onset) = (Ends(Parameter.DetectableFrom, detectable), Ends(Parameter.Delay, delay), Ends(Parameter.InfectiousFrom, infectious));
        var text = $"detectable from day {Day(Parameter.DetectableFrom, detectable)}, acted on {Day(Parameter.Delay, delay)} days after a screen, infectious from day {Day(Parameter.InfectiousFrom, infectious)}; met where these ranges lie apart";
        if (findings.Judged is { } judged && cadence.Outcome(judged.Option, CadenceMeasure.CaughtBeforeSpread)?.Figure is { Estimate: { } caught } figure)
            text += $". \"{judged.Option}\" finds {Number(caught, Unit.Proportion)}{Limits(figure.Lower, figure.Upper, Unit.Proportion)} of the infected before they pass it on";
        var apart = from.Upper + late.Upper < onset.Lower;
        var over = at[Parameter.InfectiousTo] is { } end && from.Lower + late.Lower >= Ends(Parameter.InfectiousTo, end).Upper;
        return (apart ? Met : over ? NotMet : InPart, text);
    }

    private static (string, string) Test(WorthFindings findings, CadenceFindings cadence)
    {
        var (sensitivity, specificity) = (cadence.Inputs.Sensitivity, cadence.Inputs.Specificity);
        if (sensitivity.Estimate is not { } finds || specificity.Estimate is not { } clears) return (ForPeople, "sensitivity or specificity is not known");
        var text = $"sensitivity {Number(finds, Unit.Proportion)}{Limits(sensitivity.Lower, sensitivity.Upper, Unit.Proportion)}, specificity {Number(clears, Unit.Proportion)}{Limits(specificity.Lower, specificity.Upper, Unit.Proportion)}{(findings.LeavesOutFlaggedLots ? ", without flagged lots" : "")}; a sensitivity surely above {Number(Sure, Unit.Proportion)} is taken as suitable, one surely below one half as not";
        return ((sensitivity.Lower ?? finds) >= Sure ? Met : (sensitivity.Upper ?? finds) < 0.5 ? NotMet : InPart, text);
    }

    private static (string, string) Acceptable(CadenceFindings cadence)
    {
        var screens = cadence.Adherence.FirstOrDefault(row => row.Measure == "screens");
        return screens?.Share.Estimate is { } share
            ? (share >= Enough ? Met : InPart, $"{Number(share, Unit.Proportion)} of the screens due were taken; held against {Number(Enough, Unit.Proportion)}. Why others were not is not in the data")
            : (ForPeople, "how many of the screens due were taken is not known");
    }

    private static (string, string) Course(ProgramSettings settings) => settings.Cadence.Course is not { } course ? (ForPeople, "the course of an infection is not stated")
        : course.Source.Length > 0 ? (InPart, "the course is stated from: " + course.Source + "; how well it is understood is for people to say") : (InPart, "the course is stated without a source");

    private static (string, string) Balance(WorthFindings findings) => findings.PaysShare is { } share
        ? (share >= Sure ? Met : share <= 1 - Sure ? NotMet : InPart, $"\"{findings.Judged!.Option}\" pays in {Number(share, Unit.Proportion)} of the draws at the stated costs and value; held against {Number(Sure, Unit.Proportion)}")
        : (ForPeople, "costs, effects or the value of an effect are not known");

    private static (string, string) Continuing(Tally tally)
    {
        if (tally.FirstDay is not { } first || tally.LastDay is not { } last) return (ForPeople, "no run was counted");
        var weeks = tally.Cells.Screens.Select(cell => ReportPeriod.Week.Start(cell.Day)).Distinct().Count();
        var all = ((ReportPeriod.Week.Start(last).DayNumber - ReportPeriod.Week.Start(first).DayNumber) / 7) + 1;
        return (weeks == all && all > 1 ? Met : InPart, $"screening in {Count(weeks)} of {Count(all)} weeks of the data; whether it goes on is for people to say");
    }

    private static WorthCriterion Row(int item, string question, (string Answer, string Evidence) said) =>
        new("wilson-jungner|" + item.ToString(CultureInfo.InvariantCulture), "wilson-jungner", item, question, said.Answer, said.Evidence);

    private static string Limits(double? lower, double? upper, Unit unit) => lower is { } low && upper is { } high ? $" ({Number(low, unit)} to {Number(high, unit)})" : "";

    private static string Number(double value, Unit unit) => Rounding.Print(Cell.Number(value), unit);

    private static string Count(long value) => Rounding.Print(Cell.Count(value), Unit.Count);
}
