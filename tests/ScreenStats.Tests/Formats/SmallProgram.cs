using System.Globalization;

namespace ScreenStats.Tests.Formats;

/// <summary>A fictional program of a month, small enough to be written in every format: runs and specimens, a pattern and no chance.</summary>
internal static class SmallProgram
{
    public static readonly string[] ScreeningHeadings = ["person", "site", "collected_at", "result", "lot", "symptomatic", "screen_id"];

    public static readonly string[] ConfirmatoryHeadings = ["person", "collected_at", "result", "reported_at", "method"];

    public static IReadOnlyList<Run> Runs { get; } = [.. MakeRuns()];

    public static IReadOnlyList<Specimen> Specimens { get; } = [.. MakeSpecimens()];

    private static IEnumerable<Run> MakeRuns()
    {
        for (var day = 0; day < 20; day++)
        {
            for (var person = 0; person < 30; person++)
            {
                var number = (day * 30) + person;
                var result = (number % 37, number % 53) switch { (5, _) => "positive", (_, 11) => "invalid", (_, 29) => "inconclusive", _ => "negative" };
                yield return new Run(
                    string.Create(CultureInfo.InvariantCulture, $"{person:000}"), person % 3 == 0 ? "Nörd" : person % 3 == 1 ? "South \"old\" gate" : "Works, east",
                    new DateTime(2026, 1, 5, 6, 0, 0).AddDays(day).AddMinutes(7 * person), result, person % 4 == 0 ? "" : $"A-{day / 7}",
                    number % 101 == 7, string.Create(CultureInfo.InvariantCulture, $"s{(number == 400 ? 399 : number)}"));
            }
        }

        // A row twice, word for word: a duplicate in every format. (Number 400 has the identifier of number 399: a conflict.)
        yield return new Run("003", "Nörd", new DateTime(2026, 1, 5, 6, 21, 0), "negative", "A-0", false, "s3");
    }

    private static IEnumerable<Specimen> MakeSpecimens()
    {
        var number = 0;
        foreach (var run in Runs.Where(run => run.Result is "positive" or "inconclusive"))
        {
            number++;
            if (number % 9 == 4) continue;
            var result = number % 3 == 0 ? "negative" : number % 7 == 0 ? "indeterminate" : "positive";
            yield return new Specimen(run.Person, run.At.AddHours(3), result, run.At.AddHours(20), number % 2 == 0 ? "RT-PCR" : "");
        }
    }

    internal sealed record Run(string Person, string Site, DateTime At, string Result, string Lot, bool Symptomatic, string Id);

    internal sealed record Specimen(string Person, DateTime At, string Result, DateTime Reported, string Method);
}
