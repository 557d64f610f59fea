namespace ScreenStats.Records;

/// <summary>Why a heading was taken for a column.</summary>
public enum HeadingEvidence
{
    /// <summary>It was not: the column is not read.</summary>
    NotRead = 0,

    /// <summary>The program file says so.</summary>
    ProgramFile = 1,

    /// <summary>It is the column's own name.</summary>
    Name = 2,

    /// <summary>It is a usual word for the column.</summary>
    Synonym = 3,

    /// <summary>It is the column's name, or a usual word for it, but for what stands in brackets, such as a unit.</summary>
    WithoutBrackets = 4,

    /// <summary>It is the element of the resource that the standard has for it.</summary>
    Element = 5,
}
