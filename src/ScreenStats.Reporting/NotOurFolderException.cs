namespace ScreenStats.Reporting;

/// <summary>The place of the report is taken by something that is not a report of ours. Nothing was written over.</summary>
public sealed class NotOurFolderException : IOException
{
    /// <summary>Creates the exception.</summary>
    public NotOurFolderException()
        : this("The folder for the report exists and is not a report of ours; choose another.")
    {
    }

    /// <summary>Creates the exception.</summary>
    /// <param name="message">What is in the way, and what to do.</param>
    public NotOurFolderException(string message)
        : base(message)
    {
    }

    /// <summary>Creates the exception.</summary>
    /// <param name="message">What is in the way, and what to do.</param>
    /// <param name="innerException">What was found on looking.</param>
    public NotOurFolderException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
