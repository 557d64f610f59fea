using System.Globalization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests;

public class SentenceFigureTests
{
    public static TheoryData<string> Programs => [.. ExamplePrograms.All.Select(program => program.Name)];

    [Theory]
    [MemberData(nameof(Programs))]
    public void Every_figure_a_sentence_speaks_of_stands_under_its_path_in_the_findings(string name)
    {
        var findings = ExamplePrograms.Evaluated(name);

        foreach (var figure in findings.Sentences.SelectMany(sentence => sentence.Figures))
        {
            var value = FigureLookup.Find(findings, figure.Id);
            switch (figure.Value.Kind)
            {
                case CellKind.Count:
                    Convert.ToInt64(value, CultureInfo.InvariantCulture).Should().Be(figure.Value.AsCount, figure.Id);
                    break;
                case CellKind.Number:
                    Convert.ToDouble(value, CultureInfo.InvariantCulture).Should().Be(figure.Value.AsNumber, figure.Id);
                    break;
                case CellKind.Date:
                    value.Should().Be(figure.Value.AsDate, figure.Id);
                    break;
                case CellKind.Text when value is double share:
                    figure.Value.AsText.Should().Be(Figure.Percent(share), figure.Id);
                    break;
                case CellKind.Text:
                    value.Should().Be(figure.Value.AsText, figure.Id);
                    break;
                default:
                    value.Should().BeNull(figure.Id);
                    break;
            }
        }
    }

    [Theory]
    [MemberData(nameof(Programs))]
    public void Every_analysis_has_a_table_with_cells_that_can_be_read_and_a_sentence(string name)
    {
        var findings = ExamplePrograms.Evaluated(name);

        findings.Tables.Select(table => table.Id).Should().OnlyHaveUniqueItems();
        foreach (var finding in findings.All)
        {
            finding.Tables.Should().NotBeEmpty();
            finding.Sentences.Should().NotBeEmpty();
            foreach (var table in finding.Tables)
            {
                for (var row = 0; row < table.RowCount; row++)
                {
                    for (var column = 0; column < table.Columns.Length; column++) Rounding.Print(table.CellAt(row, column), table.Columns[column].Unit).Should().NotBeNull();
                }
            }
        }
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void Sentences_and_cells_are_the_same_in_every_culture(string culture)
    {
        foreach (var (name, tally, settings) in ExamplePrograms.All)
        {
            var invariant = Under("", () => Text(ExamplePrograms.Evaluated(name)));
            Under(culture, () => Text(Evaluator.Evaluate(tally, settings))).Should().Be(invariant);
        }
    }

    [Fact]
    public void No_sentence_speaks_of_significance_or_sends_anybody_back_to_work()
    {
        foreach (var (name, _, _) in ExamplePrograms.All)
        {
            foreach (var sentence in ExamplePrograms.Evaluated(name).Sentences)
            {
                sentence.Text.Should().NotContainAny("significan", "back to work", "undefined (", "NaN", "∞");
                if (sentence.Text.Contains("return to work", StringComparison.Ordinal)) sentence.Text.Should().Contain("does not say");
                sentence.Text.Should().EndWith(".");
            }
        }
    }

    private static string Text(Findings findings) => string.Join('\n', [
        .. findings.Sentences.Select(sentence => sentence.Text),
        .. findings.Tables.SelectMany(table => Enumerable.Range(0, table.RowCount).SelectMany(row =>
            Enumerable.Range(0, table.Columns.Length).Select(column => Rounding.Print(table.CellAt(row, column), table.Columns[column].Unit)))),
    ]);

    private static string Under(string culture, Func<string> action)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            return action();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
