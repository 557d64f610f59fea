namespace ScreenStats.Cli;

/// <summary>What a run answers to the program that started it.</summary>
internal static class ExitCode
{
    public const int Done = 0;
    public const int DataCannotAnswer = 1;

    /// <summary>The command line, or what it asks for is not to be had here: a Chromium that is not there or makes no print.</summary>
    public const int Usage = 2;

    public const int Alarm = 3;
    public const int Defect = 70;
    public const int Cancelled = 130;
}
