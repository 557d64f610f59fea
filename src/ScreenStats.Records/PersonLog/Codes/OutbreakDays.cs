using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog.Rows;

namespace ScreenStats.Records.PersonLog.Codes;

/// <summary>The outbreaks of the program file by site code and day number: <see cref="OccasionRule"/> for packed keys.</summary>
internal sealed class OutbreakDays
{
    private readonly (int First, int Last)[]?[] bySite;

    public OutbreakDays(ProgramSettings settings, Vocabularies vocabularies)
    {
        if (settings.Outbreaks.IsEmpty)
        {
            bySite = [];
            return;
        }

        var sites = vocabularies.Sites.ToArray();
        bySite = new (int, int)[]?[sites.Length];
        for (var site = 0; site < sites.Length; site++)
        {
            var days = settings.Outbreaks.Where(outbreak => outbreak.Site == sites[site])
                .Select(outbreak => (Moment.On(outbreak.From).DayNumber, outbreak.To is { } to ? Moment.On(to).DayNumber : int.MaxValue)).ToArray();
            if (days.Length > 0) bySite[site] = days;
        }
    }

    public Occasion Of(OutbreakMark mark, int site, int dayNumber)
    {
        if (mark != OutbreakMark.NotRecorded) return mark == OutbreakMark.Yes ? Occasion.Outbreak : Occasion.Routine;
        if (site >= bySite.Length || bySite[site] is not { } days) return Occasion.Routine;
        foreach (var (first, last) in days)
        {
            if (dayNumber >= first && dayNumber <= last) return Occasion.Outbreak;
        }

        return Occasion.Routine;
    }
}
