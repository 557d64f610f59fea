using System.Collections.Immutable;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Controls;

internal static class ControlSentences
{
    public static ImmutableArray<Sentence> Of(ControlFindings found)
    {
        if (found.Runs == 0) return [new Sentence("No run of a control swab is recorded, so it cannot be said whether devices show what they should.")];
        return
        [
            new Sentence(
                "{0} of {1} positive control swabs showed positive, and {2} of {3} negative ones negative.",
                Figure.Count("controls.positive.asExpected.events", found.Positive.AsExpected.Events), Figure.Count("controls.positive.runs", found.Positive.Runs),
                Figure.Count("controls.negative.asExpected.events", found.Negative.AsExpected.Events), Figure.Count("controls.negative.runs", found.Negative.Runs)),
            .. Doubt(found),
            .. StandsOut(found),
            .. Enum.GetValues<ControlTrigger>().Where(trigger => trigger != ControlTrigger.Daily || Of(found, trigger).IsRequired).Select(trigger => Duty(Of(found, trigger))),
            new Sentence("A control swab carries a known amount: it shows whether device and handling work, not how well the device finds infections."),
        ];
    }

    private static IEnumerable<Sentence> Doubt(ControlFindings found)
    {
        if (found.Failed == 0) yield break;
        yield return new Sentence(
            $"{{0}} {Figure.Plural(found.Failed, "control", "controls")} failed. Between the passed controls around {Figure.Plural(found.Failed, "it", "them")} stand at most {{1}} screening runs of the same site and lot: {ControlTables.WhatToDo}.",
            Figure.Count("controls.failed", found.Failed), Figure.Count("controls.runsInDoubt", found.RunsInDoubt));
        if (found.Open > 0)
        {
            yield return new Sentence(
                $"After {{0}} of them no control of the same site, lot and kind has been passed: {Figure.Plural(found.Open, "that failure stands", "those failures stand")}.",
                Figure.Count("controls.open", found.Open));
        }
    }

    private static IEnumerable<Sentence> StandsOut(ControlFindings found)
    {
        var standing = found.Parts.Where(row => row.Comparison?.StandsOut == true).ToList();
        foreach (var row in standing)
        {
            var path = FigurePath.Row("controls.parts", row.Key);
            yield return new Sentence(
                $"More {row.Expected} controls failed at {LevelNames.Of(row.Grouping)} {{0}} than at the others: {{1}} of {{2}}, where {{3}} would be expected (adjusted p {{4}})." + (row.Grouping == Grouping.Operator ? " For training, not for discipline." : ""),
                Figure.Name(path + ".level", row.Level), Figure.Count(path + ".failed", row.Failed), Figure.Count(path + ".runs", row.Runs),
                Figure.Number(path + ".comparison.expected", row.Comparison!.Expected, Unit.Ratio), Figure.Number(path + ".comparison.pHolm", row.Comparison.PHolm, Unit.PValue));
        }

        if (standing.Count == 0 && found.Failed > 0) yield return new Sentence("No site, lot or operator has more failed controls than chance readily makes; controls are few, so a faulty lot can hide among them.");
    }

    private static ControlDuty Of(ControlFindings found, ControlTrigger trigger) => found.Duties.Single(duty => duty.Trigger == trigger && duty.Grouping == Grouping.Program);

    private static Sentence Duty(ControlDuty duty)
    {
        var (what, one) = duty.Trigger switch
        {
            ControlTrigger.NewLot => ("lots that a site took into use", "a new lot"),
            ControlTrigger.NewOperator => ("operators who started", "a new operator"),
            ControlTrigger.NewSite => ("sites that started", "a new site"),
            _ => ("days on which a site screened", "each day"),
        };
        if (duty.Unknown is { } why) return new Sentence($"Whether {what} had a control cannot be told: {why}.");
        var path = FigurePath.Row("controls.duties", duty.Key);
        var rule = duty.IsRequired ? "The program's policy asks for one." : "The program file asks for none, so this is information.";
        return duty.Missed.Events == 0
            ? new Sentence($"All {{0}} {what} had a passed control on or before that day. {rule}", Figure.Count(path + ".missed.trials", duty.Missed.Trials))
            : new Sentence(
                $"{{0}} of {{1}} {what} had no passed control on or before that day ({{2}} screening runs without one for {one}). {rule}",
                Figure.Count(path + ".missed.events", duty.Missed.Events), Figure.Count(path + ".missed.trials", duty.Missed.Trials),
                Figure.Count(path + ".runsWithoutControl", duty.RunsWithoutControl));
    }
}
