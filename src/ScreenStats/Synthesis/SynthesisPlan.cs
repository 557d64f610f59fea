using System.Collections.Immutable;
using System.Text.Json;
using ScreenStats.Synthesis.Planning;
using ScreenStats.Synthesis.Planning.Surroundings;

namespace ScreenStats.Synthesis;

/// <summary>
/// What is true of a synthetic program, and how its exports are written. Everything is stated; a seed does the rest.
/// Times are local, without an offset.
/// </summary>
public sealed partial record SynthesisPlan
{
    /// <summary>Title of the program, a fictional employer.</summary>
    public required string Title { get; init; }

    /// <summary>IANA name of the time zone written to the program file. It should be one without daylight saving.</summary>
    public string TimeZone { get; init; } = "Etc/UTC";

    /// <summary>First day, a Monday.</summary>
    public required DateOnly FirstDay { get; init; }

    /// <summary>Length in weeks, 1 to 520.</summary>
    public int Weeks { get; init; } = 26;

    /// <summary>The sites.</summary>
    public required ImmutableArray<SynthesisSite> Sites { get; init; }

    /// <summary>The makes of device.</summary>
    public required ImmutableArray<SynthesisKit> Kits { get; init; }

    /// <summary>The lots.</summary>
    public required ImmutableArray<SynthesisLot> Lots { get; init; }

    /// <summary>Infections.</summary>
    public SynthesisInfection Infection { get; init; } = new();

    /// <summary>The confirmatory test.</summary>
    public SynthesisConfirmation Confirmation { get; init; } = new();

    /// <summary>Audits of negative runs; empty: none.</summary>
    public ImmutableArray<SynthesisAudit> Audits { get; init; } = [];

    /// <summary>Share of a person's weeks spent away for other reasons (leave, illness, travel), in [0, 1).</summary>
    public double AbsentWeeksShare { get; init; } = 0.06;

    /// <summary>Share of inconclusive and invalid runs repeated on the spot, in [0, 1].</summary>
    public double RepeatShare { get; init; } = 0.85;

    /// <summary>True where each site runs a positive and a negative control swab from each lot each week.</summary>
    public bool ControlSwabs { get; init; }

    /// <summary>Share of the eligible people who take part, in (0, 1]; null: no headcount is written.</summary>
    public double? Enrolment { get; init; }

    /// <summary>The external prevalence in the program file; null: none.</summary>
    public SynthesisPrevalence? Prevalence { get; init; }

    /// <summary>Dated changes that the program file names.</summary>
    public ImmutableArray<SynthesisChange> Changes { get; init; } = [];

    /// <summary>Days on which a site's runs are taken because of an outbreak.</summary>
    public ImmutableArray<SynthesisOutbreak> Outbreaks { get; init; } = [];

    /// <summary>The community rate in the program file; null: none.</summary>
    public SynthesisCommunity? Community { get; init; }

    /// <summary>The section cadence of the program file, as it is written there: what the employer believes of how often to screen; null: none.</summary>
    public JsonElement? Cadence { get; init; }

    /// <summary>The section costs of the program file, as it is written there: what the employer says of prices; null: none.</summary>
    public JsonElement? Costs { get; init; }

    /// <summary>Columns of the screening export, by canonical name, in order.</summary>
    public ImmutableArray<string> ScreeningColumns { get; init; } =
        ["screen_id", "person", "site", "collected_at", "result", "lot", "kit", "operator", "specimen", "collection"];

    /// <summary>Canonical column of the screening export to the heading written, where it differs.</summary>
    public ImmutableSortedDictionary<string, string> ScreeningHeadings { get; init; } =
        ImmutableSortedDictionary<string, string>.Empty.WithComparers(StringComparer.Ordinal);

    /// <summary>Canonical word of the screening export to the word written, where it differs.</summary>
    public ImmutableSortedDictionary<string, string> ScreeningWords { get; init; } =
        ImmutableSortedDictionary<string, string>.Empty.WithComparers(StringComparer.Ordinal);

    /// <summary>What is wrong with the exports.</summary>
    public SynthesisDirt Dirt { get; init; } = new();

    /// <summary>The last day, a Sunday.</summary>
    internal DateOnly LastDay => FirstDay.AddDays((7 * Weeks) - 1);

    /// <summary>The moment up to which the data are complete: the last minute of the last day.</summary>
    internal DateTime DataAsOf => LastDay.ToDateTime(new TimeOnly(23, 59));

    /// <summary>
    /// The same program with about another number of screening runs: the people of every site are multiplied, everything
    /// else stays. The number of runs is a random figure; it comes within about one percent.
    /// </summary>
    /// <param name="runs">Screening runs wanted, at least 1.</param>
    /// <returns>The plan with other numbers of people.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="runs"/> is less than 1, or needs more than 16,000,000 people.</exception>
    public SynthesisPlan ScaledTo(long runs)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(runs, 1);
        var pilot = this;
        var people = Sites.Sum(site => site.People);
        if (people < 5_000) pilot = WithPeople(Math.Max(1, 5_000.0 / people));
        var factor = (double)runs / SyntheticProgram.CountRows(pilot);
        if (factor * pilot.Sites.Sum(site => site.People) > 16_000_000)
        {
            throw new ArgumentOutOfRangeException(nameof(runs), runs, "So many runs need more than 16,000,000 people: give the plan more weeks.");
        }

        return pilot.WithPeople(factor);
    }

    private SynthesisPlan WithPeople(double factor) => this with
    {
        Sites = [.. Sites.Select(site => site with { People = (int)Math.Max(1, Math.Round(site.People * factor)) })],
    };
}
