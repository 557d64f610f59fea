namespace ScreenStats.Evaluation.Model;

/// <summary>The unit of a column or a figure: decides how it is printed, once for every page.</summary>
public enum Unit
{
    /// <summary>A name or words.</summary>
    Text = 0,

    /// <summary>A whole number of things.</summary>
    Count = 1,

    /// <summary>A fraction in [0, 1]; printed as per cent for people, as a fraction in files.</summary>
    Proportion = 2,

    /// <summary>A number per 1,000.</summary>
    PerThousand = 3,

    /// <summary>A ratio or another number without a unit.</summary>
    Ratio = 4,

    /// <summary>A probability of a test.</summary>
    PValue = 5,

    /// <summary>A calendar day.</summary>
    Date = 6,

    /// <summary>Hours.</summary>
    Hours = 7,

    /// <summary>Days.</summary>
    Days = 8,

    /// <summary>A difference of two fractions, in [-1, 1]; printed in percentage points for people, as a fraction in files.</summary>
    Difference = 9,

    /// <summary>A limit of a number that was found by random draws: printed with two significant digits, since the draws carry no more.</summary>
    DrawnLimit = 10,
}
