namespace ScreenStats.Warehouse.Tests.Programs;

/// <summary>
/// Small programs: every rule of what is counted has one at least, with rows on both sides of it. Where the order of rows decides (the first
/// of two rows at one time, of two with one screen_id), it is the order in the export; the views have it as row_number.
/// </summary>
internal static partial class SmallPrograms
{
    private const string Vienna = "Europe/Vienna";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<SmallProgram> All { get; } = [.. Linking(), .. People(), .. Rows(), .. Conduct(), .. Times(), .. Marks(), .. Shards()];

    private static IEnumerable<SmallProgram> Linking()
    {
        yield return SmallProgram.Of("window-ends", Vienna, """
            person,site,collected_at,result,lot
            a,North,2026-01-05T08:00,positive,L1
            b,North,2026-01-05T08:00,positive,L1
            c,North,2026-01-05T08:00,positive,L1
            d,North,2026-01-05T08:00,positive,L2
            e,North,2026-01-05T08:00,inconclusive,L2
            f,North,2026-01-05T08:00,negative,L2
            """, """
            person,collected_at,result
            a,2026-01-05T06:00,positive
            b,2026-01-05T05:59,positive
            c,2026-01-08T08:00,negative
            d,2026-01-08T08:01,negative
            e,2026-01-05T06:00,negative
            """, "\"dataAsOf\": \"2026-03-01T00:00\"");
        yield return SmallProgram.Of("window-stated", Vienna, """
            person,site,collected_at,result
            a,North,2026-01-05T08:00,positive
            b,North,2026-01-05T08:00,positive
            c,South,2026-01-05T08:00,positive
            """, """
            person,collected_at,result
            a,2026-01-05T20:00,positive
            b,2026-01-05T20:01,positive
            c,2026-01-05T07:00,negative
            """, "\"dataAsOf\": \"2026-03-01T00:00\", \"policy\": { \"confirmWithinHours\": 12, \"confirmBeforeHours\": 1 }");
        yield return SmallProgram.Of("same-time-and-first-conclusive", Vienna, """
            person,site,collected_at,result,lot
            a,North,2026-01-05T08:00,positive,L1
            b,North,2026-01-05T08:00,positive,L1
            c,South,2026-01-05T08:00,positive,L2
            d,South,2026-01-05T08:00,positive,L2
            d,South,2026-01-06T08:00,inconclusive,L2
            """, """
            person,collected_at,result
            a,2026-01-05T10:00,negative
            a,2026-01-05T10:00,positive
            b,2026-01-05T10:00,indeterminate
            b,2026-01-06T10:00,negative
            b,2026-01-07T10:00,positive
            c,2026-01-05T09:00,rejected
            c,2026-01-06T09:00,indeterminate
            d,2026-01-06T09:00,positive
            """);
        yield return SmallProgram.Of("pending-and-unverified", Vienna, """
            person,site,collected_at,result
            a,North,2026-01-05T08:00,positive
            b,North,2026-01-09T08:00,positive
            c,North,2026-01-11T08:00,positive
            d,South,2026-01-12T08:00,inconclusive
            e,South,2026-01-12T08:00,negative
            """, """
            person,collected_at,result,reported_at
            z,2026-01-05T08:00,negative,2026-01-06T08:00
            z,2026-01-06T08:00,negative,2026-01-07T20:00
            y,2026-01-12T08:00,negative,2026-01-13T08:00
            """);
        yield return SmallProgram.Of("no-confirmatory-export", Vienna, """
            person,site,collected_at,result
            a,North,2026-01-05T08:00,positive
            b,North,2026-01-06T08:00,inconclusive
            c,South,2026-01-06T09:00,negative
            """);
        yield return SmallProgram.Of("whole-days", Vienna, """
            person,site,collected_at,result
            a,North,2026-01-05,positive
            b,North,2026-01-05,positive
            c,North,2026-01-05T23:30,positive
            d,South,2026-01-05,inconclusive
            e,South,2026-01-05T00:10,positive
            """, """
            person,collected_at,result
            a,2026-01-08T23:59,positive
            b,2026-01-09T00:00,positive
            c,2026-01-08,negative
            d,2026-01-04,negative
            e,2026-01-03,positive
            """, "\"dataAsOf\": \"2026-02-01\"");
        yield return SmallProgram.Of("audits", Vienna, """
            person,site,collected_at,result,lot
            a,North,2026-01-05T08:00,negative,L1
            a,North,2026-01-05T09:00,negative,L1
            b,North,2026-01-05T08:00,negative,L1
            c,South,2026-01-05T08:00,negative,L2
            d,South,2026-01-05T08:00,negative,L2
            e,South,2026-01-05T08:00,positive,L2
            f,South,2026-01-05T08:00,negative,L2
            g,South,2026-01-05T10:00,negative,L2
            """, """
            person,collected_at,result,reason,sampling_stratum,method
            a,2026-01-05T10:00,positive,audit,one,pcr
            b,2026-01-06T08:00,negative,audit,one,pcr
            c,2026-01-06T08:01,negative,audit,two,pcr
            d,2026-01-05T09:00,indeterminate,audit,two,pcr
            e,2026-01-05T09:00,positive,audit,two,lamp
            f,2026-01-05T09:00,negative,audit,,lamp
            f,2026-01-05T10:00,positive,follow-up,,lamp
            g,2026-01-05T08:00,negative,audit,two,lamp
            h,2026-01-05T08:00,negative,audit,two,lamp
            """);
        yield return SmallProgram.Of("audits-beside-kept-out-runs", Vienna, """
            person,site,collected_at,result,symptomatic,exposed
            a,North,2026-01-05T08:00,negative,no,
            a,North,2026-01-12T08:00,positive,yes,
            b,North,2026-01-05T08:00,negative,,
            b,North,2026-01-19T08:00,negative,,yes
            c,South,2026-01-05T08:00,negative,,
            d,South,2026-01-05T08:00,positive,,
            d,South,2026-01-12T08:00,negative,,
            """, """
            person,collected_at,result,reason
            a,2026-01-12T12:00,positive,other
            b,2026-01-19T12:00,negative,follow-up
            c,2026-01-05T10:00,negative,audit
            """);
        yield return SmallProgram.Of("interval-cases", Vienna, """
            person,site,collected_at,result
            a,North,2026-01-05T08:00,negative
            a,North,2026-01-12T08:00,negative
            b,North,2026-01-05T08:00,negative
            c,South,2026-01-05,negative
            d,South,2026-01-05T08:00,positive
            """, """
            person,collected_at,result,reason
            a,2026-01-14T08:00,positive,other
            b,2026-02-20T08:00,positive,
            c,2026-01-07,positive,follow-up
            d,2026-01-05T12:00,positive,
            d,2026-01-30T12:00,positive,other
            e,2026-01-05T12:00,positive,other
            """);
        yield return SmallProgram.Of("interval-cases-beside-kept-out-runs", Vienna, """
            person,site,collected_at,result,symptomatic,control
            a,North,2026-01-05T08:00,negative,,
            a,North,2026-01-08T08:00,positive,yes,
            a,North,2026-01-08T09:00,negative,yes,
            b,North,2026-01-05T08:00,negative,,
            b,North,2026-01-08T08:00,positive,,positive
            b,North,2026-01-08T09:00,negative,yes,
            c,South,2026-01-05T08:00,negative,,
            c,South,2026-01-08T08:00,positive,,
            """, """
            person,collected_at,result,reason
            a,2026-01-08T12:00,positive,other
            b,2026-01-08T12:00,positive,other
            c,2026-01-08T12:00,positive,follow-up
            """);
        yield return SmallProgram.Of("follow-up-of-positives-only", Vienna, """
            person,site,collected_at,result
            a,North,2026-01-05T08:00,positive
            b,North,2026-01-05T08:00,inconclusive
            """, """
            person,collected_at,result
            a,2026-01-05T09:00,positive
            b,2026-01-05T09:00,positive
            """, "\"policy\": { \"followUp\": [\"positive\"] }");
        yield return SmallProgram.Of("delays-and-lag", Vienna, """
            person,site,collected_at,result
            a,North,2026-01-05T08:00,positive
            b,North,2026-01-05T08:00,positive
            c,South,2026-01-06T08:00,positive
            """, """
            person,collected_at,result,reported_at
            a,2026-01-05T12:30,positive,2026-01-06T07:00
            b,2026-01-06T08:00,negative,2026-01-06T07:00
            c,2026-01-07T08:00,negative,2026-01-09
            """);
    }

