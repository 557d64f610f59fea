using System.Collections.Immutable;
using ScreenStats.Evaluation.Changes.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Changes;

internal static class ChangeTables
{
    public static Table<ChangeRow> Figures(ImmutableArray<ChangeRow> rows) => new(
        "changes",
        "What has changed",
        "Each figure in the earlier evaluation and in this one, and a difference, later less earlier. Two evaluations of one program share runs, so the difference compares what shares none, as the column of "
        + "what is compared says; where nothing can be told apart it is that of the whole values, and has no limits. Limits are Newcombe's; the widened ones allow for the same people, sites and weeks being counted again and again, and lead.",
        [
            new("by", "By", Unit.Text, "Of what part of the program.", row => Cell.Text(LevelNames.Of(row.By))),
            new("level", "Level", Unit.Text, "The part; empty for the whole program, (none) where no lot is recorded.", row => row.Level.Length == 0 ? Cell.Empty : Cell.Text(row.Level)),
            new("measure", "Figure", Unit.Text, "Which trials and events.", row => Cell.Text(Words.Of(row.Measure))),
            new("earlier_events", "Earlier number", Unit.Count, "Events in the earlier evaluation.", row => Count(row.EarlierEvents)),
            new("earlier_trials", "Of", Unit.Count, "Trials in the earlier evaluation.", row => Count(row.EarlierTrials)),
            new("earlier_estimate", "Earlier", Unit.Proportion, "The figure of the earlier evaluation.", row => Cell.NumberOr(row.EarlierEstimate, row.EarlierEstimateUndefined!)) { Method = Methods.MethodNames.EarlierValue },
            new("later_events", "Later number", Unit.Count, "Events in this evaluation.", row => Count(row.LaterEvents)),
            new("later_trials", "Of", Unit.Count, "Trials in this evaluation.", row => Count(row.LaterTrials)),
            new("later_estimate", "Later", Unit.Proportion, "The figure of this evaluation.", row => Cell.NumberOr(row.LaterEstimate, row.LaterEstimateUndefined!)) { Method = Methods.MethodNames.EarlierValue },
            new("basis", "Compared", Unit.Text, "separate-spans: both as they are, for they share no day; added-since: the earlier one with what was added since; periods-since: the earlier one with the periods after it; "
                + "periods-not-shared: the periods that only one of them has; whole-values: both as they are, though they share runs, so without limits.", row => Cell.Text(Words.Of(row.Basis))),
            new("from_events", "Number compared, earlier side", Unit.Count, "Events of what is compared from the earlier evaluation.", row => Count(row.FromEvents)),
            new("from_trials", "Of", Unit.Count, "Trials of what is compared from the earlier evaluation.", row => Count(row.FromTrials)),
            new("to_events", "Number compared, later side", Unit.Count, "Events of what it is compared with.", row => Count(row.ToEvents)),
            new("to_trials", "Of", Unit.Count, "Trials of what it is compared with.", row => Count(row.ToTrials)),
            new("estimate", "Difference", Unit.Difference, "Of what is compared, later less earlier.", row => Cell.NumberOr(row.Estimate, row.EstimateUndefined!)),
            new("lower", "Lower", Unit.Difference, "Lower limit of the difference as if all trials were independent.", row => Cell.NumberOr(row.Lower, row.LowerUndefined!)),
            new("upper", "Upper", Unit.Difference, "Upper limit of the difference as if all trials were independent.", row => Cell.NumberOr(row.Upper, row.LowerUndefined!)),
            new("method", "Method", Unit.Text, "Method of the limits.", row => Cell.Text(row.Method)),
            new("confidence", "Confidence", Unit.Proportion, "Confidence of all limits of the row.", row => Cell.Number(row.Confidence)),
            new("widened_lower", "Lower, widened", Unit.Difference, "Lower limit widened because trials come in clusters.", row => Cell.NumberOr(row.WidenedLower, row.WidenedLowerUndefined!)),
            new("widened_upper", "Upper, widened", Unit.Difference, "Upper limit widened because trials come in clusters.", row => Cell.NumberOr(row.WidenedUpper, row.WidenedLowerUndefined!)),
            new("widened_method", "Method, widened", Unit.Text, "Method of the widened limits: over the sites that stand on both sides, where both evaluations count by site, else by a design effect scaled to what is compared.", row => row.WidenedMethod is { } method ? Cell.Text(method) : Cell.Empty),
            new("remark", "Remark", Unit.Text, "Few counts (fewer than 5 events or other trials on a side), and why there are no limits.", Remark),
        ],
        rows);

