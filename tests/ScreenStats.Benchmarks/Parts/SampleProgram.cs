using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation;
using ScreenStats.Testing;

namespace ScreenStats.Benchmarks.Parts;

/// <summary>The sample program, read and evaluated once, for the benchmarks of what comes after.</summary>
internal static class SampleProgram
{
    public static string Folder { get; } = RepositoryRoot.Combine("sample-data", "marrowlight");

    public static ProgramSettings Settings { get; } = ScreeningProgram.Open(Folder).Settings;

    public static Tally Tally { get; } = ScreeningProgram.Open(Folder).Read().Tally;

    public static Findings Findings { get; } = Evaluator.Evaluate(Tally, Settings);
}
