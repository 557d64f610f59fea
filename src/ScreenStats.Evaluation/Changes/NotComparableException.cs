namespace ScreenStats.Evaluation.Changes;

/// <summary>Two evaluations cannot be compared: what is earlier is not, is of another program, or shows what this one hides.</summary>
public sealed class NotComparableException : Exception
{
    /// <summary>Creates the exception.</summary>
    public NotComparableException()
        : this("The two evaluations cannot be compared.")
    {
    }

    /// <summary>Creates the exception.</summary>
    /// <param name="message">What stands in the way, and what to do.</param>
    public NotComparableException(string message)
        : base(message)
    {
    }

    /// <summary>Creates the exception.</summary>
    /// <param name="message">What stands in the way, and what to do.</param>
    /// <param name="innerException">What was found on looking.</param>
    public NotComparableException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
