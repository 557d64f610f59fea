namespace ScreenStats.Cli.Terminal;

/// <summary>Tells a disk that takes no more from other faults of files.</summary>
internal static class DiskFault
{
    // ENOSPC and EDQUOT of Unix; ERROR_DISK_FULL and ERROR_HANDLE_DISK_FULL of Windows.
    private const int NoSpace = 28;
    private const int QuotaUsed = 122;
    private const int WindowsFull = unchecked((int)0x80070070);
    private const int WindowsHandleFull = unchecked((int)0x80070027);

    /// <summary>What to say of a full disk, or null where the fault is another.</summary>
    public static string? Full(Exception failure)
    {
        for (var fault = failure; fault is not null; fault = fault.InnerException)
        {
            if (fault is IOException { HResult: NoSpace or QuotaUsed or WindowsFull or WindowsHandleFull })
                return "the disk is full, so the result could not be written and nothing was left behind. Make room, or choose another place with --out.";
            // The runtime makes this of EFBIG, as if a length had been asked for; no code of ours takes a parameter of that name.
            if (fault is ArgumentOutOfRangeException { ParamName: "value" } && fault.StackTrace is { } trace && trace.Contains("System.IO.RandomAccess", StringComparison.Ordinal))
                return "the result is larger than this machine lets a file be, so nothing was left behind. Raise the limit (ulimit -f), or choose another place with --out.";
        }

        return null;
    }
}
