using System.Collections.Immutable;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Comparisons;

/// <summary>What is said of levels by one measure: whether they differ, which, how sure that is, and what to check.</summary>
internal sealed class MeasureSentences
{
    private const string Path = "comparison";
    private const int Named = 5;
    private const double NearlyOne = 0.995;

    // Of many alike one is always the highest, by chance: it is named where it is more likely than not.
    private const double WorthSaying = 0.5;
    private readonly ComparisonFindings findings;
    private readonly ComparisonSummary summary;
    private readonly List<ComparisonRow> rows;
    private readonly string one;
    private readonly string many;
    private readonly string measure;
    private readonly string afterwards;

    // Operators are people: sentences are read aloud and sent on, so they count operators and name none.
    private readonly bool unnamed;

    public MeasureSentences(ComparisonFindings findings, ComparisonSummary summary)
    {
        (this.findings, this.summary) = (findings, summary);
        rows = [.. findings.RowsOf(summary)];
        (one, many, measure) = (ComparisonWords.One(findings.By), ComparisonWords.Many(findings.By), ComparisonWords.Of(summary.Measure));
        unnamed = findings.By == ComparisonWords.Of(Counting.Programs.CompareBy.Operator);
        afterwards = summary.AdjustedFor.IsEmpty ? "" : $" after adjustment for {ComparisonWords.Adjusted(summary.AdjustedFor)}";
    }

    public IEnumerable<Sentence> All()
    {
        if (summary.Undefined is { } reason || summary.P is null)
        {
            yield return new Sentence($"{measure} cannot be compared between {many}: {summary.Undefined ?? "no two have trials in the same stratum"}.");
            yield break;
        }

        yield return summary.Differ ? Differ() : Alike();
        if (unnamed)
        {
            if (!summary.StandingOut.IsEmpty) yield return new Sentence($"{{0}} of {{1}} {many} stand out by it.", Figure.Count(At(".standingOutCount"), summary.StandingOutCount), Figure.Count(Path + ".levelCount", findings.LevelCount));
            if (summary.Differ && summary.StandingOut.IsEmpty && Nobody() is { } none) yield return none;
            if (!summary.StandingOut.IsEmpty) yield return Check();
            yield break;
        }

        foreach (var row in summary.StandingOut.Take(Named).Select(Row)) yield return StandsOut(row);
        if (summary.StandingOut.Length > Named)
        {
            yield return new Sentence(
                $"{{0}} {many} stand out by it; these are the {Named.ToString(System.Globalization.CultureInfo.InvariantCulture)} that lie farthest out, and the table has all.", Figure.Count(At(".standingOutCount"), summary.StandingOutCount));
        }

        if (summary.Differ && summary.StandingOut.IsEmpty && Nobody() is { } nobody) yield return nobody;
        if (Pairs() is { } pairs) yield return pairs;
        foreach (var blamed in Blamed()) yield return blamed;
        if (!summary.StandingOut.IsEmpty) yield return Check();
    }

    private Sentence Differ()
    {
        var known = rows.Where(row => row.Adjusted.Estimate is not null).ToList();
        if (known.Count < 2) return new Sentence($"{measure} differs between {many} by more than chance{afterwards} (p {{0}}).", P());
        var (low, high) = (known.MinBy(row => row.Adjusted.Estimate)!, known.MaxBy(row => row.Adjusted.Estimate)!);
        var at = ComparisonWords.At(findings.By);
        if (unnamed) return new Sentence($"{measure} differs between {many} by more than chance{afterwards} (p {{0}}): adjusted rates run from {{1}} to {{2}}.", P(), Adjusted(low), Adjusted(high));
        return new Sentence(
            $"{measure} differs between {many} by more than chance{afterwards} (p {{0}}): adjusted rates run from {{1}} {at} {{2}} to {{3}} {at} {{4}}.",
            P(), Adjusted(low), Level(low), Adjusted(high), Level(high));
    }

    private Sentence Alike()
    {
        var key = $"{summary.Key}|chi-square-widened";
        if (!summary.AdjustedFor.IsEmpty && findings.Tests.FirstOrDefault(row => row.Key == key) is { P: { } raw } && raw < 1 - findings.Confidence)
        {
            return new Sentence(
                $"{measure} differs between {many} as counted (p {{0}}), but no more than chance makes it{afterwards} (p {{1}}): when and with what they tested may explain what is seen, and that does not prove them alike.",
                Figure.Number(FigurePath.Row(Path + ".tests", key) + ".p", raw, Unit.PValue), P());
        }

        return new Sentence($"{measure} does not differ between {many} by more than chance{afterwards} (p {{0}}). That does not prove them alike: a difference may be too small to be seen in these counts.", P());
    }

