namespace ScreenStats.Cli;

/// <summary>The command line cannot be followed: one message that says what, where and what to write instead.</summary>
internal sealed class UsageException(string message) : Exception(message);
