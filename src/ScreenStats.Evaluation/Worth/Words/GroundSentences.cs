using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Words;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Worth.Words;

/// <summary>What the verdict hangs on, what more knowledge would be worth, what is counted, and what is missing.</summary>
internal static class GroundSentences
{
    private const int Told = 3;

    public static IEnumerable<Sentence> Matters(WorthFindings findings)
    {
        var words = new WorthWords(findings);
        var swings = findings.Swings.Where(swing => swing.Swing > 0).Take(Told).ToList();
        if (swings.Count > 0)
        {
            var figures = new List<FigureReference> { words.Currency };
            var parts = swings.ConvertAll(swing =>
            {
                var path = FigurePath.Row("worth.swings", swing.Figure);
                var at = figures.Count;
                var (low, high) = (Figure.Number(path + ".low", swing.Low, Unit.Ratio), Figure.Number(path + ".high", swing.High, Unit.Ratio));
                figures.Add(Figure.Name(path + ".name", swing.Name));
                figures.AddRange(swing.Low <= swing.High ? [low, high] : [high, low]);
                return FormattableString.Invariant($"{{{at}}} ({{{at + 1}}} to {{{at + 2}}})");
            });
            var list = parts.Count == 1 ? parts[0] : string.Join(", ", parts.Take(parts.Count - 1)) + " and " + parts[^1];
            yield return new Sentence("What its net benefit hangs on most, in {0}, each over its own range with the others at their centre: " + list + ".", [.. figures]);
        }

        if (findings.Information.FirstOrDefault(row => row.Parameter == "everything") is not { } all) yield break;
        var whole = Figure.Number("worth.information[everything].value", all.Value, Unit.Ratio);
        if (findings.Information.FirstOrDefault(row => row.Parameter is not ("everything" or "sample-of-negatives")) is { } most && most.StandardError is { } error && most.Value > 2 * error)
        {
            var path = FigurePath.Row("worth.information", most.Parameter);
            yield return new Sentence(
                "To know everything before choosing would be worth {0} {1}, and no study is worth more for one choice over these days; of single figures most would be worth: {2}, {3}.",
                whole, words.Currency, Figure.Name(path + ".name", most.Name), Figure.Number(path + ".value", most.Value, Unit.Ratio));
        }
        else if (all.Value > 0)
        {
            yield return new Sentence("To know everything before choosing would be worth {0} {1}, and no study is worth more for one choice over these days.", whole, words.Currency);
        }
        else
        {
            yield return new Sentence("Nothing that is uncertain would change the choice, so to know more is worth nothing for it.");
        }
    }

    /// <summary>What verifying a sample of negatives would be worth.</summary>
    public static IEnumerable<Sentence> Sample(WorthFindings findings)
    {
        if (findings.Information.FirstOrDefault(row => row.Sample is not null) is not { Sample: { } size, SampleCost: { } cost } sample) yield break;
        var path = FigurePath.Row("worth.information", sample.Parameter);
        FigureReference[] figures =
            [Figure.Count(path + ".sample", size), Figure.Number(path + ".value", sample.Value, Unit.Ratio), new WorthWords(findings).Currency, Figure.Number(path + ".sampleCost", cost, Unit.Ratio)];
        yield return Sure.NegativeSample.Pays(sample)
            ? new Sentence("Verifying {0} negatives before choosing would be worth {1} {2} at a cost of {3}: `plan` says how many to draw for an interval of a width.", [.. figures])
            : new Sentence("Verifying negatives would not repay its cost for this choice: {0} of them, the best of the sizes tried, are worth {1} {2} and cost {3}. They are verified all the same to know how many infected people the screen misses.", [.. figures]);
    }

    /// <summary>What the rule of frequency would have done.</summary>
    public static IEnumerable<Sentence> Rule(WorthFindings findings)
    {
        if (findings.Figure("screens-per-person", "rule") is not { } rule) yield break;
        var unsure = findings.Rules.Any(period => !period.IsSure);
        var close = unsure ? " Some of its decisions rest on a positivity whose limits lead to different lines." : "";
        close += " The positivity counts false positives too: what drives the rule need not be infection.";
        var done = findings.Figure("screens-per-person", "as-done")!;
        yield return done.Figure.Estimate is null
            ? new Sentence("The stated rule of frequency, replayed over the data, asks each person for {0} screens." + close, WorthWords.Of(rule)[0])
            : new Sentence("The stated rule of frequency, replayed over the data, asks each person for {0} screens, where the gaps as they were come to {1}." + close, WorthWords.Of(rule)[0], WorthWords.Of(done)[0]);
        if (ByLots(findings) is { } lots) yield return lots;
    }

