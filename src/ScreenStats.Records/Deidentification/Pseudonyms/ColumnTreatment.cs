namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>What becomes of a column.</summary>
public enum ColumnTreatment
{
    /// <summary>Kept as it is, byte for byte.</summary>
    Kept = 0,

    /// <summary>Its values are pseudonyms.</summary>
    Pseudonymized = 1,

    /// <summary>Its values are pseudonyms of operators.</summary>
    OperatorPseudonymized = 2,

    /// <summary>Left out.</summary>
    Dropped = 3,

    /// <summary>Its dates are coarser.</summary>
    Generalised = 4,
}
