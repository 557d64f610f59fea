namespace ScreenStats.Records.Understanding;

/// <summary>A date in figures was met in a column whose order is not settled: look at the whole column first.</summary>
internal sealed class OrderUnknownException : Exception
{
}
