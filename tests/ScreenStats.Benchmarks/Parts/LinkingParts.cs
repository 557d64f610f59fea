using BenchmarkDotNet.Attributes;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;

namespace ScreenStats.Benchmarks.Parts;

/// <summary>The rules of linkage, person by person: 26 weekly runs each, one positive and its specimen in every eighth person.</summary>
[MemoryDiagnoser]
public class LinkingParts
{
    private const int People = 10_000;
    private const int Weeks = 26;
    private const long Day = 86_400;

    private readonly RunEvent[] runs = [.. Enumerable.Range(0, Weeks).Select(week => Run(week, Outcome.Negative))];
    private readonly RunEvent[] withPositive = [.. Enumerable.Range(0, Weeks).Select(week => Run(week, week == 13 ? Outcome.Positive : Outcome.Negative))];
    private readonly SpecimenEvent[] specimens = [new(new Moment((13 * 7 * Day) + 30_000, 0, false), ConfirmatoryResult.Positive, SpecimenReason.FollowUp)];
    private readonly PersonLinkage linkage = new(new PolicySettings(), Weeks * 7 * Day, 48 * 3600);

    [Benchmark(OperationsPerInvoke = People)]
    public int Link()
    {
        var confirmed = 0;
        for (var person = 0; person < People; person++)
        {
            var positive = person % 8 == 0;
            linkage.Link(positive ? withPositive : runs, positive ? specimens : []);
            if (linkage.FollowUps[13] == FollowUp.Confirmed) confirmed++;
        }

        return confirmed;
    }

    private static RunEvent Run(int week, Outcome outcome) => new(new Moment(week * 7 * Day, 0, false), outcome);
}