    // A faulty lot calls for more screens, and the lot is among what they are done with.
    private static Sentence? ByLots(WorthFindings findings)
    {
        if (findings.RuleLots is not { } lots || findings.Figure("screens-per-person", "rule-without-flagged-lots") is not { } without) return null;
        var which = Figure.Plural(lots.Lots, "a flagged lot", "flagged lots");
        FigureReference[] figures =
        [
            Figure.Count("worth.ruleLots.moreOften", lots.MoreOften), Figure.Count("worth.ruleLots.periods", lots.Periods), WorthWords.Of(without)[0], Figure.Count("worth.ruleLots.lessOften", lots.LessOften),
        ];
        return (lots.MoreOften, lots.LessOften) switch
        {
            (0, 0) => new Sentence($"Without the runs of {which} it would have done the same in all {{0}} periods.", figures[1]),
            (_, 0) => AnswerSentences.Compact($"In {{0}} of the {{1}} periods it would have had people screened more often because of {which}: without the runs of {which} it asks for {{2}} screens. A lot that fails calls for another lot, not for more screens with it.", figures),
            _ => new Sentence($"In {{0}} of the {{1}} periods it would have had people screened more often because of {which}, and in {{3}} less often: without these runs it asks for {{2}} screens. A lot that fails calls for another lot, not for more screens with it.", [.. figures]),
        };
    }

    public static IEnumerable<Sentence> Confirmation(WorthFindings findings)
    {
        var words = new WorthWords(findings);
        if (findings.Judged is not { Cost.Estimate: { } with } judged) yield break;
        if (findings.Options.FirstOrDefault(option => option.Option == judged.Option && option.Confirmation == WorthConfirmation.Without) is not { Cost.Estimate: { } without } other) yield break;
        var (own, instead) = (WorthWords.Cost(judged)[0], WorthWords.Cost(other)[0]);
        if (judged.Effect.Estimate is { } gains && other.Effect.Estimate is { } more && gains != more)
        {
            // People wait for the confirmatory test: it is not only the cost that differs.
            var many = WorthNames.Many(findings.Effect);
            yield return new Sentence(
                "At the central figures \"{0}\" with people who wait for the confirmatory test costs {1} {2}, with {3} " + many + "; without the test they leave on the screen, every positive for the whole isolation time, which costs {4}, with {5} " + many + ". Local rules may ask for the test.",
                WorthWords.Name(judged), own, words.Currency, WorthWords.Effect(judged)[0], instead, WorthWords.Effect(other)[0]);
            yield break;
        }

        yield return with <= without
            ? new Sentence("At the central figures the confirmatory test pays for itself: with it \"{0}\" costs {1} {2}, and without it, every positive away for the whole isolation time, {3}.", WorthWords.Name(judged), own, words.Currency, instead)
            : new Sentence("At the central figures the confirmatory test costs more than it saves: with it \"{0}\" costs {1} {2}, and without it {3}; but without it nobody who is falsely positive is told so, and local rules may ask for it.", WorthWords.Name(judged), own, words.Currency, instead);
    }

    /// <summary>Why nothing is pooled though the laboratory makes pools.</summary>
    public static IEnumerable<Sentence> Pools(WorthFindings findings)
    {
        if (!findings.AllowsPools || findings.Judged is not { } judged || findings.Options.Any(option => option.Confirmation == WorthConfirmation.Pooled)) yield break;
        if (findings.Figure("real-positives", judged.Option) is not { Figure.Estimate: not null } real) yield break;
        yield return new Sentence(
            "The laboratory makes pools, but none of a size that it allows saves confirmatory tests: {0} of the positives are real under \"{1}\", too many for that, because a pool with a real one in it is taken apart.",
            WorthWords.Of(real, Unit.Proportion)[0], WorthWords.Name(judged));
    }

    public static IEnumerable<Sentence> Counted(WorthFindings findings, CadenceFindings cadence)
    {
        // Where how often to screen has an answer, the sentence on both says it.
        if (findings is { Judged: { } judged, JudgedPlan.Length: > 0 } && !cadence.Options.Any(option => option.IsChosen))
        {
            yield return new Sentence(
                $"\"{{0}}\" is judged because it {(findings.JudgedIsNearest ? "comes nearest to how often people were screened in the data" : "is the most frequent of the options")}; {findings.JudgedPlan}.", WorthWords.Name(judged));
        }

        var effect = findings.Effect == WorthEffect.InfectionsAverted
            ? "The effect is infections averted, from how many are brought in and spread inside as the program file states it."
            : "The effect is infectious days removed: calendar days outside isolation, days off included.";
        yield return new Sentence(effect);
        yield return findings.DiscountRate is { } rate
            ? new Sentence("Costs and effects after the first year are discounted at {0} a year; those within it are not.", Figure.Number("worth.discountRate", rate, Unit.Proportion))
            : new Sentence("Nothing is discounted, and no amount is converted.");
        yield return new Sentence("The value of an effect is taken to come on top of the illness and outbreaks that it saves; where it already holds these, leave their prices out. In what to choose isolation is charged as far as screening adds to it, whereas the counted total holds all days of those found: days away that symptoms would have brought anyway are not charged, and the price of an illness must not hold them. Each day of isolation and each day lost to a false alarm counts as a working day: where people are not at work on all of them that charges too much, against screening. Where people leave on the screen, a positive that is never settled keeps its person away for the whole isolation time.");
        if (findings.CountsOutbreaks) yield return new Sentence("An outbreak is a chain of five or more infections from one brought in: its price has to be that of such a chain, not of a large outbreak.");
    }

    public static IEnumerable<Sentence> Missing(WorthFindings findings)
    {
        if (findings.Missing.IsEmpty) yield break;
        yield return new Sentence("No price is made up; what stating one more figure would allow is listed.");
    }
}
