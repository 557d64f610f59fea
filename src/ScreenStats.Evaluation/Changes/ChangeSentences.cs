using System.Collections.Immutable;
using ScreenStats.Evaluation.Changes.Differences;
using ScreenStats.Evaluation.Changes.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Changes;

internal static class ChangeSentences
{
    private const string Path = "changes";

    public static ImmutableArray<Sentence> Of(ChangeFindings findings)
    {
        var said = ImmutableArray.CreateBuilder<Sentence>();
        said.Add(Spans(findings));
        if (Periods(findings) is { } periods) said.Add(periods);
        foreach (var row in findings.Figures.Where(row => row.By == Grouping.Program && row.Estimate is not null)) said.Add(Of(findings, row));
        said.Add(Flags(findings) with { BeginsParagraph = true });
        var outside = Outside(findings).Take(5).ToList();
        if (outside.Count > 0) said.Add(new Sentence("Each site and lot is compared by its own limits, so of many about one in twenty lies outside of them by chance alone. Those that do, the largest difference first, follow."));
        foreach (var row in outside) said.Add(Of(findings, row));
        if (!findings.Settings.IsEmpty)
        {
            said.Add(new Sentence($"The two were not made alike, so differences may come from that too: {{0}} {Figure.Plural(findings.ChangedSettings, "setting is", "settings are")} not the same ("
                + string.Join("; ", findings.Settings.Select((_, index) => $"{{{index + 1}}}")) + ").",
                [Figure.Count(Path + ".changedSettings", findings.ChangedSettings), .. findings.Settings.Select(row => Figure.Name(FigurePath.Row(Path + ".settings", row.Id) + ".name", row.Name))])
            {
                BeginsParagraph = true,
            });
        }

        return said.ToImmutable();
    }

    /// <summary>A figure before and now, and how many flags are new and how many are gone, in one sentence.</summary>
    public static Sentence InOne(ChangeFindings findings, ChangeRow? row)
    {
        var figures = new List<FigureReference>();
        var said = row is null ? "" : Short(findings, row, figures) + "; ";
        figures.Add(Figure.Count(Path + ".newFlags", findings.NewFlags));
        figures.Add(Figure.Count(Path + ".closedFlags", findings.ClosedFlags));
        return new Sentence(
            $"{said}{{{figures.Count - 2}}} {Figure.Plural(findings.NewFlags, "lot or site", "lots or sites")} newly flagged, {{{figures.Count - 1}}} {Figure.Plural(findings.ClosedFlags, "flag", "flags")} closed.", [.. figures]);
    }

    private static string Short(ChangeFindings findings, ChangeRow row, List<FigureReference> figures)
    {
        var path = FigurePath.Row(Path + ".figures", row.Key);
        figures.Add(Figure.Number(path + ".earlierEstimate", row.EarlierEstimate, Unit.Proportion, row.EarlierEstimateUndefined));
        figures.Add(Figure.Number(path + ".laterEstimate", row.LaterEstimate, Unit.Proportion, row.LaterEstimateUndefined));
        figures.Add(Figure.Number(path + ".estimate", row.Estimate, Unit.Difference, row.EstimateUndefined));
        var compared = Compared(findings, row, path, figures);
        var basis = row.Basis switch
        {
            ChangeBasis.AddedSince => $"what was added since{compared} differs by",
            ChangeBasis.PeriodsSince => $"the periods since{compared} differ by",
            ChangeBasis.PeriodsNotShared => $"the periods not shared{Now(compared)} differ by",
            _ => "the difference is",
        };
        var start = $"{(row.Measure == ChangeMeasure.PositivePredictiveValue ? "Confirmed of conclusive positives" : Words.Name(row.Measure))}: {{0}} before, {{1}} now; {basis} {{2}}";
        if (row.LowerUndefined is not null) return start + ", without an interval";
        var widened = row.WidenedLower is not null;
        var at = figures.Count;
        figures.Add(widened ? Figure.Number(path + ".widenedLower", row.WidenedLower, Unit.Difference) : Figure.Number(path + ".lower", row.Lower, Unit.Difference));
        figures.Add(widened ? Figure.Number(path + ".widenedUpper", row.WidenedUpper, Unit.Difference) : Figure.Number(path + ".upper", row.Upper, Unit.Difference));
        var clear = Clear(findings, row) is { Length: > 0 } word ? ", " + word : "";
        return $"{start} ({Figure.Percent(row.Confidence)} interval {(widened ? "" : "not widened for clusters, ")}{{{at}}} to {{{at + 1}}}){clear}";
    }

