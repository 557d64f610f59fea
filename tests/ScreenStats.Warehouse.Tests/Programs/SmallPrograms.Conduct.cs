namespace ScreenStats.Warehouse.Tests.Programs;

/// <content>Conduct, times and marks.</content>
internal static partial class SmallPrograms
{
    private static IEnumerable<SmallProgram> Conduct()
    {
        const string Kits = "\"screens\": [ { \"name\": \"Strip\", \"lots\": [\"L*\"], \"sensitivity\": \"61/97\", \"specificity\": \"2391/2400\", \"readWindowMinutes\": [10, 20], \"runsPerKit\": 2 } ]";
        yield return SmallProgram.Of("expired-lots", Vienna, """
            person,site,collected_at,result,lot,lot_expiry
            a,North,2026-01-05T08:00,negative,L1,2026-01-05
            b,North,2026-01-06T00:00,negative,L1,2026-01-05
            c,North,2026-01-06,positive,L1,2026-01-05
            d,South,2026-01-06T08:00,negative,,2026-01-05
            e,South,2026-01-06T08:00,negative,L2,
            """, settings: Kits);
        yield return SmallProgram.Of("reading-windows", Vienna, """
            person,site,collected_at,result,lot,read_at
            a,North,2026-01-05T08:00,negative,L1,2026-01-05T08:10
            b,North,2026-01-05T08:00,negative,L1,2026-01-05T08:09
            c,North,2026-01-05T08:00,negative,L1,2026-01-05T08:20
            d,North,2026-01-05T08:00,negative,L1,2026-01-05T08:21
            e,South,2026-01-05T08:00,negative,M1,2026-01-05T09:00
            f,South,2026-01-05T08:00,positive,L1,2026-01-05T07:59
            g,South,2026-01-05T08:00,positive,L1,
            h,South,2026-01-05,positive,L1,2026-01-05T08:10
            """, settings: Kits);
        yield return SmallProgram.Of("kits-that-hold-two", Vienna, """
            person,site,collected_at,result,lot,kit
            a,North,2026-01-05T08:00,negative,L1,k1
            b,North,2026-01-05T08:10,negative,L1,k1
            c,North,2026-01-05T08:20,positive,L1,k1
            d,North,2026-01-05T08:30,invalid,L1,k2
            e,South,2026-01-05T08:40,negative,L2,k1
            f,South,2026-01-05T08:50,negative,M1,k3
            g,South,2026-01-05T08:55,negative,,k4
            """, settings: Kits);
        yield return SmallProgram.Of("runs-in-isolation", Vienna, """
            person,site,collected_at,result
            a,North,2026-01-05T08:00,positive
            a,North,2026-01-10T09:00,negative
            a,North,2026-01-15T12:00,negative
            a,North,2026-01-15T12:01,negative
            b,South,2026-01-05T08:00,positive
            b,South,2026-01-08T08:00,negative
            """, """
            person,collected_at,result
            a,2026-01-05T12:00,positive
            b,2026-01-06,positive
            """, "\"policy\": { \"isolationDays\": 10 }");
        yield return SmallProgram.Of("stated-accuracy", Vienna, """
            person,site,collected_at,result,lot
            a,North,2026-01-05T08:00,positive,L1
            b,North,2026-01-05T08:00,negative,L1
            c,North,2026-01-05T08:00,negative,L1
            d,South,2026-01-05T08:00,positive,M1
            e,South,2026-01-05T08:00,negative,M1
            """, """
            person,collected_at,result
            a,2026-01-05T12:00,negative
            d,2026-01-05T12:00,positive
            """, Kits + ", \"confirmatoryTest\": { \"sensitivity\": 0.98, \"specificity\": 0.999 }, \"prevalence\": { \"value\": 0.004, \"lower\": 0.002, \"upper\": 0.008, \"source\": \"a survey\" }, \"report\": { \"period\": \"day\", \"confidence\": 0.9 }");
    }

