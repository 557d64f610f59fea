using System.Collections.Immutable;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Counting.Programs.Costs;
using ScreenStats.Counting.Programs.Surroundings;

namespace ScreenStats.Counting.Programs;

/// <summary>What the program file says, with every default filled in.</summary>
public sealed record ProgramSettings
{
    /// <summary>Title of the report.</summary>
    public string Title { get; init; } = "Screening program";

    /// <summary>IANA name of the time zone of times without an offset; null where none is stated.</summary>
    public string? TimeZone { get; init; }

    /// <summary>The moment up to which the data are complete; null: the latest report or collection in the confirmatory export.</summary>
    public StatedMoment? DataAsOf { get; init; }

    /// <summary>First day of the program, for finding rows dated before it; null where not stated.</summary>
    public DateOnly? StartsOn { get; init; }

    /// <summary>Files, columns and words of each export.</summary>
    public ExportsSettings Exports { get; init; } = new();

    /// <summary>A database that holds the screening and the confirmatory export; null where they are files.</summary>
    public WarehouseSettings? Warehouse { get; init; }

    /// <summary>The screening devices used.</summary>
    public ImmutableArray<ScreenSettings> Screens { get; init; } = [];

    /// <summary>Accuracy of the confirmatory test; null where not stated.</summary>
    public ConfirmatoryTestSettings? ConfirmatoryTest { get; init; }

    /// <summary>An external prevalence; null where not stated.</summary>
    public PrevalenceSettings? Prevalence { get; init; }

    /// <summary>Rules of follow-up.</summary>
    public PolicySettings Policy { get; init; } = new();

    /// <summary>How negative runs were drawn for audit.</summary>
    public AuditSettings Audits { get; init; } = new();

    /// <summary>How often an alarm may be false, and which are dealt with.</summary>
    public AlarmSettings Alarms { get; init; } = new();

    /// <summary>Dated changes that are named beforehand, in the order of their days.</summary>
    public ImmutableArray<ChangeSettings> Changes { get; init; } = [];

    /// <summary>Days on which a site's runs were taken because of an outbreak there.</summary>
    public ImmutableArray<OutbreakSettings> Outbreaks { get; init; } = [];

    /// <summary>A rate of the community outside; null where not stated.</summary>
    public CommunitySettings? Community { get; init; }

    /// <summary>What is stated for the question how often to screen; with nothing stated, every figure in it is null.</summary>
    public CadenceSettings Cadence { get; init; } = new();

    /// <summary>What is stated for the question whether screening is worth it; with nothing stated, every figure in it is null.</summary>
    public CostSettings Costs { get; init; } = new();

    /// <summary>How the report is made.</summary>
    public ReportSettings Report { get; init; } = new();
}
