using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Completeness;
using ScreenStats.Evaluation.Conduct;
using ScreenStats.Evaluation.Controls;
using ScreenStats.Evaluation.Coverage;
using ScreenStats.Evaluation.InvalidRuns;
using ScreenStats.Evaluation.Ledger;
using ScreenStats.Evaluation.Lots;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Participation;
using ScreenStats.Evaluation.Persons;
using ScreenStats.Evaluation.Positivity;
using ScreenStats.Evaluation.Repeats;
using ScreenStats.Evaluation.Sites;

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

    /// <summary>How runs were carried out.</summary>
    public required ConductFindings Conduct { get; init; }

    /// <summary>Whether unusable runs were repeated.</summary>
    public required RepeatFindings Repeats { get; init; }

    /// <summary>Runs of control swabs.</summary>
    public required ControlFindings Controls { get; init; }

    /// <summary>Every analysis, in the order in which they are read.</summary>
    [JsonIgnore]
    public ImmutableArray<IFinding> All =>
    [
        Ledger, Completeness, Positivity, InvalidRuns, Persons, Participation, Coverage,
        Lots, Sites, Conduct, Repeats, Controls,
    ];

    /// <summary>Every table, in the order of the analyses.</summary>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [.. All.SelectMany(finding => finding.Tables)];

    /// <summary>Every sentence, in the order of the analyses.</summary>
    [JsonIgnore]
    public ImmutableArray<Sentence> Sentences => [.. All.SelectMany(finding => finding.Sentences)];
}
