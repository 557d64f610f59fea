namespace ScreenStats.Records;

/// <summary>The place of the cache is taken by something that is no cache of ours. Nothing was written there.</summary>
public sealed class CacheFolderException : IOException
{
    /// <summary>Creates the exception.</summary>
    public CacheFolderException()
        : this("The folder of the cache holds other things; name an empty one, or one that does not exist yet.")
    {
    }

    /// <summary>Creates the exception.</summary>
    /// <param name="message">What is in the way, and what to do.</param>
    public CacheFolderException(string message)
        : base(message)
    {
    }

    /// <summary>Creates the exception.</summary>
    /// <param name="message">What is in the way, and what to do.</param>
    /// <param name="innerException">What was found on looking.</param>
    public CacheFolderException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
