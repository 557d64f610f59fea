using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Lists;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Evaluation.Worth.Words;

namespace ScreenStats.Evaluation.Worth;

/// <summary>Whether screening is worth it: what it cost and did, what to choose, when that turns, and how sure it is.</summary>
public sealed record WorthFindings : IFinding
{
    /// <summary>The currency of all money, as stated; in words where none is.</summary>
    public required string Currency { get; init; }

    /// <summary>The year of the prices; null where not stated.</summary>
    public required int? PriceYear { get; init; }

    /// <summary>Why there is no year; null where there is one.</summary>
    public required string? PriceYearUndefined { get; init; }

    /// <summary>Whose costs and effects are counted, as stated; empty where not stated.</summary>
    public required string Perspective { get; init; }

    /// <summary>Discount rate per year; null where none is stated, and nothing is discounted.</summary>
    public required double? DiscountRate { get; init; }

    /// <summary>Why there is no rate; null where there is one.</summary>
    public required string? DiscountRateUndefined { get; init; }

    /// <summary>Days that options are compared over.</summary>
    public required int Days { get; init; }

    /// <summary>People that options are compared for.</summary>
    public required long People { get; init; }

    /// <summary>Random draws behind the limits.</summary>
    public required int Draws { get; init; }

    /// <summary>Seed of the draws.</summary>
    public required ulong Seed { get; init; }

    /// <summary>Confidence of all limits.</summary>
    public required double Confidence { get; init; }

    /// <summary>What screening is paid for.</summary>
    public required WorthEffect Effect { get; init; }

    /// <summary>Value of one effect; null where not stated.</summary>
    public required double? Value { get; init; }

    /// <summary>Why there is no value; null where there is one.</summary>
    public required string? ValueUndefined { get; init; }

    /// <summary>Lower end of its range; null where it is taken as exact or not stated.</summary>
    public required double? ValueLower { get; init; }

    /// <summary>Upper end, likewise.</summary>
    public required double? ValueUpper { get; init; }

    /// <summary>Whether any amount of money is stated.</summary>
    public required bool AnyStated { get; init; }

    /// <summary>What the program paid for, over the time of its data.</summary>
    public required ImmutableArray<WorthCostItem> Costs { get; init; }

    /// <summary>What that comes to for each screen, case and effect.</summary>
    public required ImmutableArray<WorthFigure> Figures { get; init; }

    /// <summary>The options, the least frequent first, no screening always among them; last what was done, which is no option to choose.</summary>
    public required ImmutableArray<WorthOption> Options { get; init; }

    /// <summary>The values at which the option judged begins or ceases to pay.</summary>
    public required ImmutableArray<WorthTurn> Turns { get; init; }

    /// <summary>The number of infections at which each other option does, and what was done.</summary>
    public required ImmutableArray<WorthTurn> OptionTurns { get; init; }

    /// <summary>Which option gains most for how much infection, from the least to the most; empty where no effect is valued.</summary>
    public required ImmutableArray<WorthRung> Ladder { get; init; }

    /// <summary>How much infection there was in all data and in their last days; empty where there are no days to set apart, the incidence is not from cases, or no effect is valued.</summary>
    public required ImmutableArray<WorthPeriod> Periods { get; init; }

    /// <summary>The share of draws in which the option judged gains more than it costs; null where that is not known.</summary>
    public required double? PaysShare { get; init; }

    /// <summary>Why there is none; null where there is one.</summary>
    public required string? PaysShareUndefined { get; init; }

    /// <summary>The same with the value of an effect at the lower end of its range; null where it has none, or the share is not known.</summary>
    public required double? PaysShareAtLower { get; init; }

    /// <summary>The same at its upper end.</summary>
    public required double? PaysShareAtUpper { get; init; }

    /// <summary>The share of draws in which one case causes one more or more without screening, so that infection grows by itself; null where that is not known.</summary>
    public required double? GrowingShare { get; init; }

    /// <summary>The mean net benefit of the option judged over the other draws; null where there are none, or it is not known.</summary>
    public required double? MeanWithoutGrowing { get; init; }

    /// <summary>How likely each option is the best, over values of an effect.</summary>
    public required ImmutableArray<WorthAcceptability> Acceptability { get; init; }

    /// <summary>What knowing more would be worth, the most first.</summary>
    public required ImmutableArray<WorthInformation> Information { get; init; }

    /// <summary>What each figure does to the net benefit of the option judged, the one that does most first.</summary>
    public required ImmutableArray<WorthSwing> Swings { get; init; }

    /// <summary>Whom to send away, over thresholds.</summary>
    public required ImmutableArray<WorthDecisionPoint> DecisionCurve { get; init; }

    /// <summary>What the stated rule of frequency would have done; empty where none is stated.</summary>
    public required ImmutableArray<WorthRulePeriod> Rules { get; init; }

    /// <summary>What flagged lots would have done to the rule; null where none is flagged or no rule is stated.</summary>
    public WorthRuleLots? RuleLots { get; init; }

    /// <summary>The lists of the field, item by item.</summary>
    public required ImmutableArray<WorthCriterion> Criteria { get; init; }

    /// <summary>What stating one more figure would allow, in words; empty where nothing is missing.</summary>
    public required ImmutableArray<string> Missing { get; init; }

    /// <summary>The verdict as it is read.</summary>
    public string Verdict => Sentences.IsDefaultOrEmpty ? "" : Sentences[0].Text;

