namespace ScreenStats.Records.Cache;

/// <summary>An entry of the cache is not what was written: its file is to be read instead.</summary>
internal sealed class DamagedEntryException : Exception
{
}
