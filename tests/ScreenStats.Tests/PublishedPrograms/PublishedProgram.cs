using System.Globalization;
using System.Text;
using ScreenStats.Counting.Cubes;
using ScreenStats.Synthesis.Simulation;

namespace ScreenStats.Tests.PublishedPrograms;

/// <summary>
/// Exports with the published counts of Gans JS, Goldfarb A, Agrawal AK, Sennik S, Stein J, Rosella L. "False-positive
/// results in rapid antigen tests for SARS-CoV-2." JAMA 2022;327:485-486.
/// Published: the constants below; 11 January to 13 October 2021; about two thirds of the tests with a lot; the lot's
/// false positives at two workplaces between 25 September and 8 October 2021. (278 as the count behind the published 60 %
/// is from memory.)
/// Invented, from a seed: names, people, days and times of runs, sizes of sites, all lots but their number of refuted
/// tests, which runs were positive and which refuted elsewhere, unusable runs, and why 219 have no conclusive result.
/// </summary>
internal sealed class PublishedProgram
{
    public const int ValidTests = 903_408;
    public const int Positives = 1_322;
    public const int Conclusive = 1_103;
    public const int Refuted = 462;
    public const int RefutedInLot = 278;
    public const int SiteCount = 537;
    public const string FaultyLot = "B-17";
    public static readonly DateOnly BurstFrom = new(2021, 9, 25);
    public static readonly DateOnly BurstTo = new(2021, 10, 8);
    private const int Unresolved = 40;
    private const int Unusable = 9_100;
    private const int RunsPerPerson = 50;
    private const int LotCount = 40;
    private static readonly DateOnly First = new(2021, 1, 11);
    private static readonly int Days = new DateOnly(2021, 10, 13).DayNumber - First.DayNumber + 1;
    private static readonly int[] BurstSites = [117, 402];
    private readonly RandomStream random;
    private readonly int[] people = new int[SiteCount];

    public PublishedProgram(ulong seed)
    {
        random = new RandomStream(seed, 77, 0);
        Runs = new Run[ValidTests + Unusable];
        PlaceRuns();
        MarkUnusable();
        MarkPositives();
    }

    /// <summary>Every run, site by site.</summary>
    public Run[] Runs { get; }

    public static string Site(int site) => "site-" + site.ToString("000", CultureInfo.InvariantCulture);

    public static string Lot(int lot) => lot < 0 ? Levels.None : lot == 0 ? FaultyLot : "A-" + lot.ToString("00", CultureInfo.InvariantCulture);

    public static DateOnly Day(int day) => First.AddDays(day);

    /// <summary>Writes screening.csv, confirmatory.csv and program.json.</summary>
    public void Write(string folder)
    {
        Directory.CreateDirectory(folder);
        var text = new UTF8Encoding(false);
        using var screening = new StreamWriter(Path.Combine(folder, "screening.csv"), false, text, 1 << 16) { NewLine = "\n" };
        using var confirmatory = new StreamWriter(Path.Combine(folder, "confirmatory.csv"), false, text) { NewLine = "\n" };
        screening.WriteLine("person,site,collected_at,result,lot");
        confirmatory.WriteLine("person,collected_at,result,reported_at,reason");
        foreach (ref readonly var run in Runs.AsSpan())
        {
            var person = string.Create(CultureInfo.InvariantCulture, $"p{run.Site:000}x{run.Person:0000}");
            screening.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{person},{Site(run.Site)},{Day(run.Day):yyyy-MM-dd}T{8 + (run.Person % 9):00}:{run.Person % 60:00},{Word(run.Outcome)},{(run.Lot < 0 ? "" : Lot(run.Lot))}"));
            var result = run.FollowUp switch
            {
                FollowUp.Confirmed => "positive",
                FollowUp.Refuted => "negative",
                FollowUp.Unresolved => "indeterminate",
                _ => null,
            };
            if (result is null) continue;
            var next = Day(run.Day).AddDays(1);
            confirmatory.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{person},{next:yyyy-MM-dd}T09:00,{result},{next:yyyy-MM-dd}T21:00,follow-up"));
        }

        File.WriteAllText(Path.Combine(folder, "program.json"),
            """
            { "title": "Published counts, invented detail", "timeZone": "Etc/UTC", "dataAsOf": "2021-12-31", "policy": { "followUp": ["positive"] } }
            """);
    }