    /// <summary>Whether the false alarms of flagged lots are in the data and left out of what is modelled.</summary>
    [JsonIgnore]
    internal bool LeavesOutFlaggedLots { get; init; }

    /// <summary>Whether the laboratory makes pools.</summary>
    [JsonIgnore]
    internal bool AllowsPools { get; init; }

    /// <summary>Whether outbreaks avoided are in the costs.</summary>
    [JsonIgnore]
    internal bool CountsOutbreaks { get; init; }

    /// <summary>Where the option judged is planned, where it is not the plan for all; empty where it is.</summary>
    [JsonIgnore]
    internal string JudgedPlan { get; init; } = "";

    /// <summary>Whether the option judged is the one nearest to what was done.</summary>
    [JsonIgnore]
    internal bool JudgedIsNearest { get; init; }

    /// <summary>What is counted and what is not, in words; among <see cref="Sentences"/> too.</summary>
    [JsonIgnore]
    public ImmutableArray<Sentence> CountedSentences => [.. Sentences.Where(sentence => sentence.Topic == WorthSentences.Counted)];

    /// <summary>The verdict with what belongs to it: its condition, how sure it is, what would be best; the first of <see cref="Sentences"/>.</summary>
    [JsonIgnore]
    public ImmutableArray<Sentence> VerdictSentences => [.. Sentences.Where(sentence => sentence.Topic == WorthSentences.Verdict)];

    /// <summary>Whether the program file states after how long someone infected can be infected again.</summary>
    [JsonIgnore]
    internal bool KnowsImmunity { get; init; }

    /// <summary>Whether the program file states the incidence, so that it is not of the data.</summary>
    [JsonIgnore]
    internal bool StatesIncidence { get; init; }

    /// <summary>The option that the verdict is of; null where there is none.</summary>
    [JsonIgnore]
    public WorthOption? Judged => Options.FirstOrDefault(option => option.IsJudged);

    /// <summary>What was done, site by site; null where nobody was tested twice.</summary>
    [JsonIgnore]
    public WorthOption? AsDone => Options.FirstOrDefault(option => option.IsAsDone);

    /// <summary>The number of infections at which what was done begins or ceases to pay; null where that is not known.</summary>
    [JsonIgnore]
    public WorthTurn? AsDoneTurn => AsDone is { } done ? OptionTurns.FirstOrDefault(turn => turn.Option == done.Key) : null;

    /// <summary>The option with the highest net benefit; null where that is not known.</summary>
    [JsonIgnore]
    public WorthOption? Best => Options.FirstOrDefault(option => option.IsBest);

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables =>
        [CostTable, FigureTable, OptionTable, TurnTable, LadderTable, PeriodTable, AcceptabilityTable, InformationTable, SwingTable, DecisionTable, RuleTable, CriterionTable];

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<Sentence> Sentences { get; init; }

    /// <summary>The costs as a table.</summary>
    [JsonIgnore]
    public Table<WorthCostItem> CostTable => WorthTables.Costs(Costs);

    /// <summary>What they come to as a table.</summary>
    [JsonIgnore]
    public Table<WorthFigure> FigureTable => WorthTables.Figures(Figures);

    /// <summary>The options as a table.</summary>
    [JsonIgnore]
    public Table<WorthOption> OptionTable => WorthTables.Options(Options, Effect);

    /// <summary>The break-evens as a table.</summary>
    [JsonIgnore]
    public Table<WorthTurn> TurnTable => WorthTables.Turns([.. Turns, .. OptionTurns]);

    /// <summary>The option by how much infection there is as a table.</summary>
    [JsonIgnore]
    public Table<WorthRung> LadderTable => WorthTables.Ladder(Ladder);

    /// <summary>How much infection there was as a table.</summary>
    [JsonIgnore]
    public Table<WorthPeriod> PeriodTable => WorthTables.Periods(Periods);

    /// <summary>The acceptability curves as a table.</summary>
    [JsonIgnore]
    public Table<WorthAcceptability> AcceptabilityTable => WorthTables.Acceptability(Acceptability);

    /// <summary>What knowing more is worth as a table.</summary>
    [JsonIgnore]
    public Table<WorthInformation> InformationTable => WorthTables.Information(Information);

    /// <summary>What each figure does as a table.</summary>
    [JsonIgnore]
    public Table<WorthSwing> SwingTable => WorthTables.Swings(Swings);

    /// <summary>The decision curve as a table.</summary>
    [JsonIgnore]
    public Table<WorthDecisionPoint> DecisionTable => WorthTables.Decisions(DecisionCurve);

    /// <summary>The rule of frequency as a table.</summary>
    [JsonIgnore]
    public Table<WorthRulePeriod> RuleTable => WorthTables.Rules(Rules);

    /// <summary>The lists as a table.</summary>
    [JsonIgnore]
    public Table<WorthCriterion> CriterionTable => WorthTables.Criteria(Criteria);

    /// <summary>One figure.</summary>
    /// <param name="measure">Its measure.</param>
    /// <param name="basis">Its basis; null for the first.</param>
    /// <returns>The figure; null where there is none.</returns>
    public WorthFigure? Figure(string measure, string? basis = null) => Figures.FirstOrDefault(figure => figure.Measure == measure && (basis is null || figure.Basis == basis));

    /// <summary>One break-even.</summary>
    /// <param name="figure">Its figure.</param>
    /// <returns>The break-even; null where there is none.</returns>
    public WorthTurn? Turn(string figure) => Turns.FirstOrDefault(turn => turn.Figure == figure);
}
