namespace ScreenStats.Counting.Cubes;

/// <summary>What became of a run when its person was looked up among the confirmatory specimens.</summary>
public enum FollowUp
{
    /// <summary>No follow-up was due: invalid runs, negative runs that were not audited, outcomes the policy does not follow up.</summary>
    None = 0,

    /// <summary>The confirmatory test was positive.</summary>
    Confirmed = 1,

    /// <summary>The confirmatory test was negative. The confirmatory test's word, not the truth.</summary>
    Refuted = 2,

    /// <summary>Only indeterminate or rejected specimens were found (also for an audited negative run).</summary>
    Unresolved = 3,

    /// <summary>No specimen yet, and the time for one to be reported is not over.</summary>
    Pending = 4,

    /// <summary>No specimen, and none is to be expected any more.</summary>
    Unverified = 5,

    /// <summary>An audited negative run whose confirmatory test was positive.</summary>
    Missed = 6,

    /// <summary>An audited negative run whose confirmatory test was negative.</summary>
    Agreed = 7,
}
