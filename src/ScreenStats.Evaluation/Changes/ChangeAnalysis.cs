using System.Collections.Immutable;
using ScreenStats.Evaluation.Changes.Snapshots;

namespace ScreenStats.Evaluation.Changes;

/// <summary>Compares two evaluations of one program.</summary>
internal static class ChangeAnalysis
{
    public static ChangeFindings Of(EvaluationSnapshot earlier, EvaluationSnapshot later, double confidence)
    {
        // By period small counts are hidden here and there; what is drawn from them would give them away.
        var hides = later.SuppressBelow > 0;
        var spans = new ComparedSpans(hides ? earlier with { Periods = [] } : Whole(earlier), hides ? later with { Periods = [] } : Whole(later));
        return new ChangeFindings
        {
            EarlierFirstDay = earlier.FirstDay!.Value,
            EarlierLastDay = earlier.LastDay!.Value,
            LaterFirstDay = later.FirstDay!.Value,
            LaterLastDay = later.LastDay!.Value,
            Relation = spans.Relation,
            SharedPeriods = spans.Shared,
            SharedPeriodsFallen = spans.Fallen,
            SharedPeriodsRisen = spans.Risen,
            Figures = [.. Figures(earlier, later, spans, confidence).OrderBy(row => row.By)],
            Flags = [.. Flags(earlier, later)],
            Settings = [.. Settings(earlier, later)],
            Answers = Answers(earlier.Answers, later.Answers),
            EarlierAnswers = earlier.Answers,
            Hides = hides,
        };
    }

    /// <summary>The answers that say something else than before, numbers aside.</summary>
    public static ImmutableArray<AnswerRow> Answers(ImmutableArray<SnapshotAnswer> earlier, ImmutableArray<SnapshotAnswer> later)
    {
        var before = earlier.ToDictionary(answer => answer.Id, StringComparer.Ordinal);
        var now = later.Select(answer => answer.Id).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. later.Select(answer => (Now: answer, Before: before.GetValueOrDefault(answer.Id)?.Text ?? ""))
                .Where(pair => WithoutNumbers(pair.Now.Text) != WithoutNumbers(pair.Before))
                .Select(pair => new AnswerRow(pair.Now.Id, pair.Now.Question, pair.Before, pair.Now.Text)),
            .. earlier.Where(answer => !now.Contains(answer.Id)).Select(answer => new AnswerRow(answer.Id, answer.Question, answer.Text, "")),
        ];
    }

    /// <summary>A text with every number, its signs and separators replaced by one sign.</summary>
    internal static string WithoutNumbers(string text)
    {
        var said = new System.Text.StringBuilder(text.Length);
        for (var at = 0; at < text.Length; at++)
        {
            if (!char.IsAsciiDigit(text[at]))
            {
                said.Append(text[at]);
                continue;
            }

            while (at + 1 < text.Length && (char.IsAsciiDigit(text[at + 1]) || (text[at + 1] is '.' or ',' && at + 2 < text.Length && char.IsAsciiDigit(text[at + 2])))) at++;
            // The sign before a difference is part of it.
            if (said.Length > 0 && said[^1] is ('+' or '-')) said.Length--;
            said.Append('#');
        }

        return said.ToString();
    }

    private static IEnumerable<ChangeRow> Figures(EvaluationSnapshot earlier, EvaluationSnapshot later, ComparedSpans spans, double confidence)
    {
        var before = earlier.Shares.ToDictionary(share => (share.By, share.Level, share.Measure));
        // Counts of sites that are hidden here and there are not drawn upon.
        var sites = later.SuppressBelow > 0 ? null : new PairedSites(earlier, later);
        foreach (var now in later.Shares)
        {
            var then = before.GetValueOrDefault((now.By, now.Level, now.Measure));
            if (now.Trials == 0 && (then is null || then.Trials == 0)) continue;
            // That a lot or site is new stands among the flags.
            if (then is null && now.By != Grouping.Program) continue;
            yield return ShareChange.Of(then, now, spans, confidence, sites);
        }

        foreach (var now in later.Figures)
        {
            var then = earlier.Figures.FirstOrDefault(figure => figure.Measure == now.Measure);
            if (now.Estimate is null && then?.Estimate is null) continue;
            yield return FigureChange.Of(then, now, spans, confidence);
        }
    }

    private static IEnumerable<FlagRow> Flags(EvaluationSnapshot earlier, EvaluationSnapshot later)
    {
        var before = earlier.Levels.ToDictionary(level => (level.By, level.Level), level => level.Flag);
        var now = later.Levels.ToDictionary(level => (level.By, level.Level), level => level.Flag);
        var rows = new List<FlagRow>();
        foreach (var (by, level) in before.Keys.Union(now.Keys))
        {
            var (was, there) = (before.TryGetValue((by, level), out var flagBefore), now.TryGetValue((by, level), out var flagNow));
            FlagChange? change = (flagNow & ~flagBefore) != Flag.None ? FlagChange.NewFlag
                : flagNow != Flag.None ? FlagChange.StillFlagged
                : flagBefore != Flag.None ? (there ? FlagChange.ClosedFlag : FlagChange.FlaggedAndGone)
                : !was ? FlagChange.New
                : !there ? FlagChange.Gone : null;
            if (change is { } what) rows.Add(new FlagRow($"{Model.LevelNames.Of(by)}|{level}", by, level, what, flagBefore, flagNow));
        }

        return rows.OrderBy(row => row.Change).ThenByDescending(row => row.By).ThenBy(row => row.Level, StringComparer.Ordinal);
    }

    private static IEnumerable<SettingRow> Settings(EvaluationSnapshot earlier, EvaluationSnapshot later)
    {
        var before = earlier.Settings.ToDictionary(setting => setting.Id, StringComparer.Ordinal);
        var now = later.Settings.ToDictionary(setting => setting.Id, StringComparer.Ordinal);
        // A file that hides small counts does not tell the stated accuracy of devices.
        var untold = earlier.SuppressBelow > 0 ? "stated-accuracy:" : "\0";
        foreach (var setting in later.Settings.Where(setting => !setting.Id.StartsWith(untold, StringComparison.Ordinal)))
        {
            var was = before.GetValueOrDefault(setting.Id)?.Text ?? "";
            if (was != setting.Text) yield return new SettingRow(setting.Id, setting.Name, was, setting.Text);
        }

        foreach (var setting in earlier.Settings.Where(setting => !now.ContainsKey(setting.Id) && !setting.Id.StartsWith(untold, StringComparison.Ordinal))) yield return new SettingRow(setting.Id, setting.Name, setting.Text, "");
    }

    // Counts by period are used only where they add up to those of the whole program: else they leave something out.
    private static EvaluationSnapshot Whole(EvaluationSnapshot snapshot)
    {
        foreach (var share in snapshot.Shares.Where(share => share.By == Grouping.Program))
        {
            if (snapshot.Periods.Sum(period => period.Of(share.Measure)?.Trials) is not { } trials || snapshot.Periods.Any(period => period.Of(share.Measure) is null)) continue;
            if (trials != share.Trials || snapshot.Periods.Sum(period => period.Of(share.Measure)!.Value.Events) != share.Events) return snapshot with { Periods = [] };
        }

        return snapshot;
    }
}
