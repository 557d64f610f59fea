using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Accuracy;
using ScreenStats.Evaluation.Alarms;
using ScreenStats.Evaluation.Answers;
using ScreenStats.Evaluation.Audits;
using ScreenStats.Evaluation.Bursts;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cautions;
using ScreenStats.Evaluation.Changes;
using ScreenStats.Evaluation.Comparisons;
using ScreenStats.Evaluation.Completeness;
using ScreenStats.Evaluation.Conduct;
using ScreenStats.Evaluation.ControlCharts;
using ScreenStats.Evaluation.Controls;
using ScreenStats.Evaluation.Coverage;
using ScreenStats.Evaluation.Delays;
using ScreenStats.Evaluation.Detection;
using ScreenStats.Evaluation.Expected;
using ScreenStats.Evaluation.Flow;
using ScreenStats.Evaluation.FollowThrough;
using ScreenStats.Evaluation.IntervalCases;
using ScreenStats.Evaluation.InvalidRuns;
using ScreenStats.Evaluation.Kits;
using ScreenStats.Evaluation.Ledger;
using ScreenStats.Evaluation.LotRecording;
using ScreenStats.Evaluation.Lots;
using ScreenStats.Evaluation.LotTests;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Participation;
using ScreenStats.Evaluation.Persons;
using ScreenStats.Evaluation.Positivity;
using ScreenStats.Evaluation.PredictiveValues;
using ScreenStats.Evaluation.Refuted;
using ScreenStats.Evaluation.Repeats;
using ScreenStats.Evaluation.Retests;
using ScreenStats.Evaluation.Sites;
using ScreenStats.Evaluation.Specimens;
using ScreenStats.Evaluation.StandOuts;
using ScreenStats.Evaluation.Trends;
using ScreenStats.Evaluation.TruePrevalence;
using ScreenStats.Evaluation.WhatIf;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Yield;

namespace ScreenStats.Evaluation;

/// <summary>The answers of one program: one property for each analysis, in the order in which they are read.</summary>
/// <remarks>
/// Each figure is addressed by its path in findings.json (see <see cref="FigurePath"/>). Properties marked
/// <see cref="JsonIgnoreAttribute"/> are drawn from the others and left out of that file. An undefined figure is null and has a
/// sibling whose name ends in <c>Undefined</c> with the reason.
/// </remarks>
public sealed record Findings
{
    /// <summary>The program as it was evaluated.</summary>
    [JsonIgnore]
    public required ProgramSettings Settings { get; init; }

    /// <summary>What time the data cover.</summary>
    public required DataSpan Span { get; init; }

    /// <summary>What became of every row.</summary>
    public required LedgerFindings Ledger { get; init; }

    /// <summary>The way of every row and run, from the exports to what is known of it.</summary>
    public required FlowFindings Flow { get; init; }

    /// <summary>How much of each column is recorded.</summary>
    public required CompletenessFindings Completeness { get; init; }

    /// <summary>Positive tests among valid tests.</summary>
    public required PositivityFindings Positivity { get; init; }

    /// <summary>Inconclusive and invalid runs among all runs.</summary>
    public required InvalidRunFindings InvalidRuns { get; init; }

    /// <summary>People tested and cases.</summary>
    public required PersonFindings Persons { get; init; }

    /// <summary>How often people were tested.</summary>
    public required ParticipationFindings Participation { get; init; }

    /// <summary>People tested among people eligible.</summary>
    public required CoverageFindings Coverage { get; init; }

    /// <summary>Which lots stand out.</summary>
    public required LotFindings Lots { get; init; }

    /// <summary>Which sites stand out.</summary>
    public required SiteFindings Sites { get; init; }

    /// <summary>What stands out among lots and sites, ranked, and what does not.</summary>
    public required StandOutFindings StandOuts { get; init; }

    /// <summary>Lots compared within sites and weeks.</summary>
    public required PlaceTestFindings LotTests { get; init; }

    /// <summary>Sites compared within lots and weeks.</summary>
    public required PlaceTestFindings SiteTests { get; init; }

    /// <summary>Sites, or what else is compared, side by side.</summary>
    public required ComparisonFindings Comparison { get; init; }

    /// <summary>Runs with no lot recorded, and what they hide.</summary>
    public required LotRecordingFindings LotRecording { get; init; }

    /// <summary>The strongest bursts over lots, sites and days.</summary>
    public required BurstFindings Bursts { get; init; }

    /// <summary>What the flag rule would see, and what it would miss.</summary>
    public required DetectionFindings Detection { get; init; }

    /// <summary>The alarms that would have come had they run every day.</summary>
    public required AlarmFindings Alarms { get; init; }

    /// <summary>How runs were carried out.</summary>
    public required ConductFindings Conduct { get; init; }

