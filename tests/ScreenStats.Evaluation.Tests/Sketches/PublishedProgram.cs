using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Tests.Sketches;

/// <summary>
/// The workplace program of Gans JS, Goldfarb A, Agrawal AK, Sennik S, Stein J, Rosella L. JAMA 2022;327:485-486: 537 workplaces,
/// 903,408 valid tests, 1,322 positive, 1,103 with a conclusive confirmatory result, 462 of them refuted (seen in the source); 278
/// of the refuted from one lot at two workplaces within two weeks (from memory). How the rest falls on sites, weeks and lots is
/// invented, by chance from a seed.
/// </summary>
internal static class PublishedProgram
{
    public const int Sites = 537;
    public const string FaultyLot = "B-77";

    public static ProgramSketch Sketch(int seed = 1)
    {
        var sketch = new ProgramSketch();
        const long Negatives = 903_408 - 1_322;
        for (var site = 0; site < Sites; site++)
        {
            var negatives = (Negatives / Sites) + (site < Negatives % Sites ? 1 : 0);
            for (var part = 0; part < 9; part++)
            {
                var share = (negatives / 9) + (part < negatives % 9 ? 1 : 0);
                sketch.Runs(Outcome.Negative, share, site: Site(site), lot: Lot(part, site), day: part * 28);
            }
        }

        var random = new Random(seed);
        for (var run = 0; run < 641; run++) Positive(sketch, FollowUp.Confirmed, random);
        for (var run = 0; run < 462 - 278; run++) Positive(sketch, FollowUp.Refuted, random);
        for (var run = 0; run < 219; run++) Positive(sketch, FollowUp.Unverified, random);
        for (var day = 0; day < 14; day++)
        {
            sketch.Runs(Outcome.Positive, day < 5 ? 13 : 12, FollowUp.Refuted, Site(11), FaultyLot, 257 + day);
            sketch.Runs(Outcome.Positive, day < 7 ? 8 : 7, FollowUp.Refuted, Site(402), FaultyLot, 257 + day);
        }

        return sketch;
    }

    private static void Positive(ProgramSketch sketch, FollowUp followUp, Random random)
    {
        var (site, part) = (random.Next(Sites), random.Next(9));
        sketch.Runs(Outcome.Positive, 1, followUp, Site(site), Lot(part, site), part * 28);
    }

    private static string Site(int site) => $"W{site:000}";

    private static string Lot(int part, int site) => part % 3 == 2 ? Levels.None : site % 40 == 0 ? FaultyLot : $"L-{(site + part) % 12:00}";
}
