namespace ScreenStats.Evaluation.Yield;

/// <summary>How much screening was done for each thing found.</summary>
public enum YieldMeasure
{
    /// <summary>Counted runs for each case.</summary>
    RunsPerCase = 0,

    /// <summary>Valid tests for each confirmed positive run.</summary>
    TestsPerConfirmedRun = 1,

    /// <summary>People tested for each case.</summary>
    PersonsPerCase = 2,

    /// <summary>Valid tests for each refuted positive run.</summary>
    TestsPerRefutedRun = 3,
}
