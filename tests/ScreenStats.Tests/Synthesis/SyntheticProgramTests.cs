using System.Globalization;
using ScreenStats.Synthesis;
using ScreenStats.Synthesis.Planning;

namespace ScreenStats.Tests.Synthesis;

public sealed class SyntheticProgramTests
{
    private static readonly SynthesisPlan Small = SynthesisPlan.Standard with
    {
        Weeks = 7,
        ControlSwabs = true,
        Enrolment = 0.9,
        ScreeningColumns = ["screen_id", "person", "site", "collected_at", "read_at", "result", "lot", "kit", "operator", "symptomatic", "exposed"],
        Dirt = new SynthesisDirt { Duplicates = 0.01, Conflicts = 0.005, UnreadableDates = 0.004, UnknownWords = 0.004, BlankSymptoms = 0.05 },
    };

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void The_same_plan_and_seed_give_the_same_bytes_under_every_culture(string culture)
    {
        using var one = new TemporaryFolder();
        using var other = new TemporaryFolder();
        SyntheticProgram.Write(Small, 4, one.Path);
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo(culture);
            SyntheticProgram.Write(Small, 4, other.Path);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        Files(other).Should().Equal(Files(one));
    }

    [Fact]
    public void Another_seed_gives_other_runs()
    {
        using var one = new TemporaryFolder();
        using var other = new TemporaryFolder();
        SyntheticProgram.Write(Small, 4, one.Path);
        SyntheticProgram.Write(Small, 5, other.Path);
        Files(other)["screening.csv"].Should().NotBe(Files(one)["screening.csv"]);
    }

    [Fact]
    public void Every_row_written_has_its_entry_in_the_truth()
    {
        using var folder = new TemporaryFolder();
        var truth = SyntheticProgram.Write(Small, 8, folder.Path);
        File.ReadLines(folder.Combine("screening.csv")).LongCount().Should().Be(truth.Rows + 1);
        File.ReadLines(folder.Combine("confirmatory.csv")).LongCount().Should().Be(truth.ConfirmatoryRows + 1);
        (truth.SetAside + truth.Duplicates + truth.ControlRuns + truth.Symptomatic + truth.Exposed + truth.Counted).Should().Be(truth.Rows);
        (truth.DetectedPositive + truth.DetectableNegative + truth.FalsePositive + truth.TrueNegative + truth.Inconclusive + truth.Invalid).Should().Be(truth.Counted);
        truth.FalsePositivesByLot.Values.Sum().Should().Be(truth.FalsePositive);
        truth.UnusableBySite.Values.Sum().Should().Be(truth.Inconclusive + truth.Invalid);
        truth.SetAside.Should().BePositive();
        truth.Duplicates.Should().BePositive();
    }

    [Fact]
    public void Rates_come_out_as_planned_within_four_standard_errors()
    {
        using var folder = new TemporaryFolder();
        var plan = SynthesisPlan.Standard.ScaledTo(200_000);
        var truth = SyntheticProgram.Write(plan, 12, folder.Path);
        Near(truth.FalsePositive, truth.FalsePositive + truth.TrueNegative, 0.002);
        Near(truth.Invalid, truth.Counted, 0.006);
        Near(truth.Inconclusive, truth.Counted, 0.994 * 0.002);
        truth.Rows.Should().BeInRange(196_000, 204_000);

        static void Near(long events, long trials, double rate) => ((double)events / trials).Should()
            .BeApproximately(rate, 4 * Math.Sqrt(rate * (1 - rate) / trials));
    }

    [Fact]
    public void A_faulty_lot_has_its_false_positives_where_and_when_the_plan_says()
    {
        using var folder = new TemporaryFolder();
        var plan = SynthesisPlan.Standard with
        {
            Lots = SynthesisPlan.Standard.Lots.SetItem(0, SynthesisPlan.Standard.Lots[0] with
            {
                Fault = new SynthesisFault { Sites = ["Site B"], From = new DateOnly(2024, 9, 16), To = new DateOnly(2024, 9, 29), FalsePositiveRate = 1 },
            }),
        };
        SyntheticProgram.Write(plan, 3, folder.Path);
        var rows = File.ReadLines(folder.Combine("screening.csv")).Skip(1).Select(line => line.Split(',')).ToArray();
        bool InBurst(string[] row) => row[2] == "Site B" && row[5] == "L-101"
            && string.CompareOrdinal(row[3], "2024-09-16") >= 0 && string.CompareOrdinal(row[3], "2024-09-30") < 0;

        rows.Where(InBurst).Count(row => row[4] == "positive").Should().BeGreaterThan(100);
        rows.Where(InBurst).Count(row => row[4] == "negative").Should().BeLessThan(5, "only a detectable infection can still be missed");
        rows.Where(row => !InBurst(row)).Count(row => row[4] == "positive").Should().BeLessThan(120);
    }

    [Fact]
    public void Pseudonyms_differ_between_people()
    {
        using var folder = new TemporaryFolder();
        var plan = SynthesisPlan.Standard with { Weeks = 1, Sites = [new SynthesisSite { Name = "Site A", People = 60_000, Schedule = SynthesisSchedule.Daily, Participation = 1 }], AbsentWeeksShare = 0 };
        SyntheticProgram.Write(plan, 3, folder.Path);
        File.ReadLines(folder.Combine("screening.csv")).Skip(1).Where(line => line.Contains("2024-09-02T", StringComparison.Ordinal))
            .GroupBy(line => line.Split(',')[1]).Max(person => person.Count()).Should().BeLessThanOrEqualTo(2, "a run and its repeat");
    }

    [Fact]
    public void Exports_of_somebody_else_are_never_written_over()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder.Combine("screening.csv"), "the only copy");
        var write = () => SyntheticProgram.Write(Small, 4, folder.Path);
        write.Should().Throw<IOException>().WithMessage("*screening.csv*Choose an empty folder*");
        File.ReadAllText(folder.Combine("screening.csv")).Should().Be("the only copy");
        Directory.GetFiles(folder.Path).Should().ContainSingle();
    }

    [Fact]
    public void Its_own_folder_is_written_again()
    {
        using var folder = new TemporaryFolder();
        SyntheticProgram.Write(Small, 4, folder.Path);
        var first = Files(folder);
        SyntheticProgram.Write(Small, 5, folder.Path);
        SyntheticProgram.Write(Small, 4, folder.Path);
        Files(folder).Should().Equal(first);
    }

    internal static SortedDictionary<string, string> Files(TemporaryFolder folder) => new(
        Directory.GetFiles(folder.Path).ToDictionary(path => Path.GetFileName(path), path => Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(path)))),
        StringComparer.Ordinal);
}
