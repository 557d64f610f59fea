using System.Globalization;
using CsCheck;

namespace ScreenStats.Warehouse.Tests.Programs;

/// <summary>Programs drawn by chance from few people, sites, times and words, so that rules meet each other in every way.</summary>
internal static class DrawnRows
{
    private static readonly Gen<string> Person = One("a", "b", "c", "d", "e", "f", "");

    // Around the night in which clocks go forward; a third without a time of day.
    private static readonly Gen<string> Time = Gen.Select(Gen.Int[26, 31], Gen.Int[0, 47], Gen.Int[0, 5], (day, half, kind) =>
        kind < 2 ? string.Create(CultureInfo.InvariantCulture, $"2026-03-{day:00}") : string.Create(CultureInfo.InvariantCulture, $"2026-03-{day:00}T{half / 2:00}:{30 * (half % 2):00}"));

    private static readonly Gen<string> Truth = One("", "", "", "no", "no", "yes");

    private static readonly Gen<Row> Run = Gen.Select(
        Gen.Select(Person, One("North", "South", "West"), Time, One("negative", "negative", "positive", "positive", "inconclusive", "invalid")),
        Gen.Select(One("", "L1", "L2", "M1"), One("", "k1", "k2"), One("", "", "2026-03-28", "2026-03-30"), One("", "o1", "o2")),
        Gen.Select(Truth, Truth, Truth, One("", "", "", "", "", "", "", "positive", "negative")),
        Gen.Select(One("", "", "", "", "s1", "s2", "s3"), One("", "nasal", "throat"), One("", "self", "supervised"), Gen.Int[0, 3]),
        (who, what, marks, more) =>
        {
            var row = new Row
            {
                ["person"] = who.Item1, ["site"] = who.Item2, ["collected_at"] = who.Item3, ["result"] = who.Item4,
                ["lot"] = what.Item1, ["kit"] = what.Item2, ["lot_expiry"] = what.Item3, ["operator"] = what.Item4,
                ["symptomatic"] = marks.Item1, ["exposed"] = marks.Item2, ["outbreak"] = marks.Item3, ["control"] = marks.Item4,
                ["screen_id"] = more.Item1, ["specimen"] = more.Item2, ["collection"] = more.Item3,
            };
            if (more.Item4 == 0 && who.Item3.Length > 10) row["read_at"] = who.Item3[..^2] + (who.Item3.EndsWith("00", StringComparison.Ordinal) ? "15" : "55");
            return row;
        });

    private static readonly Gen<Row> Specimen = Gen.Select(
        Person, Time, One("positive", "positive", "negative", "negative", "indeterminate", "rejected"), One("", "follow-up", "audit", "audit", "other"), One("", "one", "two"), One("", "pcr", "lamp"), Gen.Int[0, 3],
        (person, time, result, reason, stratum, method, late) =>
        {
            var row = new Row { ["person"] = person, ["collected_at"] = time, ["result"] = result, ["reason"] = reason, ["sampling_stratum"] = stratum, ["method"] = method };
            if (late == 0) row["reported_at"] = "2026-04-01T10:00";
            if (late == 1) row["reported_at"] = "2026-04-01";
            return row;
        });

    private static Gen<string> One(params string[] words) => Gen.Int[0, words.Length - 1].Select(at => words[at]);

    /// <summary>A program of up to 40 runs and 25 specimens.</summary>
    public static Gen<SmallProgram> Program { get; } = Gen.Select(Run.Array[1, 40], Specimen.Array[0, 25], One("", "\"dataAsOf\": \"2026-04-30T00:00\""), (runs, specimens, settings) =>
    {
        var empty = SmallProgram.Of("drawn", "Europe/Vienna", "person\n", null,
            string.Join(", ", new[] { settings, "\"policy\": { \"isolationDays\": 2 }", "\"screens\": [ { \"name\": \"Strip\", \"lots\": [\"L*\"], \"sensitivity\": \"61/97\", \"specificity\": \"2391/2400\", \"readWindowMinutes\": [10, 20], \"runsPerKit\": 3 } ]" }.Where(one => one.Length > 0)));
        return empty with { Screening = runs, Confirmatory = specimens.Length == 0 ? null : specimens };
    });

    /// <summary>Some that can be read: the same for every road of one run.</summary>
    public static IReadOnlyList<SmallProgram> Some(int count)
    {
        var pcg = PCG.Parse("0001FxQJnrf5");
        var all = new List<SmallProgram>();
        for (var n = 0; n < count; n++)
        {
            var program = Program.Generate(pcg, null, out _);
            // Somebody must be there: a program of nobody is refused on every road.
            if (program.Screening.Any(row => row["person"].Length > 0)) all.Add(program with { Name = string.Create(CultureInfo.InvariantCulture, $"drawn-{n}") });
        }

        return all;
    }
}
