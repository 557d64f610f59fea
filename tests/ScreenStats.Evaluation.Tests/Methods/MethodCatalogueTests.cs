using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Methods;

public class MethodCatalogueTests
{
    private static readonly (string Name, Findings Findings)[] Programs =
        [.. ExamplePrograms.All.Where(program => program.Name != "published").Select(program => (program.Name, ExamplePrograms.Evaluated(program.Name)))];

    [Fact]
    public void Every_note_says_what_the_method_does_by_what_formula_and_who_published_it()
    {
        MethodCatalogue.All.Select(note => note.Name).Should().OnlyHaveUniqueItems();
        MethodCatalogue.All.Select(note => note.Title).Should().OnlyHaveUniqueItems();
        foreach (var note in MethodCatalogue.All)
        {
            note.Name.Should().MatchRegex("^[a-z]+(-[a-z]+)*$");
            note.Meaning.Length.Should().BeGreaterThan(40, note.Name);
            note.Meaning.Should().EndWith(".", note.Name);
            note.Formulas.Should().NotBeEmpty(note.Name);
            note.Source.Should().EndWith(".", note.Name);
            MethodCatalogue.Find(note.Name).Should().BeSameAs(note);
        }

        MethodCatalogue.Find("no such method").Should().BeNull();
    }

    [Fact]
    public void Every_number_of_every_table_names_a_method_of_the_catalogue()
    {
        foreach (var (name, findings) in Programs)
        {
            foreach (var table in findings.Tables)
            {
                for (var column = 0; column < table.Columns.Length; column++)
                {
                    var info = table.Columns[column];
                    if (!TableMethods.NeedsMethod(info)) continue;
                    for (var row = 0; row < table.RowCount; row++)
                    {
                        if (table.CellAt(row, column).Kind != CellKind.Number) continue;
                        var method = TableMethods.Of(table, row, column);
                        method.Should().NotBeNull($"{name}: {table.Id}.{info.Name} in row {row} is a number");
                        MethodCatalogue.Find(method!).Should().NotBeNull($"{name}: {table.Id}.{info.Name} is by {method}");
                    }
                }
            }
        }
    }

    [Fact]
    public void Every_name_in_a_column_of_methods_is_in_the_catalogue()
    {
        foreach (var (name, findings) in Programs)
        {
            foreach (var table in findings.Tables)
            {
                for (var column = 0; column < table.Columns.Length; column++)
                {
                    if (table.Columns[column].Method is { } own) MethodCatalogue.Find(own).Should().NotBeNull($"{table.Id}.{table.Columns[column].Name}");
                    if (!table.Columns[column].Name.EndsWith("method", StringComparison.Ordinal)) continue;
                    for (var row = 0; row < table.RowCount; row++)
                    {
                        if (table.CellAt(row, column) is { Kind: CellKind.Text } cell) MethodCatalogue.Find(cell.AsText).Should().NotBeNull($"{name}: {table.Id} names {cell.AsText}");
                    }
                }
            }
        }
    }

    [Fact]
    public void Every_group_of_limits_has_a_column_that_names_its_method_or_one_method()
    {
        foreach (var table in Programs.SelectMany(program => program.Findings.Tables))
        {
            for (var column = 0; column < table.Columns.Length; column++)
            {
                var info = table.Columns[column];
                if (!info.Name.EndsWith("lower", StringComparison.Ordinal) && !info.Name.EndsWith("upper", StringComparison.Ordinal) && info.Name != "estimate") continue;
                (info.Method is not null || TableMethods.NamedBy(table, column) >= 0).Should().BeTrue($"{table.Id}.{info.Name}");
            }
        }
    }

    [Fact]
    public void A_widened_limit_is_named_by_its_own_column_and_a_count_by_none()
    {
        var positivity = Programs.Single(program => program.Name == "faulty lot and clumsy site").Findings.Positivity.By(Grouping.Program);
        int At(string name) => positivity.Columns.ToList().FindIndex(column => column.Name == name);

        TableMethods.Of(positivity, 0, At("estimate")).Should().Be("wilson");
        TableMethods.Of(positivity, 0, At("widened_lower")).Should().Be("wilson-widened");
        TableMethods.Of(positivity, 0, At("design_effect")).Should().Be("design-effect");
        TableMethods.Of(positivity, 0, At("tests")).Should().BeNull();
        TableMethods.NeedsMethod(positivity.Columns[At("confidence")]).Should().BeFalse();
    }

    [Fact]
    public void Methods_in_use_come_in_the_order_of_the_catalogue_with_their_tables()
    {
        var findings = Programs.Single(program => program.Name == "faulty lot and clumsy site").Findings;
        var used = MethodCatalogue.UsedIn(findings.Tables);

        used.Select(entry => entry.Note).Should().Equal(MethodCatalogue.All.Where(note => used.Any(entry => entry.Note == note)));
        used.Select(entry => entry.Note.Name).Should().Contain(["wilson", "wilson-widened", "rogan-gladen", "newcombe", "mantel-haenszel-sato", "hypergeometric", "step-down-holm", "logit"]);
        used.Single(entry => entry.Note.Name == "newcombe").Tables.Select(table => table.Id).Should().Equal("comparison-pairs", "kit-contrasts");
        MethodCatalogue.UsedIn([]).Should().BeEmpty();
    }
}