    public static Table<FlagRow> Flags(ImmutableArray<FlagRow> rows) => new(
        "changed-flags",
        "Flags before and now",
        "Lots and sites that are flagged in one of the two evaluations, or are in one of them only. A flag that is closed says that the counts no longer stand out by the same rule. It does not say that the cause was found, nor that any positive was false.",
        [
            new("by", "By", Unit.Text, "Whether it is a lot or a site.", row => Cell.Text(LevelNames.Of(row.By))),
            new("level", "Level", Unit.Text, "Its name.", row => Cell.Text(row.Level)),
            new("change", "What became of it", Unit.Text, "new-flag, still-flagged, partly-closed (flagged for two reasons, now for one), closed-flag (in use since, not flagged now), flagged-and-gone (not in these data), new or gone (without a flag).", row => Cell.Text(Words.Of(row.Change))),
            new("earlier_flag", "Flag before", Unit.Text, "Empty, refuted, invalid or refuted-and-invalid.", row => Flag(row.EarlierFlag)),
            new("later_flag", "Flag now", Unit.Text, "Empty, refuted, invalid or refuted-and-invalid.", row => Flag(row.LaterFlag)),
        ],
        rows);

    public static Table<SettingRow> Settings(ImmutableArray<SettingRow> rows) => new(
        "changed-settings",
        "What the two evaluations were made by",
        "Settings, as far as findings.json tells of them, that are not the same in both. A figure may differ because of them alone.",
        [
            new("setting", "Setting", Unit.Text, "What it is.", row => Cell.Text(row.Name)),
            new("earlier", "Earlier", Unit.Text, "How it was; empty where it was not there.", row => Text(row.EarlierText)),
            new("later", "Later", Unit.Text, "How it is; empty where it is not there.", row => Text(row.LaterText)),
        ],
        rows);

    public static Table<AnswerRow> Answers(ImmutableArray<AnswerRow> rows) => new(
        "changed-answers",
        "Answers that say something else",
        "Answers to the readers' questions whose words, numbers aside, are not the same in both evaluations.",
        [
            new("question", "Question", Unit.Text, "The question.", row => Cell.Text(row.Question)),
            new("earlier", "Earlier", Unit.Text, "How the earlier evaluation answered it; empty where it did not.", row => Text(row.EarlierText)),
            new("later", "Later", Unit.Text, "How this one answers it; empty where it does not.", row => Text(row.LaterText)),
        ],
        rows);

    private static Cell Count(long? value) => value is { } count ? Cell.Count(count) : Cell.Empty;

    private static Cell Flag(Flag flag) => Text(LevelNames.Of(flag));

    private static Cell Text(string text) => text.Length == 0 ? Cell.Empty : Cell.Text(text);

    private static Cell Remark(ChangeRow row)
    {
        var parts = new List<string>(2);
        if (row.FewCounts == true) parts.Add("few counts");
        if (row.LowerUndefined is { } reason) parts.Add("no limits: " + reason);
        else if (row.WidenedLowerUndefined is { } why) parts.Add("not widened, so too narrow: " + why);
        else if (row.WidenedMethod == Methods.MethodNames.ScaledEffect) parts.Add("widened as if other sites stood on each side, so too wide");
        return parts.Count == 0 ? Cell.Empty : Cell.Text(string.Join("; ", parts));
    }
}
