using System.Globalization;
using ScreenStats.Statistics.Proportions;
using ScreenStats.Statistics.Trends;
using ScreenStats.Statistics.Trends.SlopeChanges;

namespace ScreenStats.Statistics.Tests.Trends.SlopeChanges;

/// <summary>
/// Series with known truth: how often a change is seen where there is none, how often the right number is found, and how often limits cover. A few in every
/// run, held against the committed table; with SCREENSTATS_FULL_STUDIES=1 all, and tests/reference/studies/slope-study.csv is written anew.
/// </summary>
public sealed class SlopeStudyTests
{
    private const string Columns = "study,series,measure,count,of,share,lower_95,upper_95";
    private const int Few = 6;
    private const int All = 300;
    private static readonly bool IsFull = Environment.GetEnvironmentVariable("SCREENSTATS_FULL_STUDIES") == "1";
    private static readonly string Path = RepositoryRoot.Combine("tests", "reference", "studies", "slope-study.csv");

    /// <summary>A line, how many tests a week, and how much the logit of a week moves beyond binomial chance.</summary>
    private static readonly Dictionary<string, (int Weeks, double Trials, double Level, (double From, double Slope)[] Parts, double Extra)> Studies = new()
    {
        ["none"] = (52, 300, -3, [(0, 0.01)], 0),
        ["none; logit moves by 0.3 from week to week"] = (52, 300, -3, [(0, 0.01)], 0.3),
        ["none; five positives a week"] = (52, 100, -3, [(0, 0)], 0),
        ["one; logit +0.06 then -0.06 a week"] = (52, 300, -3, [(0, 0.06), (30, -0.12)], 0),
        ["one; the same and logit moves by 0.3 from week to week"] = (52, 300, -3, [(0, 0.06), (30, -0.12)], 0.3),
        ["two; up and down and level"] = (104, 300, -3, [(0, 0.05), (40, -0.1), (70, 0.05)], 0),
    };

    public static TheoryData<string> Names => [.. Studies.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Errors_of_the_number_of_changes_and_coverage_are_those_of_the_table(string name)
    {
        var few = Run(name, Few);
        if (IsFull)
        {
            string[] lines = [.. File.Exists(Path) ? File.ReadLines(Path).Skip(1).Where(line => !line.StartsWith(name + ",", StringComparison.Ordinal)) : [], .. few, .. Run(name, All)];
            File.WriteAllText(Path, string.Concat(lines.Order(StringComparer.Ordinal).Prepend(Columns).Select(line => line + "\n")));
        }

        File.ReadLines(Path).Where(line => line.StartsWith($"{name},{Few},", StringComparison.Ordinal)).Should().BeEquivalentTo(few, "the study is seeded: set SCREENSTATS_FULL_STUDIES to 1 to write it anew where the change is meant");
    }

    [Fact]
    public void A_change_where_there_is_none_is_seen_as_rarely_as_stated()
    {
        foreach (var name in Studies.Keys.Where(key => key.StartsWith("none", StringComparison.Ordinal)))
        {
            var fields = Line(name, "permutation finds a change too many");
            double.Parse(fields[6], CultureInfo.InvariantCulture).Should().BeLessThan(0.05, name);
        }
    }

    private static string[] Line(string name, string measure) => File.ReadLines(Path).Single(line => line.StartsWith($"{name},{All},{measure},", StringComparison.Ordinal)).Split(',');

    private static List<string> Run(string name, int series)
    {
        var (weeks, trials, level, parts, extra) = Studies[name];
        var expected = SlopeSeries.Line(weeks, trials, level, parts);
        var truth = parts.Length - 1;
        var counts = new SortedDictionary<string, (int Count, int Of)>(StringComparer.Ordinal);
        void Add(string measure, bool hit)
        {
            var (count, of) = counts.GetValueOrDefault(measure);
            counts[measure] = (count + (hit ? 1 : 0), of + 1);
        }

        for (var replicate = 0; replicate < series; replicate++)
        {
            var drawn = SlopeStudy.Draw(20261125, replicate, expected, extra);
            var options = new SlopeChangeOptions { Permutations = 199, Seed = (ulong)replicate };
            var choice = BrokenLine.Choose(drawn, options);
            Numbers("permutation", choice.Number!.Value);
            Numbers("criterion", choice.Scores.MinBy(score => score.InformationCriterion)!.Number);
            Numbers("strict criterion", choice.Scores.MinBy(score => score.StrictInformationCriterion)!.Number);
            void Numbers(string how, int number)
            {
                Add(how + " finds a change too many", number > truth);
                if (truth > 0) Add(how + " finds the right number", number == truth);
            }

            if (truth == 0 || BrokenLine.Fit(drawn, truth, options) is not { Reason: null } fit) continue;
            for (var k = 0; k < truth; k++)
            {
                var change = fit.Changes[k];
                Add("profile limits cover the place", !(change.ProfileLower > parts[k + 1].From) && !(change.ProfileUpper < parts[k + 1].From));
                Add("limits by linearisation cover the place", change.Interval.Contains(parts[k + 1].From));
            }

            double slope = 0;
            for (var s = 0; s <= truth; s++)
            {
                slope += parts[s].Slope;
                Add("limits cover the slope of a segment", fit.Segments[s].Interval.Contains(slope));
            }

            // The mean over the last twelve weeks, whatever changes in them, of the line that was chosen.
            if (choice.Fit.MeanGrowth(weeks - 13, weeks - 1) is { } growth) Add("limits cover the mean growth of the last 12 weeks", growth.Interval.Contains((Logit(weeks - 1) - Logit(weeks - 13)) / 12));
        }

        return [.. counts.Select(pair => string.Create(CultureInfo.InvariantCulture, $"{name},{series},{pair.Key},{pair.Value.Count},{pair.Value.Of},{(double)pair.Value.Count / pair.Value.Of:F4},{Limits(pair.Value).Lower:F4},{Limits(pair.Value).Upper:F4}"))];
        double Logit(double week) => level + parts.Sum(part => part.Slope * Math.Max(0, week - part.From));
    }

    private static Interval Limits((int Count, int Of) part) => ProportionInterval.Wilson(part.Count, part.Of).Interval!.Value;
}
