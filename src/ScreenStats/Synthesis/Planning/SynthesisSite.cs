namespace ScreenStats.Synthesis.Planning;

/// <summary>One site of a synthetic program: its people, its schedule and its technique.</summary>
public sealed record SynthesisSite
{
    /// <summary>Name of the site.</summary>
    public required string Name { get; init; }

    /// <summary>Region written to the export of sites; null: none. Without any there is no such export.</summary>
    public string? Region { get; init; }

    /// <summary>People who take part, at least 1.</summary>
    public required int People { get; init; }

    /// <summary>On which days the site screens.</summary>
    public SynthesisSchedule Schedule { get; init; } = SynthesisSchedule.MondayAndThursday;

    /// <summary>Chance that a person who is due and not absent is screened, in (0, 1].</summary>
    public double Participation { get; init; } = 0.9;

    /// <summary>Operators, at least 1. Each works from a kit of their own.</summary>
    public int Operators { get; init; } = 2;

    /// <summary>Chance that a run shows neither line, in [0, 1).</summary>
    public double InvalidRate { get; init; } = 0.006;

    /// <summary>Chance that a run shows the test line without the control line, in [0, 1).</summary>
    public double InconclusiveRate { get; init; } = 0.002;

    /// <summary>Share of runs whose swab people take themselves, in [0, 1].</summary>
    public double SelfCollectedShare { get; init; }

    /// <summary>Specimen written for this site: nasal, nasopharyngeal, throat, saliva or other.</summary>
    public string Specimen { get; init; } = "nasal";

    /// <summary>Factor on the incidence of infection at this site, at least 0.</summary>
    public double IncidenceFactor { get; init; } = 1;

    /// <summary>Share of this site's rows without a lot, in [0, 1].</summary>
    public double LotMissingShare { get; init; }

    /// <summary>True where this site enters control swabs among its screening runs and not in the controls export.</summary>
    public bool ControlsAmongScreens { get; init; }
}