    private Sentence StandsOut(ComparisonRow row)
    {
        var side = row.Place.Standing == ComparisonStanding.Below ? "below" : "above";
        var what = summary.FunnelModel == Methods.MethodNames.FunnelAdditive ? $"what is usual between {many}" : "what chance makes likely";
        var path = RowPath(row);
        var text = $"{{0}} lies {side} {what}: {{1}} {ComparisonWords.Events(summary.Measure)} where {{2}} would be expected at the program's rates (p adjusted for the number of {many} {{3}})";
        var figures = new List<FigureReference>
        {
            Level(row), Figure.Count(path + ".share.events", row.Share.Events), Say.Ratio(path + ".expected", row.Expected), Figure.Number(path + ".place.pHolm", row.Place.PHolm, Unit.PValue),
        };
        if (row.Adjusted is { Estimate: not null, Lower: not null, Upper: not null })
        {
            text += $"; its adjusted rate is {{4}} ({Figure.Percent(findings.Confidence)} interval {{5}} to {{6}})";
            figures.AddRange([Adjusted(row), Figure.Number(path + ".adjusted.lower", row.Adjusted.Lower, Unit.Proportion), Figure.Number(path + ".adjusted.upper", row.Adjusted.Upper, Unit.Proportion)]);
            if (row.Rank is { Place: 1, ProbabilityHighest: >= WorthSaying } rank && side == "above")
            {
                // A probability that would be printed as 1 is told in words.
                text += rank.ProbabilityHighest >= NearlyOne ? ", all but certainly the highest of all" : ", the highest of all with a probability of {7}";
                if (rank.ProbabilityHighest < NearlyOne) figures.Add(Probability(row, rank));
            }
        }

        return new Sentence(text + (row.Share.FewCounts ? " [few counts]" : "") + ".", [.. figures]);
    }

    /// <summary>They differ as a whole, and none stands out.</summary>
    private Sentence? Nobody() => summary.Spread is { Estimate: not null, Lower: { } lower, Upper: { } upper }
        ? new Sentence(
            $"No single {one} stands out from these differences once their number is allowed for: another {one} of this kind would have a rate between {{0}} and {{1}}.",
            Figure.Number(At(".spread.lower"), lower, Unit.Proportion), Figure.Number(At(".spread.upper"), upper, Unit.Proportion))
        : new Sentence($"No single {one} stands out from the others once their number is allowed for.");

    private Sentence? Pairs()
    {
        if (!summary.Differ || summary.PairsToldApart is not { } apart || rows.Count < 3) return null;
        var pairs = findings.Pairs.Where(pair => pair.Measure == summary.Measure && pair.Basis == summary.Basis).ToList();
        if (apart == 0)
        {
            var widest = pairs.Where(pair => pair.Odds.Lower is not null).MaxBy(pair => Math.Abs(Math.Log(pair.Odds.Estimate!.Value)) / Math.Log(pair.Odds.Upper!.Value / pair.Odds.Lower!.Value));
            if (widest is null) return new Sentence($"They differ as a whole, but no two {many} can be told apart when all pairs are looked at together.");
            var path = FigurePath.Row(Path + ".pairs", widest.Key);
            return new Sentence(
                $"They differ as a whole, but no two {many} can be told apart when all pairs are looked at together: the clearest pair is {{0}} and {{1}}, {{2}} against {{3}} as counted, with an odds ratio of {{4}}{(summary.AdjustedFor.IsEmpty ? "" : " within the same " + ComparisonWords.Adjusted(summary.AdjustedFor))} "
                + "(limits that hold for all pairs, {5} to {6}, include 1).",
                Figure.Name(path + ".level", widest.Level), Figure.Name(path + ".other", widest.Other), Raw(Row(widest.Level)), Raw(Row(widest.Other)),
                Say.Ratio(path + ".odds.estimate", widest.Odds.Estimate), Say.Ratio(path + ".odds.lower", widest.Odds.Lower), Say.Ratio(path + ".odds.upper", widest.Odds.Upper));
        }

        var common = rows.FirstOrDefault(row => pairs.All(pair => !pair.ToldApart || pair.Level == row.Level || pair.Other == row.Level));
        return apart > 1 && common is not null
            ? new Sentence($"When all pairs are looked at together, {{0}} {Figure.Plural(apart, "pair", "pairs")} of {many} can be told apart, each of them with {{1}} in it.", Figure.Count(At(".pairsToldApart"), apart), Level(common))
            : new Sentence($"When all pairs are looked at together, {{0}} {Figure.Plural(apart, "pair", "pairs")} of {many} can be told apart; the table has them.", Figure.Count(At(".pairsToldApart"), apart));
    }