    /// <summary>A figure before and now, and by how much it differs.</summary>
    public static Sentence Of(ChangeFindings findings, ChangeRow row)
    {
        var path = FigurePath.Row(Path + ".figures", row.Key);
        var figures = new List<FigureReference>
        {
            Figure.Number(path + ".earlierEstimate", row.EarlierEstimate, Unit.Proportion, row.EarlierEstimateUndefined),
            Figure.Number(path + ".laterEstimate", row.LaterEstimate, Unit.Proportion, row.LaterEstimateUndefined),
            Figure.Number(path + ".estimate", row.Estimate, Unit.Difference, row.EstimateUndefined),
        };
        var part = row.By == Grouping.Program ? "" : $" at the {LevelNames.Of(row.By)} {{{figures.Count}}}";
        if (row.By == Grouping.Lot) part = part.Replace(" at the lot ", " of lot ", StringComparison.Ordinal).Replace(" at the site ", " at site ", StringComparison.Ordinal);
        if (row.By == Grouping.Site) part = part.Replace(" at the site ", " at site ", StringComparison.Ordinal);
        if (part.Length > 0) figures.Add(Figure.Name(path + ".level", row.Level));
        var compared = Compared(findings, row, path, figures);
        var (limits, clear) = Limits(findings, row, path, figures);
        return new Sentence($"{Words.Name(row.Measure)}{part}: {{0}} before, {{1}} now; {Basis(row, compared)} {{2}}{limits}{(row.FewCounts == true && !findings.Hides ? " [few counts]" : "")}{clear}.", [.. figures]);
    }

    /// <summary>What became of the flags.</summary>
    public static Sentence Flags(ChangeFindings findings)
    {
        if (findings.Flags.All(row => row.EarlierFlag == Flag.None && row.LaterFlag == Flag.None)) return new Sentence("No lot and no site is flagged, in either evaluation.");
        return new Sentence(
            "Of lots and sites {0} are newly flagged, {1} are flagged still, {2} have lost a flag, and {3} were flagged and are not in these data.",
            Figure.Count(Path + ".newFlags", findings.NewFlags), Figure.Count(Path + ".stillFlagged", findings.StillFlagged),
            Figure.Count(Path + ".closedFlags", findings.ClosedFlags), Figure.Count(Path + ".flaggedAndGone", findings.FlaggedAndGone));
    }

    /// <summary>Sites and lots whose limits leave out zero, the largest first; none where small counts are hidden, for these limits are too.</summary>
    private static IEnumerable<ChangeRow> Outside(ChangeFindings findings) => findings.Hides ? [] : findings.Figures
        .Where(row => row.By != Grouping.Program && row.LeavesOutZero == true && row.FewCounts != true)
        .OrderByDescending(row => Math.Abs(row.Estimate!.Value)).ThenBy(row => row.Key, StringComparer.Ordinal);

