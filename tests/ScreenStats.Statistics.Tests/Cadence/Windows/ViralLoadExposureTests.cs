using System.Globalization;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Windows;
using ScreenStats.Statistics.Tests.Cadence.Courses;

namespace ScreenStats.Statistics.Tests.Cadence.Windows;

public sealed class ViralLoadExposureTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("viral-load-exposures"), row =>
    {
        var courses = ViralLoadYieldTests.Published with
        {
            DetectionLimit = row.Number("detection_limit"), SymptomShare = row.Number("symptom_share"), SensitivityAboveLimit = row.Number("sensitivity"),
        };
        var gaps = Whole(row.Text("gaps")).Zip(Whole(row.Text("counts")), (days, count) => new ObservedGap(days, count));
        var earlier = EarlierScreens.Of((long)row.Number("people"), [.. gaps], ViralLoadExposure.LongestDays(courses));
        return [row.Mismatch("exposure", ViralLoadExposure.Of(courses, earlier, people: 40_000, seed: 7))];
    });

    [Fact]
    public void A_detectable_time_beyond_the_counts_of_earlier_screens_is_refused()
    {
        var act = () => ViralLoadExposure.Of(ViralLoadYieldTests.Published, EarlierScreens.Of(10, [new ObservedGap(7, 100)], 2), people: 100, seed: 1);
        act.Should().Throw<ArgumentOutOfRangeException>().WithParameterName("courses");
    }

    private static IEnumerable<int> Whole(string text) => text.Split(' ').Select(word => int.Parse(word, CultureInfo.InvariantCulture));
}