    /// <summary>Whether unusable runs were repeated.</summary>
    public required RepeatFindings Repeats { get; init; }

    /// <summary>Control charts of unusable runs and refuted positives.</summary>
    public required ControlChartFindings ControlCharts { get; init; }

    /// <summary>Runs of control swabs.</summary>
    public required ControlFindings Controls { get; init; }

    /// <summary>How many of the runs that called for a confirmatory test got a conclusive one.</summary>
    public required FollowUpFindings FollowUp { get; init; }

    /// <summary>How long people waited for specimen and report.</summary>
    public required DelayFindings Delays { get; init; }

    /// <summary>What audited negative runs say.</summary>
    public required AuditFindings Audits { get; init; }

    /// <summary>How accurate the screen was in this program.</summary>
    public required AccuracyFindings Accuracy { get; init; }

    /// <summary>Positive confirmatory specimens of people whose latest run was negative.</summary>
    public required IntervalCaseFindings IntervalCases { get; init; }

    /// <summary>What a positive run was worth.</summary>
    public required PredictiveValueFindings PredictiveValue { get; init; }

    /// <summary>Stated accuracy of the devices against what was seen.</summary>
    public required ExpectedFindings Expected { get; init; }

    /// <summary>Refuted positives of valid tests.</summary>
    public required RefutedFindings Refuted { get; init; }

    /// <summary>The prevalence behind the positivity.</summary>
    public required TruePrevalenceFindings TruePrevalence { get; init; }

    /// <summary>The screening devices side by side.</summary>
    public required KitFindings Kits { get; init; }

    /// <summary>Whether a second run on the same day agreed with a positive one.</summary>
    public required RetestFindings Retests { get; init; }

    /// <summary>Confirmatory specimens by why they were taken.</summary>
    public required SpecimenFindings Specimens { get; init; }

    /// <summary>Screening done for each case found.</summary>
    public required YieldFindings Yield { get; init; }

    /// <summary>Positivity, unusable runs and predictive value over time.</summary>
    public required TrendFindings Trends { get; init; }

    /// <summary>How often to screen: what each way gives and costs.</summary>
    public required CadenceFindings Cadence { get; init; }

    /// <summary>What would be if prevalence, accuracy or the interval between screens were others.</summary>
    public required WhatIfFindings WhatIf { get; init; }

    /// <summary>Whether screening is worth it: costs, effects, and when that turns.</summary>
    public required WorthFindings Worth { get; init; }

    /// <summary>What has changed since an earlier evaluation; there only where one was named.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ChangeFindings? Changes { get; init; }

    /// <summary>The readers' questions in plain words, and what to do next.</summary>
    public required AnswerFindings Answers { get; init; }

    /// <summary>What a reader must know before acting on a figure.</summary>
    public required CautionFindings Cautions { get; init; }

    /// <summary>What of these findings may be seen, where small counts are hidden; null where nothing is hidden.</summary>
    [JsonIgnore]
    public Disclosure.ReleaseDisclosure? Disclosure { get; init; }

    /// <summary>The tally they come from: which levels go together, for the disclosure stage.</summary>
    [JsonIgnore]
    internal Counting.Cubes.Tally? Source { get; init; }

    /// <summary>Every analysis, in the order in which they are read, as it may be seen.</summary>
    [JsonIgnore]
    public ImmutableArray<IFinding> All => Disclosure is { } disclosure ? [.. Evaluated.Select(disclosure.Veil)] : Evaluated;

    /// <summary>Every table with nothing hidden.</summary>
    [JsonIgnore]
    internal IEnumerable<ITable> AllTables => Evaluated.SelectMany(finding => finding.Tables);

    private ImmutableArray<IFinding> Evaluated =>
    [
        Ledger, Flow, Completeness, Positivity, InvalidRuns, Persons, Participation, Coverage,
        StandOuts, Alarms, Lots, Sites, LotTests, SiteTests, Comparison, LotRecording, Bursts, Detection, ControlCharts, Conduct, Repeats, Controls,
        FollowUp, Delays, Audits, Accuracy, IntervalCases, PredictiveValue, WhatIf.Positive, Expected, Refuted, Yield,
        TruePrevalence, Kits, Retests, Specimens, Trends, Cadence, WhatIf.Interval, Worth,
        .. Changes is { } changes ? (IFinding[])[changes] : [],
    ];

    /// <summary>Every table, in the order of the analyses.</summary>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [.. All.SelectMany(finding => finding.Tables)];

    /// <summary>Every sentence: answers and cautions, then in the order of the analyses.</summary>
    [JsonIgnore]
    public ImmutableArray<Sentence> Sentences => [.. Answers.Sentences, .. Cautions.Sentences, .. All.SelectMany(finding => finding.Sentences)];
}
