using System.Text;
using System.Text.Json.Nodes;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Changes;
using ScreenStats.Evaluation.Changes.Snapshots;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Reporting.Files.Earlier;
using ScreenStats.Reporting.Files.Schema;

namespace ScreenStats.Reporting.Tests.Changes;

/// <summary>The findings.json of an earlier evaluation, read for what can be compared.</summary>
public class EarlierFindingsTests
{
    [Fact]
    public void What_is_read_from_the_file_is_what_the_findings_have()
    {
        foreach (var (name, findings) in Programs.All)
            FindingsReader.Read(Encoding.UTF8.GetBytes(FindingsFile.Of(findings)), "f").Should().BeEquivalentTo(FindingsSnapshot.Of(findings), options => options.WithStrictOrdering(), name);
    }

    [Fact]
    public void Of_a_file_that_hides_small_counts_what_it_shows_is_read_and_nothing_else()
    {
        var settings = Programs.Published.Settings;
        var hiding = DisclosureControl.Apply(Programs.Published with { Settings = settings with { Report = settings.Report with { SuppressBelow = 5 } } });
        var (read, whole) = (FindingsReader.Read(Encoding.UTF8.GetBytes(FindingsFile.Of(hiding)), "f"), FindingsSnapshot.Of(Programs.Published));

        read.SuppressBelow.Should().Be(5);
        read.Periods.Should().BeEmpty();
        read.Shares.Where(share => share.Events is not null).Should().NotBeEmpty().And.OnlyContain(share => whole.Shares.Any(other => other.By == share.By && other.Level == share.Level && other.Measure == share.Measure && other.Events == share.Events));
        read.Levels.Should().Equal(whole.Levels);
    }

    [Fact]
    public void A_byte_order_mark_is_no_fault()
    {
        byte[] marked = [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(FindingsFile.Of(Programs.FaultyLot))];
        FindingsReader.Read(marked, "f").LastDay.Should().Be(Programs.FaultyLot.Span.LastDay);
    }

    [Theory]
    [InlineData("", "f is not valid JSON*")]
    [InlineData("{\n\"a\": Quillfeather}", "f is not valid JSON (line 2)*")]
    [InlineData("[]", "*no findings.json of ours*")]
    [InlineData("null", "*no findings.json of ours*")]
    [InlineData("{\"format\": 1}", "*no findings.json of ours*")]
    [InlineData("{\"$schema\": \"findings.schema.json\", \"format\": 2, \"span\": {}}", "*has format 2, and this version knows formats up to 1*")]
    [InlineData("{\"$schema\": \"findings.schema.json\", \"format\": 0}", "*format that never was*")]
    [InlineData("{\"$schema\": \"findings.schema.json\", \"format\": 1}", "f lacks span*")]
    public void What_is_no_findings_file_is_refused_in_one_clear_message(string text, string message)
    {
        var act = () => FindingsReader.Read(Encoding.UTF8.GetBytes(text), "f");
        act.Should().Throw<NotFindingsException>().WithMessage(message).Which.Message.Should().NotContain("Quillfeather");
    }

    [Fact]
    public void A_file_that_lacks_anything_that_is_read_is_refused_and_never_guessed()
    {
        var text = FindingsFile.Of(Programs.FaultyLot);
        var refused = 0;
        foreach (var path in new[] { "positivity.program.events", "predictiveValue.observed.trials", "invalidRuns.sites", "refuted.groups", "lots", "sites", "trends.points", "answers.questions", "followUp", "accuracy.sensitivity", "expected.devices", "yield", "persons.program.caseShare" })
        {
            var root = JsonNode.Parse(text)!;
            var steps = path.Split('.');
            steps[..^1].Aggregate(root, (node, step) => node[step]!).AsObject().Remove(steps[^1]).Should().BeTrue(path);
            var act = () => FindingsReader.Read(Encoding.UTF8.GetBytes(root.ToJsonString()), "f");
            act.Should().Throw<NotFindingsException>(path).WithMessage("f lacks *");
            refused++;
        }

        refused.Should().Be(13);
    }

    [Fact]
    public void Counts_that_cannot_be_are_refused()
    {
        var text = FindingsFile.Of(Programs.FaultyLot);
        foreach (var events in new[] { "-1", "99999999999", "\"7\"", "1.5" })
        {
            var root = JsonNode.Parse(text)!;
            root["positivity"]!["program"]!["events"] = JsonNode.Parse(events);
            var act = () => FindingsReader.Read(Encoding.UTF8.GetBytes(root.ToJsonString()), "f");
            act.Should().Throw<NotFindingsException>(events);
        }
    }

