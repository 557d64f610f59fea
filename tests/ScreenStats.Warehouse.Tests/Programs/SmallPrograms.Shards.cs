using System.Globalization;

namespace ScreenStats.Warehouse.Tests.Programs;

/// <summary>Programs of what shards have to do otherwise than one server.</summary>
internal static partial class SmallPrograms
{
    private static IEnumerable<SmallProgram> Shards()
    {
        // More runs in a week than pairs are made of, beside people with a few; and a week later only negative ones.
        var crowd = string.Join('\n', Enumerable.Range(0, 40).Select(run => string.Create(CultureInfo.InvariantCulture,
            $"desk,{(run % 3 == 0 ? "South" : "North")},2026-01-{5 + (run / 6):00}T{4 * (run % 6):00}:30,{(run == 7 ? "positive" : run == 11 ? "invalid" : "negative")},L{run % 2}")));
        var rows = $"""
            person,site,collected_at,result,lot
            {crowd}
            desk,North,2026-01-13T08:00,negative,L1
            desk,North,2026-01-14T08:00,negative,L1
            a,North,2026-01-05T08:00,negative,L1
            a,North,2026-01-05T18:00,negative,L1
            a,South,2026-01-06T08:00,negative,L1
            a,South,2026-01-13T08:00,inconclusive,L1
            b,North,2026-01-05T08:00,negative,L1
            b,North,2026-01-06T08:00,positive,L1
            b,North,2026-01-07T08:00,negative,L1
            c,South,2026-01-05T08:00,negative,L0
            c,South,2026-01-12T08:00,negative,L0
            """;
        const string specimens = """
            person,collected_at,result
            b,2026-01-06T12:00,positive
            desk,2026-01-06T08:00,negative
            """;
        foreach (var period in new[] { "day", "week", "month" }) yield return SmallProgram.Of($"crowded-pseudonym-by-{period}", Vienna, rows, specimens, $"\"report\": {{ \"period\": \"{period}\" }}");

        // One identifier in the rows of many people, who lie on every shard, and one in a row of nobody.
        var shared = string.Join('\n', Enumerable.Range(0, 12).Select(person => string.Create(CultureInfo.InvariantCulture,
            $"{(person % 4 == 3 ? $"own{person}" : "one")},p{person},North,2026-01-{5 + person:00}T08:00,{(person == 5 ? "positive" : "negative")},")));
        yield return SmallProgram.Of("one-screen-id-on-every-shard", Vienna, $"""
            screen_id,person,site,collected_at,result,control
            {shared}
            two,,North,2026-01-05T09:00,negative,negative
            two,q,North,2026-01-05T10:00,negative,
            """);
    }
}