    /// <summary>Levels that the rates as counted would blame, or praise, wrongly.</summary>
    private IEnumerable<Sentence> Blamed()
    {
        if (summary.AdjustedFor.IsEmpty) yield break;
        var highest = summary is { Differ: true, HighestRaw: { } raw, HighestAdjusted: { } adjusted } && raw != adjusted && (Row(adjusted).Rank is not { } first || first.ProbabilityHighest >= WorthSaying);
        if (highest)
        {
            var (seen, fair) = (Row(summary.HighestRaw!), Row(summary.HighestAdjusted!));
            var path = RowPath(seen);
            var text = $"As counted, {{0}} is the highest ({{1}}), but when and with what it tested leads to expect {{2}} {ComparisonWords.Events(summary.Measure)}, and {{3}} were seen; once adjusted, {{4}} is the highest ({{5}})";
            var figures = new List<FigureReference>
            {
                Level(seen), Raw(seen), Say.Ratio(path + ".expected", seen.Expected), Figure.Count(path + ".share.events", seen.Share.Events), Level(fair), Adjusted(fair),
            };
            if (fair.Rank is { } rank)
            {
                text += rank.ProbabilityHighest >= NearlyOne ? ", all but certainly" : ", with a probability of {6}";
                if (rank.ProbabilityHighest < NearlyOne) figures.Add(Probability(fair, rank));
            }

            yield return new Sentence(text + ". The adjusted order is the one to go by.", [.. figures]);
        }

        foreach (var row in rows.Where(row => row.Place is { RawStanding: ComparisonStanding.Above or ComparisonStanding.Below, Standing: ComparisonStanding.Within } && !(highest && row.Level == summary.HighestRaw))
            .OrderByDescending(row => Math.Abs(Math.Log(Math.Max(row.Share.Estimate ?? 0, 1e-9) / summary.Rate!.Value))).Take(2))
        {
            var path = RowPath(row);
            yield return new Sentence(
                $"As counted, {{0}} lies {ComparisonNames.Of(row.Place.RawStanding)} the others ({{1}}); for when and with what it tested, {{2}} {ComparisonWords.Events(summary.Measure)} would be expected and {{3}} were seen, which is no more than chance makes it.",
                Level(row), Raw(row), Say.Ratio(path + ".expected", row.Expected), Figure.Count(path + ".share.events", row.Share.Events));
        }
    }

    private Sentence Check()
    {
        var (above, below) = (rows.Any(row => row.Place is { StandsOut: true, Standing: ComparisonStanding.Above }), rows.Any(row => row.Place is { StandsOut: true, Standing: ComparisonStanding.Below }));
        var parts = (summary.Measure, findings.By) switch
        {
            (ComparisonMeasure.Positivity, _) => (above ? "whether contacts or people with symptoms were screened there, how much infection there was around, and whether positives were confirmed as elsewhere" : "")
                + (above && below ? "; " : "") + (below ? "of a low one, how swabs are taken and read and whether every positive is recorded, because infections may be missed" : ""),
            (ComparisonMeasure.InvalidRuns, _) => (above ? "how kits are stored, how swabs are taken and read there, and what control swabs show" : "")
                + (above && below ? "; " : "") + (below ? "of a low one, whether unusable runs are recorded at all" : ""),
            _ => (above ? "how devices are read there, which lots are in use, and whether confirmatory specimens are taken in time" : "")
                + (above && below ? "; " : "") + (below ? "of a low one, which positives are sent to confirmation" : ""),
        };
        return new Sentence($"To check before anything is concluded from it: {parts}.");
    }

    private ComparisonRow Row(string level) => rows.First(row => row.Level == level);

    private string At(string figure) => FigurePath.Row(Path + ".summaries", summary.Key) + figure;

    private static string RowPath(ComparisonRow row) => FigurePath.Row(Path + ".rows", row.Key);

    private FigureReference P() => Figure.Number(At(".p"), summary.P, Unit.PValue);

    private static FigureReference Level(ComparisonRow row) => Figure.Name(RowPath(row) + ".level", row.Level);

    private static FigureReference Raw(ComparisonRow row) => Figure.Share(RowPath(row) + ".share", row.Share);

    private static FigureReference Adjusted(ComparisonRow row) => Figure.Number(RowPath(row) + ".adjusted.estimate", row.Adjusted.Estimate, Unit.Proportion);

    private static FigureReference Probability(ComparisonRow row, ComparisonRank rank) => Figure.Number(RowPath(row) + ".rank.probabilityHighest", rank.ProbabilityHighest, Unit.Ratio);
}
