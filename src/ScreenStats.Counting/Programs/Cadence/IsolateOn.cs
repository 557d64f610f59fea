namespace ScreenStats.Counting.Programs.Cadence;

/// <summary>On what a person is sent away.</summary>
public enum IsolateOn
{
    /// <summary>On the positive screen.</summary>
    Screen,

    /// <summary>Only on the positive confirmatory test.</summary>
    Confirmation,
}
