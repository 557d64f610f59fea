using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Answers;
using ScreenStats.Evaluation.Changes.Differences;
using ScreenStats.Evaluation.Changes.Rows;
using ScreenStats.Evaluation.Changes.Snapshots;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Changes;

/// <summary>What has changed since an earlier evaluation of the same program.</summary>
public sealed record ChangeFindings : IFinding
{
    /// <summary>First day of the earlier evaluation.</summary>
    public required DateOnly EarlierFirstDay { get; init; }

    /// <summary>Last day of the earlier evaluation.</summary>
    public required DateOnly EarlierLastDay { get; init; }

    /// <summary>First day of this evaluation.</summary>
    public required DateOnly LaterFirstDay { get; init; }

    /// <summary>Last day of this evaluation.</summary>
    public required DateOnly LaterLastDay { get; init; }

    /// <summary>How the days of the two lie.</summary>
    public required SpanRelation Relation { get; init; }

    /// <summary>Days of the calendar that both cover.</summary>
    public long SharedDays => Math.Max(0, Math.Min(EarlierLastDay.DayNumber, LaterLastDay.DayNumber) - Math.Max(EarlierFirstDay.DayNumber, LaterFirstDay.DayNumber) + 1);

    /// <summary>Whole periods that both count.</summary>
    public required long SharedPeriods { get; init; }

    /// <summary>Those of them in which a count fell, so that rows or results were corrected.</summary>
    public required long SharedPeriodsFallen { get; init; }

    /// <summary>Those of them in which a count rose and none fell, so that runs or results came late.</summary>
    public required long SharedPeriodsRisen { get; init; }

    /// <summary>Each figure before and now: the whole program first, then sites and lots.</summary>
    public required ImmutableArray<ChangeRow> Figures { get; init; }

    /// <summary>Lots and sites that are flagged in one of the two, or are in one of them only.</summary>
    public required ImmutableArray<FlagRow> Flags { get; init; }

    /// <summary>Lots and sites with a flag that is new.</summary>
    public long NewFlags => Count(FlagChange.NewFlag);

    /// <summary>Lots and sites with a flag of before that is there still.</summary>
    public long StillFlagged => Flags.Count(row => (row.EarlierFlag & row.LaterFlag) != Flag.None);

    /// <summary>Lots and sites in use since of which a flag of before, or one of two, is gone.</summary>
    public long ClosedFlags => Flags.Count(row => row.Change != FlagChange.FlaggedAndGone && (row.EarlierFlag & ~row.LaterFlag) != Flag.None);

    /// <summary>Lots and sites that were flagged before and are not in these data.</summary>
    public long FlaggedAndGone => Count(FlagChange.FlaggedAndGone);

    /// <summary>How many settings are not the same in both.</summary>
    public long ChangedSettings => Settings.Length;

    /// <summary>By what the two were made differently.</summary>
    public required ImmutableArray<SettingRow> Settings { get; init; }

    /// <summary>Answers that say something else than before, numbers aside.</summary>
    public required ImmutableArray<AnswerRow> Answers { get; init; }

    /// <summary>The answers of the earlier evaluation.</summary>
    [JsonIgnore]
    internal ImmutableArray<SnapshotAnswer> EarlierAnswers { get; init; }

    /// <summary>Names of sites, lots and devices in either evaluation.</summary>
    [JsonIgnore]
    internal ImmutableArray<string> Names { get; init; } = [];

    /// <summary>Whether small counts are hidden: then no word rests on limits that are not shown.</summary>
    [JsonIgnore]
    internal bool Hides { get; init; }

    /// <summary>The figures as a table.</summary>
    [JsonIgnore]
    public Table<ChangeRow> FigureTable => ChangeTables.Figures(Figures);

    /// <summary>The flags as a table.</summary>
    [JsonIgnore]
    public Table<FlagRow> FlagTable => ChangeTables.Flags(Flags);

    /// <summary>The settings as a table.</summary>
    [JsonIgnore]
    public Table<SettingRow> SettingTable => ChangeTables.Settings(Settings);

    /// <summary>The answers as a table.</summary>
    [JsonIgnore]
    public Table<AnswerRow> AnswerTable => ChangeTables.Answers(Answers);

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [FigureTable, FlagTable, SettingTable, AnswerTable];

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<Sentence> Sentences => ChangeSentences.Of(this);

    /// <summary>The same with the answers of this evaluation as they may be read.</summary>
    internal ChangeFindings With(AnswerFindings answers) => this with { Answers = ChangeAnalysis.Answers(EarlierAnswers, FindingsSnapshot.Of(answers), Names) };

    private long Count(FlagChange change) => Flags.Count(row => row.Change == change);
}
