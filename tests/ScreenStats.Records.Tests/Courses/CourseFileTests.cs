using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Records.Courses;

namespace ScreenStats.Records.Tests.Courses;

public sealed class CourseFileTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("course").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [Theory]
    [InlineData("day,detection,infectiousness\n1,0,0\n2.5,0.4,1e3\n", "")]
    [InlineData("\uFEFFday,detection,infectiousness\r\n1,0,0\r\n2.5,0.4,1000", "de-DE")]
    [InlineData("Infectiousness;Day;note;DETECTION\n0;1;\"a;b\";0\n1000;2,5;;0,4\n", "tr-TR")]
    [InlineData("day\tdetection\tinfectiousness\n1\t0\t0\n\n2,5\t0,4\t1000\n", "")]
    [InlineData("day|detection|infectiousness\n1|0|0\n 2.5 | 0.4 | 1000 \n", "")]
    public void A_course_is_read_whatever_the_delimiter_order_of_columns_and_culture(string text, string culture)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Read(text).Should().Equal(new StatedCourseDay(1, 0, 0), new StatedCourseDay(2.5, 0.4, 1000));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_day_on_two_lines_is_a_jump() =>
        Read("day,detection,infectiousness\n3,0,0\n3,0.8,1\n10,0.8,1\n10,0,0\n").Select(day => day.AgeDays).Should().Equal(3, 3, 10, 10);

    [Fact]
    public void A_file_in_utf_16_is_read_and_other_bytes_are_refused()
    {
        var path = Path.Combine(folder, "course.csv");
        File.WriteAllText(path, "day,detection,infectiousness\n0,0,0\n9,1,1\n", Encoding.Unicode);
        CourseFile.Read(path).Should().HaveCount(2);
        File.WriteAllBytes(path, [.. "day,detection,infectiousness,note\n0,0,0,f"u8, 0xFC, .. "r\n"u8]);
        Fails(() => CourseFile.Read(path)).Code.Should().Be("not-text");
        File.WriteAllBytes(path, [.. "PK"u8, 3, 4, 0, 0]);
        Fails(() => CourseFile.Read(path)).Code.Should().Be("not-text");
    }

    [Theory]
    [InlineData("", "empty-file", null, "is empty")]
    [InlineData("\n \n", "empty-file", null, "is empty")]
    [InlineData("day,detection\n0,0\n1,1\n", "course-unusable", 1, "no column \"infectiousness\"")]
    [InlineData("day,detection,infectiousness,Day\n0,0,0,0\n1,1,1,1\n", "course-unusable", 1, "\"day\" is there twice")]
    [InlineData("day,detection,infectiousness\n", "course-unusable", null, "at least two lines")]
    [InlineData("day,detection,infectiousness\n1,0.5,1\n", "course-unusable", null, "at least two lines")]
    [InlineData("day,detection,infectiousness\n0,0,0\n-1,0,0\n", "course-unusable", 3, "from 0 to 3660")]
    [InlineData("day,detection,infectiousness\n0,0,0\n4000,0,0\n", "course-unusable", 3, "from 0 to 3660")]
    [InlineData("day,detection,infectiousness\n0,0,0\n2,0,0\n1,0,0\n", "course-unusable", 4, "not be before that of the line above")]
    [InlineData("day,detection,infectiousness\n2,0,0\n2,1,0\n2,0,0\n", "course-unusable", 4, "and not on three")]
    [InlineData("day,detection,infectiousness\n0,0,0\n2,80,0\n", "course-unusable", 3, "for 80 percent write 0.8")]
    [InlineData("day,detection,infectiousness\n0,0,0\n2,-0.1,0\n", "course-unusable", 3, "detection must be a fraction")]
    [InlineData("day,detection,infectiousness\n0,0,0\n2,NaN,0\n", "course-unusable", 3, "detection must be a fraction")]
    [InlineData("day,detection,infectiousness\n0,0,0\n2,0.5,Infinity\n", "course-unusable", 3, "infectiousness must be a number")]
    [InlineData("day,detection,infectiousness\n0,0,0\n2,0.5\n", "course-unusable", 3, "infectiousness must be a number")]
    [InlineData("day,detection,infectiousness\n0,0,0\n2,\"0.5\"x,1\n", "unclosed-quote", 3, "quote")]
    [InlineData("day,detection,infectiousness\n0,0,0\n2,\"0.5,1\n3,0,0\n", "unclosed-quote", 3, "quote")]
    public void What_is_wrong_is_told_with_its_line(string text, string code, int? line, string part)
    {
        var found = Fails(() => Read(text));
        found.Code.Should().Be(code);
        found.File.Should().Be("course.csv");
        found.Line.Should().Be(line);
        found.Message.Should().Contain(part);
    }

    [Fact]
    public void Messages_never_repeat_a_cell_and_every_wrong_line_is_told_up_to_twenty()
    {
        var text = "day,detection,infectiousness\n" + string.Concat(Enumerable.Range(0, 30).Select(_ => "Erika Mustermann,0.5,1\n"));
        var found = FluentActions.Invoking(() => Read(text)).Should().Throw<UnusableDataException>().Which.Diagnostics;
        found.Should().HaveCount(21);
        found[^1].Message.Should().StartWith("10 more problems");
        found.Should().NotContain(problem => problem.Message.Contains("Erika", StringComparison.Ordinal));
    }

    [Fact]
    public void A_file_too_long_or_too_large_is_refused()
    {
        var lines = string.Concat(Enumerable.Range(0, 10_001).Select(line => FormattableString.Invariant($"{line / 10.0},0,0\n")));
        Fails(() => Read("day,detection,infectiousness\n" + lines)).Message.Should().Contain("more than 10,000 lines");
        Fails(() => Read("day,detection,infectiousness\n" + new string(' ', 1 << 20))).Message.Should().Contain("larger than 1 MiB");
    }

    [Fact]
    public void Settings_get_the_days_of_the_file_that_they_name()
    {
        Directory.CreateDirectory(Path.Combine(folder, "inner"));
        File.WriteAllText(Path.Combine(folder, "inner", "course.csv"), "day,detection,infectiousness\n0,0,0\n3,1,1\n");
        CourseFile.Into(Named("inner/course.csv"), folder).Cadence.Course!.Days.Should().Equal(new StatedCourseDay(0, 0, 0), new StatedCourseDay(3, 1, 1));
        var none = new ProgramSettings();
        CourseFile.Into(none, folder).Should().BeSameAs(none);
    }

    [Theory]
    [InlineData("../course.csv", "file-outside-folder")]
    [InlineData("/etc/passwd", "file-outside-folder")]
    [InlineData("course.csv", "missing-file")]
    public void A_file_that_is_not_in_the_folder_is_refused(string name, string code) =>
        Fails(() => CourseFile.Into(Named(name), folder)).Code.Should().Be(code);

    [Fact]
    public void A_link_out_of_the_folder_is_refused()
    {
        var inner = Directory.CreateDirectory(Path.Combine(folder, "program")).FullName;
        File.WriteAllText(Path.Combine(folder, "outside.csv"), "day,detection,infectiousness\n0,0,0\n3,1,1\n");
        File.CreateSymbolicLink(Path.Combine(inner, "course.csv"), Path.Combine(folder, "outside.csv"));
        Fails(() => CourseFile.Into(Named("course.csv"), inner)).Code.Should().Be("file-outside-folder");
    }

    private static ProgramSettings Named(string file) =>
        new() { Cadence = new CadenceSettings { Course = new CourseSettings { Kind = CourseKind.ByDay, File = file } } };

    private static Diagnostic Fails(Action read) =>
        read.Should().Throw<UnusableDataException>().Which.Diagnostics.Should().ContainSingle().Subject;

    private ImmutableArray<StatedCourseDay> Read(string text)
    {
        var path = Path.Combine(folder, "course.csv");
        File.WriteAllText(path, text);
        return CourseFile.Read(path);
    }
}