    private static string Word(Outcome outcome) => outcome switch
    {
        Outcome.Negative => "negative",
        Outcome.Positive => "positive",
        Outcome.Inconclusive => "inconclusive",
        _ => "invalid",
    };

    private void PlaceRuns()
    {
        var weights = new double[SiteCount];
        for (var site = 0; site < SiteCount; site++) weights[site] = 0.1 + (random.Unit() * random.Unit());
        // Two sites large enough that 278 people can have one refuted test each within two weeks.
        foreach (var site in BurstSites) weights[site] = 10;
        var all = weights.Sum();
        var at = 0;
        for (var site = 0; site < SiteCount; site++)
        {
            var runs = site == SiteCount - 1 ? Runs.Length - at : (int)(Runs.Length * (weights[site] / all));
            people[site] = Math.Max(1, runs / RunsPerPerson);
            for (var run = 0; run < runs; run++) Runs[at++] = Place(site, run, Math.DivRem(run, people[site]).Quotient, (runs / people[site]) + 1);
        }
    }

    /// <summary>The occurrence-th run of a person: four days or more apart, so that no specimen can belong to two runs.</summary>
    private Run Place(int site, int run, int occurrence, int occurrences)
    {
        var day = occurrence * Days / occurrences;
        var date = First.AddDays(day);
        var burst = BurstSites.Contains(site) && date >= BurstFrom && date <= BurstTo;
        // Each site uses two of the lots at a time and changes them every ten weeks; a third of the runs has none.
        var lot = burst ? 0 : 1 + (int)(((site * 7L) + (day / 70 * 11) + random.Below(2)) % (LotCount - 1));
        if (!burst && random.Chance(1 / 3.0)) lot = -1;
        return new Run { Site = site, Person = run % people[site], Day = day, Lot = lot };
    }

    private void MarkUnusable()
    {
        for (var left = Unusable; left > 0;)
        {
            ref var run = ref Runs[random.Below(Runs.Length)];
            if (run.Outcome != Outcome.Negative) continue;
            run.Outcome = random.Chance(0.2) ? Outcome.Inconclusive : Outcome.Invalid;
            left--;
        }
    }

    private void MarkPositives()
    {
        var taken = new HashSet<(int Site, int Person)>();
        int[] inLot = [.. Enumerable.Range(0, Runs.Length).Where(index => Runs[index].Lot == 0)];
        Mark(RefutedInLot, FollowUp.Refuted, () => inLot[random.Below(inLot.Length)], anyLot: true);
        Mark(Refuted - RefutedInLot, FollowUp.Refuted, Anywhere, anyLot: false);
        Mark(Conclusive - Refuted, FollowUp.Confirmed, Anywhere, anyLot: true);
        Mark(Unresolved, FollowUp.Unresolved, Anywhere, anyLot: true);
        Mark(Positives - Conclusive - Unresolved, FollowUp.Unverified, Anywhere, anyLot: true);
        return;

        int Anywhere() => random.Below(Runs.Length);

        void Mark(int count, FollowUp fate, Func<int> pick, bool anyLot)
        {
            while (count > 0)
            {
                ref var run = ref Runs[pick()];
                if (run.Outcome != Outcome.Negative || (!anyLot && run.Lot == 0) || !taken.Add((run.Site, run.Person))) continue;
                run.Outcome = Outcome.Positive;
                run.FollowUp = fate;
                count--;
            }
        }
    }

    internal struct Run
    {
        public int Site;
        public int Person;
        public int Day;
        public int Lot;
        public Outcome Outcome;
        public FollowUp FollowUp;
    }
}
