namespace ScreenStats.Cli.Terminal.Completion;

/// <summary>What a shell can offer in the place of a value.</summary>
internal enum OfferedValue
{
    /// <summary>The option is a switch: no value follows.</summary>
    None,

    /// <summary>A value that nobody but the person knows.</summary>
    Unknown,

    /// <summary>One of a few words.</summary>
    Words,

    /// <summary>A file or a folder.</summary>
    Path,

    /// <summary>A folder.</summary>
    Folder,
}