    private static IEnumerable<SmallProgram> People()
    {
        yield return SmallProgram.Of("cases-and-episodes", Vienna, """
            person,site,collected_at,result
            a,North,2026-01-05T08:00,positive
            a,North,2026-01-08T08:00,positive
            a,North,2026-06-05T08:00,positive
            b,North,2026-01-05T08:00,inconclusive
            b,North,2026-01-05T09:00,positive
            c,South,2026-01-05T08:00,positive
            d,South,2026-03-05T08:00,positive
            """, """
            person,collected_at,result
            a,2026-01-05T12:00,positive
            a,2026-01-08T12:00,positive
            a,2026-06-05T12:00,positive
            b,2026-01-05T12:00,positive
            c,2025-11-01T12:00,positive
            c,2026-01-05T12:00,positive
            d,2025-12-05T07:00,positive
            d,2026-03-05T12:00,positive
            """);
        yield return SmallProgram.Of("episode-of-thirty-days", Vienna, """
            person,site,collected_at,result
            a,North,2026-01-05T08:00,positive
            a,North,2026-02-04T08:00,positive
            a,North,2026-03-08T08:00,positive
            """, """
            person,collected_at,result
            a,2026-01-05T09:00,positive
            a,2026-02-04T09:00,positive
            a,2026-03-08T09:00,positive
            """, "\"policy\": { \"episodeDays\": 30 }");
        yield return SmallProgram.Of("repeats-with-times", Vienna, """
            person,site,collected_at,result
            a,North,2026-01-05T08:00,inconclusive
            a,North,2026-01-05T08:20,negative
            b,North,2026-01-05T08:00,invalid
            b,North,2026-01-05T08:20,invalid
            b,North,2026-01-05T08:40,positive
            c,South,2026-01-05T08:00,invalid
            d,South,2026-01-05T23:50,invalid
            d,South,2026-01-06T00:10,negative
            e,South,2026-01-05T08:00,negative
            e,South,2026-01-05T08:20,invalid
            """);
        yield return SmallProgram.Of("repeats-without-times", Vienna, """
            person,site,collected_at,result,lot
            a,North,2026-01-05,inconclusive,L1
            a,North,2026-01-05,negative,L1
            b,North,2026-01-05,invalid,L1
            c,South,2026-01-05,invalid,L2
            c,South,2026-01-05T09:00,negative,L2
            d,South,2026-01-05,invalid,L2
            d,South,2026-01-06,negative,L2
            """);
        yield return SmallProgram.Of("gaps-and-weeks", Vienna, """
            person,site,collected_at,result,lot
            a,North,2026-01-04T08:00,negative,L1
            a,North,2026-01-05T08:00,negative,L1
            a,South,2026-01-12T08:00,negative,L2
            a,South,2026-02-28T08:00,positive,L2
            b,North,2026-01-05T08:00,positive,L1
            b,North,2026-01-05T09:00,positive,L1
            b,North,2026-01-19T09:00,negative,L1
            c,South,2025-12-29T08:00,invalid,L2
            c,South,2026-01-05,negative,L2
            """);
        yield return SmallProgram.Of("two-sites-on-one-day", Vienna, """
            person,site,collected_at,result
            a,North,2026-01-05T08:00,negative
            a,South,2026-01-05T08:30,negative
            a,South,2026-01-05T20:00,positive
            b,South,2026-01-05T08:00,negative
            """);
        yield return SmallProgram.Of("people-in-other-letters", Vienna, """
            person,site,collected_at,result
            p-Ä,Nörd,2026-01-05T08:00,positive
            p-ä,Nörd,2026-01-06T08:00,positive
            p-é,İstanbul,2026-01-05T08:00,positive
            P-É,İstanbul,2026-01-06T08:00,negative
            日本,東,2026-01-05T08:00,negative
            """, """
            person,collected_at,result
            p-Ä,2026-01-05T12:00,positive
            p-é,2026-01-05T12:00,negative
            """);
    }

