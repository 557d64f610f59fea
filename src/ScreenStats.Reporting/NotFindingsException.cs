namespace ScreenStats.Reporting;

/// <summary>A file that should be the findings.json of an earlier evaluation is not, or cannot be read.</summary>
public sealed class NotFindingsException : IOException
{
    /// <summary>Creates the exception.</summary>
    public NotFindingsException()
        : this("The file is no findings.json of ours.")
    {
    }

    /// <summary>Creates the exception.</summary>
    /// <param name="message">What is wrong with the file, and what to do.</param>
    public NotFindingsException(string message)
        : base(message)
    {
    }

    /// <summary>Creates the exception.</summary>
    /// <param name="message">What is wrong with the file, and what to do.</param>
    /// <param name="innerException">What was found on reading.</param>
    public NotFindingsException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
