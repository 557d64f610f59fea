using System.Collections.Immutable;
using ScreenStats.Evaluation.Changes.Differences;
using ScreenStats.Evaluation.Changes.Rows;
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
            Answers = Answers(earlier.Answers, later.Answers, Names(earlier, later)),
            Names = Names(earlier, later),
            EarlierAnswers = earlier.Answers,
            Hides = hides,
        };
    }

    /// <summary>The answers that say something else than before, numbers aside.</summary>
    /// <param name="earlier">Those of the earlier evaluation.</param>
    /// <param name="later">Those of this one.</param>
    /// <param name="names">Names of sites, lots and devices: their digits are no numbers.</param>
    public static ImmutableArray<AnswerRow> Answers(ImmutableArray<SnapshotAnswer> earlier, ImmutableArray<SnapshotAnswer> later, ImmutableArray<string> names)
    {
        var before = earlier.ToDictionary(answer => answer.Id, StringComparer.Ordinal);
        var now = later.Select(answer => answer.Id).ToHashSet(StringComparer.Ordinal);
        var wording = new AnswerWording(names);
        return
        [
            .. later.Select(answer => (Now: answer, Before: before.GetValueOrDefault(answer.Id)?.Text ?? ""))
                .Where(pair => wording.Of(pair.Now.Text) != wording.Of(pair.Before))
                .Select(pair => new AnswerRow(pair.Now.Id, pair.Now.Question, pair.Before, pair.Now.Text)),
            .. earlier.Where(answer => !now.Contains(answer.Id)).Select(answer => new AnswerRow(answer.Id, answer.Question, answer.Text, "")),
        ];
    }

    // Devices stand among the settings, after a colon.
    private static ImmutableArray<string> Names(EvaluationSnapshot earlier, EvaluationSnapshot later) =>
    [
        .. earlier.Levels.Concat(later.Levels).Select(level => level.Level)
            .Concat(earlier.Settings.Concat(later.Settings).Where(setting => setting.Id.Contains(':', StringComparison.Ordinal)).Select(setting => setting.Id[(setting.Id.IndexOf(':', StringComparison.Ordinal) + 1)..]))
            .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
    ];

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
                : (flagBefore & flagNow) != Flag.None ? (flagBefore == flagNow ? FlagChange.StillFlagged : FlagChange.PartlyClosed)
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
