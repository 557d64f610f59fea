namespace ScreenStats.Counting.Cubes;

/// <summary>What is added up over the runs of one person, to judge how far audits can be trusted where people are tested again and again.</summary>
public enum AuditTotal
{
    /// <summary>1 for each person with a valid test: its product with another total is the sum of that total over people.</summary>
    Persons = 0,

    /// <summary>Positive runs.</summary>
    Positives = 1,

    /// <summary>Positive runs that were confirmed.</summary>
    Confirmed = 2,

    /// <summary>Positive runs that were refuted.</summary>
    Refuted = 3,

    /// <summary>Negative runs, audited or not.</summary>
    Negatives = 4,

    /// <summary>Audited negative runs whose confirmatory test was positive.</summary>
    Missed = 5,

    /// <summary>Audited negative runs whose confirmatory test was negative.</summary>
    Agreed = 6,
}