    [Theory]
    [InlineData("accuracy.sensitivity.estimate", "7")]
    [InlineData("accuracy.sensitivity.lower", "-0.5")]
    [InlineData("accuracy.sensitivity.upper", "9")]
    [InlineData("accuracy.sensitivity.confidence", "1")]
    [InlineData("positivity.program.designEffect", "1e308")]
    [InlineData("positivity.program.designEffect", "-1")]
    [InlineData("positivity.program.clusters", "-3")]
    [InlineData("positivity.program.trials", "9000000000000000000")]
    [InlineData("span.firstDay", "\"2999-01-01\"")]
    [InlineData("span.firstDay", "null")]
    [InlineData("span.lastDay", "\"2026-02-30\"")]
    [InlineData("trends.points.0.trials", "-5")]
    [InlineData("trends.points.0.events", "4000000000000000000")]
    [InlineData("trends.points.0.periodEnd", "\"1999-01-01\"")]
    public void Figures_that_cannot_be_are_refused(string path, string value)
    {
        var root = JsonNode.Parse(FindingsFile.Of(Programs.FaultyLot))!;
        var steps = path.Split('.');
        var parent = steps[..^1].Aggregate(root, (node, step) => int.TryParse(step, out var index) ? node[index]! : node[step]!).AsObject();
        if (path.StartsWith("trends", StringComparison.Ordinal)) (parent["basis"], parent["by"], parent["measure"]) = ("all", "program", "positivity");
        parent[steps[^1]] = JsonNode.Parse(value);
        var act = () => FindingsReader.Read(Encoding.UTF8.GetBytes(root.ToJsonString()), "f");
        act.Should().Throw<NotFindingsException>().WithMessage("f lacks *");
    }

    [Fact]
    public void Text_that_is_none_is_refused_in_one_clear_message()
    {
        var text = FindingsFile.Of(Programs.FaultyLot);
        var level = Programs.FaultyLot.Sites[0].Site;
        var half = Encoding.UTF8.GetBytes(text.Replace($"\"{level}\"", "\"\\ud800moor\"", StringComparison.Ordinal));
        var bytes = Encoding.Latin1.GetBytes(text.Replace($"\"{level}\"", "\"M\u00f6r\"", StringComparison.Ordinal));
        foreach (var broken in new[] { half, bytes })
        {
            var act = () => FindingsReader.Read(broken, "f");
            act.Should().Throw<NotFindingsException>().WithMessage("f has text in it that is none*");
        }
    }

    [Fact]
    public void A_report_with_changes_is_as_the_schema_says_and_one_without_has_nothing_of_them()
    {
        var (earlier, later) = Both();
        var with = Report.Files(later.Since(FindingsSnapshot.Of(earlier)), new ReportInputs());
        var without = Report.Files(later, new ReportInputs());

        Encoding.UTF8.GetString(with["findings.json"]).Should().Contain("\"changes\": {");
        Encoding.UTF8.GetString(without["findings.json"]).Should().NotContain("\"changes\": {");
        with.Keys.Except(without.Keys).Should().BeEquivalentTo("tables/changes.csv", "tables/changed-flags.csv", "tables/changed-settings.csv", "tables/changed-answers.csv");
        // What is there without stays byte for byte, but for what lists or joins everything.
        foreach (var name in without.Keys.Except(["findings.json", "report.html", "workbook.xlsx", "manifest.json", "tables/columns.csv", "tables/datapackage.json"]))
            with[name].Should().Equal(without[name], name);
        FindingsReader.Read(with["findings.json"], "f").Should().BeEquivalentTo(FindingsSnapshot.Of(later), "an evaluation with changes can itself be the earlier one");
    }

    internal static (Findings Earlier, Findings Later) Both()
    {
        Findings Of(int weeks)
        {
            var sketch = new ProgramSketch();
            for (var week = 0; week < weeks; week++)
            {
                sketch.Runs(Outcome.Negative, 300 + week, day: 7 * week).Runs(Outcome.Negative, 250, site: "South", lot: "B2", day: 7 * week)
                    .Runs(Outcome.Positive, 7, FollowUp.Confirmed, day: 7 * week).Runs(Outcome.Positive, 5 + week, FollowUp.Refuted, "South", "B2", 7 * week).Runs(Outcome.Invalid, 3, site: "South", lot: "B2", day: 7 * week);
            }

            return Evaluator.Evaluate(sketch.Tally(), new ProgramSettings());
        }

        return (Of(5), Of(9));
    }
}
