using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.PersonLog;

/// <summary>Turns valid rows into counts. One sink for each reading thread, then one call of <see cref="Complete"/>.</summary>
/// <param name="settings">The program file.</param>
/// <param name="vocabularies">The texts behind the rows' codes.</param>
internal sealed class RunCounter(ProgramSettings settings, Vocabularies vocabularies)
{
    /// <summary>
    /// The earliest instant a row may have, 1970-01-01 on the scale of <see cref="RunRow.Instant"/>: the log keeps 32 bits.
    /// A date outside is no date of a screening program: the reader sets the row aside as unreadable.
    /// </summary>
    public const long EarliestInstant = -946_684_800;

    /// <summary>The latest instant a row may have, in February 2106.</summary>
    public const long LatestInstant = EarliestInstant + uint.MaxValue;

    /// <summary>A sink for one thread. May be called from any thread.</summary>
    public IRunSink CreateSink() => throw new NotSupportedException(settings.Title);

    /// <summary>
    /// Counts, once every sink has taken its rows. Rows are read again from several threads, never from two at once.
    /// </summary>
    /// <param name="specimens">Valid rows of the confirmatory export, in file order; null without that export.</param>
    /// <param name="screeningRows">The screening export, for the few rows needed twice.</param>
    /// <param name="confirmatoryRows">The confirmatory export; null only without one.</param>
    /// <param name="asOf">A moment stated on the command line; goes before the program file's.</param>
    /// <param name="threads">Number of threads, at least 1. Decides how fast, never what.</param>
    public CountedExports Complete(
        IReadOnlyList<SpecimenRow>? specimens, IRowSource screeningRows, IRowSource? confirmatoryRows, StatedMoment? asOf, int threads) =>
        throw new NotSupportedException(vocabularies.Sites.Count.ToString(System.Globalization.CultureInfo.InvariantCulture));
}
