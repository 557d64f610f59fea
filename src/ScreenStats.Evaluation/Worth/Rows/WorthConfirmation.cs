namespace ScreenStats.Evaluation.Worth.Rows;

/// <summary>What follows a positive screen.</summary>
public enum WorthConfirmation
{
    /// <summary>Nobody is screened, so nothing follows.</summary>
    NotNeeded = 0,

    /// <summary>A confirmatory test of every positive; those it refutes come back to work.</summary>
    Confirmed = 1,

    /// <summary>The same with specimens pooled, each taken apart only where its pool is positive.</summary>
    Pooled = 2,

    /// <summary>None: every positive is kept away for the whole isolation time.</summary>
    Without = 3,
}
