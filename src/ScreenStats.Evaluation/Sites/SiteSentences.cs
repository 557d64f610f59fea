using System.Collections.Immutable;
using ScreenStats.Evaluation.Flagging;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Sites;

internal static class SiteSentences
{
    public static ImmutableArray<Sentence> Of(Table<SiteFinding> sites)
    {
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        foreach (var site in sites.Where(site => site.Flag != Flag.None))
        {
            var path = FigurePath.Row("sites", site.Site);
            if (site.Flag.HasFlag(Flag.Refuted))
            {
                sentences.Add(FlagSentences.Refuted(path, "site", "Site", site));
                if (FlagSentences.Where(path, "lot", site) is { } where) sentences.Add(where);
            }

            if (site.Flag.HasFlag(Flag.Invalid)) sentences.Add(FlagSentences.Invalid(path, "site", "Site", site));
        }

        if (sites.Count == 0) sentences.Add(new Sentence("No run was counted, so sites cannot be compared."));
        else if (sites.Count == 1) sentences.Add(new Sentence("There is one site only, so there is nothing to compare it with."));
        else if (sentences.Count > 0)
            sentences.Add(new Sentence("A flag on a site asks for a look at how runs are done there. It does not say that its positives were false, nor that anybody may return to work."));
        else
            sentences.Add(new Sentence("No site stands out by its refuted positives or by its inconclusive and invalid runs. A small site can have trouble without standing out."));
        sentences.AddRange(FlagSentences.Explained(site => FigurePath.Row("sites", site.Name), "site", "Site", sites));
        return sentences.ToImmutable();
    }
}
