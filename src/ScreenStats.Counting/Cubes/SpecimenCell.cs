namespace ScreenStats.Counting.Cubes;

/// <summary>Confirmatory specimens by why they were taken, as people by how many specimens of each result they gave for that reason.</summary>
/// <param name="Reason">Why the specimens were taken.</param>
/// <param name="Positive">Positive specimens of such a person.</param>
/// <param name="Negative">Negative ones.</param>
/// <param name="Indeterminate">Indeterminate ones.</param>
/// <param name="Rejected">Rejected ones.</param>
/// <param name="Persons">Number of such people, positive.</param>
public sealed record SpecimenCell(
    SpecimenReason Reason, int Positive, int Negative, int Indeterminate, int Rejected, long Persons)
{
    /// <summary>Positive and negative specimens of such a person.</summary>
    public int Conclusive => Positive + Negative;

    /// <summary>All specimens of such a person.</summary>
    public int Specimens => Conclusive + Indeterminate + Rejected;
}
