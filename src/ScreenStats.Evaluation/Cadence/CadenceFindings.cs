using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence;

/// <summary>How often to screen: what each way of screening gives and costs, and how sure that is.</summary>
public sealed record CadenceFindings : IFinding
{
    /// <summary>Days that the outcomes are for.</summary>
    public required int Days { get; init; }

    /// <summary>People that the outcomes are for.</summary>
    public required long People { get; init; }

    /// <summary>Random draws behind the limits.</summary>
    public required int Draws { get; init; }

    /// <summary>Seed of the draws.</summary>
    public required ulong Seed { get; init; }

    /// <summary>Confidence of all limits.</summary>
    public required double Confidence { get; init; }

    /// <summary>Infectious days that 1,000 more screens must remove for a step to be worth it; null where not stated.</summary>
    public required double? Worthwhile { get; init; }

    /// <summary>Why that is not known; null where it is.</summary>
    public required string? WorthwhileUndefined { get; init; }

    /// <summary>The basis that is told first.</summary>
    public required CadenceBasis LeadingBasis { get; init; }

    /// <summary>The figures that the answer rests on.</summary>
    public required ImmutableArray<CadenceAssumption> Assumptions { get; init; }

    /// <summary>The ways of screening, the least frequent first; then what was done, where people were tested twice.</summary>
    public required ImmutableArray<CadenceOptionFinding> Options { get; init; }

    /// <summary>What each gives and costs.</summary>
    public required ImmutableArray<CadenceOutcome> Outcomes { get; init; }

    /// <summary>What each step to the next more frequent option adds.</summary>
    public required ImmutableArray<CadenceStep> Steps { get; init; }

    /// <summary>How sure the choice is; empty where nothing states what a step must add, or no gain is known.</summary>
    public required ImmutableArray<CadenceChoice> Choices { get; init; }

    /// <summary>What each uncertain assumption does to the answer, the one that does most first; empty where no gain is known.</summary>
    public required ImmutableArray<CadenceSwing> Swings { get; init; }

    /// <summary>What was planned against what was done.</summary>
    public required ImmutableArray<CadenceAdherence> Adherence { get; init; }

    /// <summary>Between which incidences each option is the one to choose; empty where none is chosen.</summary>
    public required ImmutableArray<CadenceIncidenceRange> Ranges { get; init; }

    /// <summary>Infection in the last days of the data; null where the incidence does not come from its cases, or the data are too short.</summary>
    public required CadenceRecent? Recent { get; init; }

    /// <summary>How infection would pass on inside without screening; null where that is stated or cannot be told.</summary>
    public required CadenceGrowth? Growth { get; init; }

    /// <summary>Refuted positives of the data where flagged lots are left out of the specificity; else null.</summary>
    public required CadenceFalseAlarmsFound? FalseAlarmsFound { get; init; }

    /// <summary>The audits that the sensitivity rests on; null where it comes from elsewhere.</summary>
    public required CadenceAudits? Audits { get; init; }

    /// <summary>Positive runs without a conclusive confirmatory result.</summary>
    public required long NotFollowedUp { get; init; }

    /// <summary>What stating one more figure would allow, in words; empty where nothing is missing.</summary>
    public required ImmutableArray<string> Missing { get; init; }

    /// <summary>What the data and the program file give: for the calculator that starts from a program.</summary>
    [JsonIgnore]
    public required CadenceInputs Inputs { get; init; }

    /// <summary>How the outcomes were computed, for what is computed from them.</summary>
    [JsonIgnore]
    internal CadenceWork? Work { get; init; }

    /// <summary>The option that is spoken of first; null without options.</summary>
    [JsonIgnore]
    public CadenceOptionFinding? Leading => Options.FirstOrDefault(option => option.Leads);

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [OutcomeTable, StepTable, ChoiceTable, RangeTable, AssumptionTable, SwingTable, AdherenceTable];

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<Sentence> Sentences { get; init; }

    /// <summary>The outcomes as a table.</summary>
    [JsonIgnore]
    public Table<CadenceOutcome> OutcomeTable => CadenceTables.Outcomes(this);

    /// <summary>The steps as a table.</summary>
    [JsonIgnore]
    public Table<CadenceStep> StepTable => CadenceTables.Steps(Steps);

    /// <summary>The choice as a table.</summary>
    [JsonIgnore]
    public Table<CadenceChoice> ChoiceTable => CadenceTables.Choices(Choices);

    /// <summary>The option by incidence as a table.</summary>
    [JsonIgnore]
    public Table<CadenceIncidenceRange> RangeTable => CadenceTables.Ranges(Ranges);

    /// <summary>The assumptions as a table.</summary>
    [JsonIgnore]
    public Table<CadenceAssumption> AssumptionTable => CadenceTables.Assumptions(Assumptions);

    /// <summary>What each assumption does as a table.</summary>
    [JsonIgnore]
    public Table<CadenceSwing> SwingTable => CadenceTables.Swings(Swings);

    /// <summary>Plan and practice as a table.</summary>
    [JsonIgnore]
    public Table<CadenceAdherence> AdherenceTable => CadenceTables.Adherences(Adherence);

    /// <summary>One figure of one option.</summary>
    /// <param name="option">The option.</param>
    /// <param name="measure">What it is.</param>
    /// <param name="basis">What is taken of infections brought in; null for the basis that is told first.</param>
    /// <returns>The outcome; null where there is none.</returns>
    public CadenceOutcome? Outcome(string option, CadenceMeasure measure, CadenceBasis? basis = null) => Outcomes.FirstOrDefault(outcome =>
        outcome.Option == option && outcome.Measure == measure && (outcome.Basis == CadenceBasis.Either || outcome.Basis == (basis ?? LeadingBasis)));
}
