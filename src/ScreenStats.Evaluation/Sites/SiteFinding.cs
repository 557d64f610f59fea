using ScreenStats.Evaluation.Flagging;

namespace ScreenStats.Evaluation.Sites;

/// <summary>One site: its counts, how likely they are by chance, and whether it needs looking into.</summary>
public sealed record SiteFinding : JudgedLevel
{
    /// <summary>Name of the site.</summary>
    public required string Site { get; init; }

    /// <inheritdoc/>
    protected override string LevelName => Site;
}
