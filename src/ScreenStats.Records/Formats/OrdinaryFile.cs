namespace ScreenStats.Records.Formats;

/// <summary>Tells a file that holds bytes from one that holds none, without opening it: a pipe would keep whoever opens it waiting for ever.</summary>
public static class OrdinaryFile
{
    /// <summary>Whether a file, every link to it followed, holds bytes before it is opened; pipes and devices do not.</summary>
    /// <param name="path">A file that exists.</param>
    /// <returns>True where it does; true also where nothing can be found out, so that opening it says why.</returns>
    public static bool HoldsBytes(string path)
    {
        try
        {
            var target = new FileInfo(path).ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? path;
            // A link of /proc to a pipe names no file.
            return File.Exists(target) ? new FileInfo(target).Length > 0 : target == path;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return true;
        }
    }
}