    private static IEnumerable<SmallProgram> Rows()
    {
        yield return SmallProgram.Of("duplicates", Vienna, """
            screen_id,person,site,collected_at,result,lot
            ,a,North,2026-01-05T08:00,negative,L1
            ,a,North,2026-01-05T08:00,negative,L1
            ,a,North,2026-01-05T08:00,negative,L2
            s1,b,North,2026-01-05,negative,L1
            s1,b,North,2026-01-05,negative,L1
            ,c,South,2026-01-05,positive,L1
            ,c,South,2026-01-05,positive,L1
            ,c,South,2026-01-05,positive,L1
            s2,d,South,2026-01-05T08:00,positive,L1
            s3,d,South,2026-01-05T08:00,positive,L1
            """, """
            person,collected_at,result
            c,2026-01-05T12:00,positive
            c,2026-01-05T12:00,positive
            d,2026-01-06,negative
            d,2026-01-06,negative
            """);
        yield return SmallProgram.Of("conflicting-screen-ids", Vienna, """
            screen_id,person,site,collected_at,result,lot
            s1,a,North,2026-01-05T08:00,negative,L1
            s1,a,North,2026-01-05T08:00,positive,L1
            s1,a,North,2026-01-05T08:00,negative,L1
            s2,b,North,2026-01-06T08:00,positive,L1
            s2,c,South,2026-01-05T08:00,negative,L2
            s3,d,South,2026-01-05T08:00,negative,
            s3,d,South,2026-01-05T08:00,negative,L2
            s4,e,South,2026-01-05T08:00,negative,L2
            """);
        yield return SmallProgram.Of("set-aside", Vienna, """
            person,site,collected_at,result,lot
            ,North,2026-01-05T08:00,negative,L1
            a,,2026-01-05T08:00,negative,L1
            a,North,,negative,L1
            a,North,2026-01-05T08:00,,L1
            a,North,2026-01-05T08:00,smudged,L1
            b,North,2026-01-05T09:00,positive,L1
            """, """
            person,collected_at,result
            ,2026-01-05T12:00,positive
            b,,positive
            b,2026-01-05T12:00,
            b,2026-01-05T13:00,lost
            b,2026-01-05T14:00,negative
            """);
        yield return SmallProgram.Of("kept-out", Vienna, """
            person,site,collected_at,result,symptomatic,exposed
            a,North,2026-01-05T08:00,positive,yes,no
            b,North,2026-01-05T08:00,positive,no,yes
            c,North,2026-01-05T08:00,positive,yes,yes
            d,South,2026-01-05T08:00,positive,no,no
            e,South,2026-01-05T08:00,negative,,
            f,South,2026-01-05T08:00,invalid,no,
            """, """
            person,collected_at,result
            a,2026-01-05T12:00,positive
            d,2026-01-05T12:00,positive
            """);
        yield return SmallProgram.Of("control-swabs", Vienna, """
            person,site,collected_at,result,lot,kit,operator,control
            ,North,2026-01-05T08:00,positive,L1,k1,o1,positive
            ,North,2026-01-05T08:10,negative,L1,k1,o1,negative
            ,North,2026-01-05T08:20,invalid,L1,k1,o1,positive
            a,South,2026-01-05T08:00,positive,L2,k2,o2,negative
            ,South,2026-01-05,positive,L2,k2,o2,positive
            ,South,2026-01-05,positive,L2,k2,o2,positive
            b,South,2026-01-05T09:00,negative,L2,k2,o2,
            """);
        yield return SmallProgram.Of("blanks-everywhere", Vienna, """
            person,site,collected_at,result,lot,kit,operator,specimen,collection
            a,North,2026-01-05T08:00,negative,,,,,
            b,North,2026-01-05T08:05,positive,,,,,
            c,South,2026-01-05T08:10,invalid,L1,,,,
            d,South,2026-01-05T08:15,negative,,k1,,,
            e,South,2026-01-05T08:20,negative,,,o1,nasal,self
            """);
        yield return SmallProgram.Of("names-that-are-taken", Vienna, """
            person,site,collected_at,result,lot,operator
            a,(none),2026-01-05T08:00,negative,(none),(none)
            b,North,2026-01-05T08:05,positive,,
            c,=SUM(A1),2026-01-05T08:10,invalid,-1,+2
            d,north,2026-01-05T08:15,negative,l1,O1
            e,North,2026-01-05T08:20,negative,L1,o1
            """);
        yield return SmallProgram.Of("specimens-and-collection", Vienna, """
            person,site,collected_at,result,specimen,collection
            a,North,2026-01-05T08:00,positive,nasal,self
            b,North,2026-01-05T08:05,positive,nasopharyngeal,supervised
            c,North,2026-01-05T08:10,negative,throat,self
            d,South,2026-01-05T08:15,negative,saliva,supervised
            e,South,2026-01-05T08:20,invalid,other,
            f,South,2026-01-05T08:20,inconclusive,,self
            """, """
            person,collected_at,result,method
            a,2026-01-05T12:00,positive,pcr
            b,2026-01-05T12:00,negative,lamp
            """);
    }
}