    private static IEnumerable<SmallProgram> Times()
    {
        yield return SmallProgram.Of("clocks-forward", Vienna, """
            person,site,collected_at,result
            a,North,2026-03-28T23:59,positive
            b,North,2026-03-29T01:59,positive
            c,North,2026-03-29T02:30,positive
            d,South,2026-03-29T03:00,inconclusive
            e,South,2026-03-29,negative
            """, """
            person,collected_at,result
            a,2026-03-31T23:59,positive
            b,2026-04-01T01:59,positive
            b,2026-04-01T02:59,negative
            c,2026-04-01T03:30,positive
            d,2026-03-29T00:59,positive
            """, "\"dataAsOf\": \"2026-05-01T00:00\"");
        yield return SmallProgram.Of("clocks-back-with-offsets", Vienna, """
            person,site,collected_at,result
            a,North,2026-10-25T02:30+02:00,negative
            a,North,2026-10-25T02:30+01:00,positive
            b,North,2026-10-25T01:59+02:00,invalid
            b,North,2026-10-25T02:01+01:00,negative
            c,South,2026-10-24T23:30+02:00,positive
            d,South,2026-10-25T23:30+01:00,positive
            """, """
            person,collected_at,result
            a,2026-10-25T03:00+01:00,positive
            c,2026-10-27T22:30+01:00,negative
            d,2026-10-25T21:30+01:00,positive
            """, "\"dataAsOf\": \"2026-12-01T00:00\"");
        yield return SmallProgram.Of("clocks-back-without-offsets", Vienna, """
            person,site,collected_at,result
            a,North,2026-10-25T02:30,negative
            a,North,2026-10-25T01:30,positive
            b,South,2026-10-25T02:59,inconclusive
            b,South,2026-10-25T03:00,negative
            """, """
            person,collected_at,result
            a,2026-10-28T00:30,positive
            b,2026-10-25T02:00,negative
            """, "\"dataAsOf\": \"2026-12-01T00:00\"");
        yield return SmallProgram.Of("offsets-beside-local-times", Vienna, """
            person,site,collected_at,result
            a,North,2026-01-05T08:00,positive
            b,North,2026-01-05T08:00+01:00,positive
            c,North,2026-01-05,positive
            """, """
            person,collected_at,result
            a,2026-01-05T06:00+01:00,positive
            b,2026-01-08T08:00,negative
            c,2026-01-06T23:00+01:00,negative
            """);
        yield return SmallProgram.Of("no-time-zone", null, """
            person,site,collected_at,result
            a,North,2026-03-29T02:30,positive
            b,North,2026-01-05T23:59,negative
            b,North,2026-01-06T00:00,invalid
            c,South,2026-01-05,positive
            """, """
            person,collected_at,result,reported_at
            a,2026-04-01T02:30,positive,2026-04-02T02:30
            c,2026-01-08,negative,2026-01-09
            """);
        yield return SmallProgram.Of("far-from-UTC", "Pacific/Auckland", """
            person,site,collected_at,result,lot,lot_expiry
            a,North,2026-01-05T00:30,positive,L1,2026-01-04
            b,North,2026-01-05T12:59,positive,L1,2026-01-04
            c,North,2026-01-04T23:59,negative,L1,2026-01-04
            d,South,2026-04-05T02:30,invalid,L1,
            """, """
            person,collected_at,result
            a,2026-01-04T22:30,positive
            b,2026-01-08T12:59,negative
            """);
        yield return SmallProgram.Of("seconds", Vienna, """
            person,site,collected_at,result,read_at
            a,North,2026-01-05T08:00:30,positive,2026-01-05T08:15:45
            b,North,2026-01-05T08:00:59,positive,2026-01-05T08:16
            a,North,2026-01-05T08:00:31,negative,
            """, """
            person,collected_at,result
            a,2026-01-08T08:00:30,positive
            b,2026-01-08T08:01:00,positive
            """);
    }

    private static IEnumerable<SmallProgram> Marks()
    {
        yield return SmallProgram.Of("outbreaks", Vienna, """
            person,site,collected_at,result,outbreak
            a,North,2026-01-05T08:00,positive,yes
            b,North,2026-01-06T08:00,negative,
            c,North,2026-01-07T08:00,positive,no
            d,South,2026-01-06T08:00,negative,
            e,South,2026-01-20T08:00,positive,yes
            f,South,2026-01-21T08:00,invalid,
            """, """
            person,collected_at,result
            a,2026-01-05T12:00,positive
            c,2026-01-07T12:00,negative
            """, "\"outbreaks\": [ { \"site\": \"North\", \"from\": \"2026-01-06\", \"to\": \"2026-01-12\" } ]");
        yield return SmallProgram.Of("controls-headcount-regions", Vienna, """
            person,site,collected_at,result,lot
            a,North,2026-01-05T08:00,positive,L1
            b,North,2026-01-06T08:00,negative,L1
            c,South,2026-01-07T08:00,positive,L2
            """, """
            person,collected_at,result
            a,2026-01-05T12:00,positive
            """, "", new Dictionary<string, string>
            {
                ["controls.csv"] = "site,lot,kit,run_at,control,result,operator\nNorth,L1,k1,2026-01-05T07:00,positive,positive,o1\nSouth,L2,k2,2026-01-05T07:00,negative,positive,o1\n",
                ["headcount.csv"] = "site,week,eligible\nNorth,2026-W02,40\nSouth,2026-W02,25\n",
                ["sites.csv"] = "site,region\nNorth,Upper\nSouth,Lower\n",
            });
        yield return SmallProgram.Of("one-run", Vienna, "person,site,collected_at,result\na,North,2026-01-05T08:00,negative\n");
        yield return SmallProgram.Of("nothing-counted", Vienna, """
            person,site,collected_at,result,symptomatic
            a,North,2026-01-05T08:00,negative,yes
            b,North,2026-01-05T08:00,positive,yes
            """, "person,collected_at,result\na,2026-01-05T12:00,positive\n");
    }
}