    private static Sentence Spans(ChangeFindings findings)
    {
        var what = findings.Relation switch
        {
            SpanRelation.Separate => "They share {4} days and so no run, and are compared as they are, as independent groups",
            SpanRelation.Grown => "This one holds all {4} days of the earlier one, so the earlier one is compared with what was added since, which shares no run with it: new runs, and results that came late",
            SpanRelation.Overlapping => "They share {4} days, so only the periods that one of them has alone are compared, where both count by period",
            SpanRelation.SameDays => "They cover the same {4} days, so a difference comes from late rows and results, corrections or settings, and there is no interval for it",
            _ => "All {4} days of this one are in the earlier one too, so there is no interval for a difference",
        };
        return new Sentence(
            "The earlier evaluation covers {0} to {1}, this one {2} to {3}. " + what + ".",
            Figure.Day(Path + ".earlierFirstDay", findings.EarlierFirstDay), Figure.Day(Path + ".earlierLastDay", findings.EarlierLastDay),
            Figure.Day(Path + ".laterFirstDay", findings.LaterFirstDay), Figure.Day(Path + ".laterLastDay", findings.LaterLastDay),
            Figure.Count(Path + ".sharedDays", findings.SharedDays));
    }

    private static Sentence? Periods(ChangeFindings findings)
    {
        if (findings.SharedPeriods == 0 || findings.SharedPeriodsFallen + findings.SharedPeriodsRisen == 0) return null;
        return new Sentence(
            "Of {0} whole periods that both count, {1} have more counts now (runs or results that came late) and {2} fewer of something (corrections).",
            Figure.Count(Path + ".sharedPeriods", findings.SharedPeriods), Figure.Count(Path + ".sharedPeriodsRisen", findings.SharedPeriodsRisen), Figure.Count(Path + ".sharedPeriodsFallen", findings.SharedPeriodsFallen));
    }

    private static (string Limits, string Clear) Limits(ChangeFindings findings, ChangeRow row, string path, List<FigureReference> figures)
    {
        if (row.LowerUndefined is { } reason) return ($", without an interval, because {reason}", "");
        var widened = row.WidenedLower is not null;
        var counts = row.FromTrials is not null;
        var at = figures.Count;
        figures.Add(widened ? Figure.Number(path + ".widenedLower", row.WidenedLower, Unit.Difference) : Figure.Number(path + ".lower", row.Lower, Unit.Difference));
        figures.Add(widened ? Figure.Number(path + ".widenedUpper", row.WidenedUpper, Unit.Difference) : Figure.Number(path + ".upper", row.Upper, Unit.Difference));
        var kind = !counts ? "" : widened ? ", widened for clusters" : ", not widened for clusters, so too narrow";
        var clear = Clear(findings, row) is { Length: > 0 } word ? ": " + word : "";
        return ($" ({Figure.Percent(row.Confidence)} confidence{kind}: {{{at}}} to {{{at + 1}}})", clear);
    }

    // Of a single site or lot nothing is said: of many, some lie outside of their own limits by chance. Limits made as for other sites are too wide to call a difference chance.
    private static string Clear(ChangeFindings findings, ChangeRow row) =>
        findings.Hides || row.By != Grouping.Program || row.LeavesOutZero is not { } outside ? ""
        : outside ? "more than chance readily makes"
        : row.WidenedMethod == Methods.MethodNames.ScaledEffect ? "not told from chance" : "no more than chance readily makes";

    // How many of what is compared, where it is not what stands beside it.
    private static string Compared(ChangeFindings findings, ChangeRow row, string path, List<FigureReference> figures)
    {
        if (findings.Hides || row.ToTrials is null || row.Basis is ChangeBasis.SeparateSpans or ChangeBasis.WholeValues) return "";
        figures.Add(Figure.Count(path + ".toEvents", row.ToEvents!.Value));
        figures.Add(Figure.Count(path + ".toTrials", row.ToTrials.Value));
        return $" ({{{figures.Count - 2}}} of {{{figures.Count - 1}}})";
    }

    // Both sides are periods here, so which one's counts these are must be said.
    private static string Now(string compared) => compared.Replace(")", " now)", StringComparison.Ordinal);

    private static string Basis(ChangeRow row, string compared) => row.Basis switch
    {
        ChangeBasis.AddedSince => $"what was added since{compared} differs from before by",
        ChangeBasis.PeriodsSince => $"the periods since{compared} differ from before by",
        ChangeBasis.PeriodsNotShared => $"the periods that only one of them has{Now(compared)} differ by",
        _ => "the difference is",
    };
}
