using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Coverage;

internal static class CoverageSentences
{
    public static ImmutableArray<Sentence> Of(CoverageFindings found)
    {
        if (found.Program is not { } program)
            return [new Sentence("Without a headcount it cannot be said what share of the people eligible was tested.")];
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        if (program.ShareUndefined is { } reason)
        {
            sentences.Add(new Sentence($"Coverage cannot be given: {reason}."));
        }
        else
        {
            sentences.Add(new Sentence(
                "In an average week {2} of the people eligible were tested at least once ({0} of {1}, each week counted by itself).",
                Figure.Count("coverage.program.persons", program.Persons), Figure.Count("coverage.program.eligible", program.Eligible),
                Figure.Number("coverage.program.share", program.Share, Unit.Proportion)));
            var lowest = found.Sites.Where(site => site.Share is not null).MinBy(site => site.Share);
            if (lowest is not null && found.Sites.Length > 1)
            {
                var path = FigurePath.Row("coverage.sites", lowest.Key);
                sentences.Add(new Sentence(
                    "It was lowest at {0}: {3} ({1} of {2}).",
                    Figure.Name(path + ".level", lowest.Level), Figure.Count(path + ".persons", lowest.Persons),
                    Figure.Count(path + ".eligible", lowest.Eligible), Figure.Number(path + ".share", lowest.Share, Unit.Proportion)));
            }
        }

        if (found.SiteWeeksBeyondHeadcount > 0)
        {
            sentences.Add(new Sentence(
                "In {0} site-weeks more people were tested than the headcount holds: check the headcount.",
                Figure.Count("coverage.siteWeeksBeyondHeadcount", found.SiteWeeksBeyondHeadcount)));
        }

        if (found.SiteWeeksWithoutHeadcount > 0)
        {
            sentences.Add(new Sentence(
                "{0} site-weeks with runs have no headcount and are left out of it.",
                Figure.Count("coverage.siteWeeksWithoutHeadcount", found.SiteWeeksWithoutHeadcount)));
        }

        return sentences.ToImmutable();
    }
}
