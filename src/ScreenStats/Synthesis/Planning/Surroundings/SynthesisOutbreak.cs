namespace ScreenStats.Synthesis.Planning.Surroundings;

/// <summary>
/// Days on which a site's runs are taken because of an outbreak there. They are marked in the column outbreak where the screening export
/// has one, else in the program file.
/// </summary>
public sealed record SynthesisOutbreak
{
    /// <summary>Name of the site.</summary>
    public required string Site { get; init; }

    /// <summary>First day.</summary>
    public required DateOnly From { get; init; }

    /// <summary>Last day.</summary>
    public required DateOnly To { get; init; }

    /// <summary>Factor on the incidence of infection at the site on these days, at least 0.</summary>
    public double IncidenceFactor { get; init; } = 1;

    /// <summary>What is said of it; empty where nothing is.</summary>
    public string Note { get; init; } = "";
}
