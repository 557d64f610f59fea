namespace ScreenStats.Records.Tests;

/// <summary>Tests that look at the memory of the whole process: nothing else may run beside them.</summary>
[CollectionDefinition(nameof(Alone), DisableParallelization = true)]
public sealed class Alone;
