namespace ScreenStats.Testing;

/// <summary>A text and its golden file differ, or the file is not there.</summary>
public sealed class GoldenException(string message) : Exception(message);
