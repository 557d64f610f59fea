namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>What was asked for cannot be done as asked: the key is weak, a column is not there, something would be written over. Nothing was written.</summary>
public sealed class PseudonymizeException : Exception
{
    /// <summary>Creates the exception.</summary>
    public PseudonymizeException()
        : this("This cannot be done as asked; nothing was written.")
    {
    }

    /// <summary>Creates the exception.</summary>
    /// <param name="message">What is wrong and what to do; holds neither a cell nor any part of a key.</param>
    public PseudonymizeException(string message)
        : base(message)
    {
    }

    /// <summary>Creates the exception.</summary>
    /// <param name="message">What is wrong and what to do; holds neither a cell nor any part of a key.</param>
    /// <param name="innerException">What was found on looking.</param>
    public PseudonymizeException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
