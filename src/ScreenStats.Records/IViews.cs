using ScreenStats.Counting.Programs;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records;

/// <summary>The screening and the confirmatory export where they are views of a database, not files.</summary>
internal interface IViews
{
    /// <summary>Counts them. Called once more where the files of other exports have to be read again.</summary>
    ViewsRead Count(ProgramSettings settings, Vocabularies vocabularies, TimeScale scale, ReadOptions options, int threads);
}
