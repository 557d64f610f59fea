using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Testing;

namespace ScreenStats.Tests;

public sealed class FindingsSchemaTests
{
    [Fact]
    public void The_sample_s_findings_file_is_as_the_schema_says_with_and_without_its_small_counts()
    {
        var program = ScreeningProgram.Open(RepositoryRoot.Combine("sample-data", "marrowlight"));
        var findings = program.Read().Tally.Evaluate(program.Settings);
        FindingsSchema.Faults(findings).Should().BeEmpty();
        var hiding = DisclosureControl.Apply(findings with { Settings = findings.Settings with { Report = findings.Settings.Report with { SuppressBelow = 5 } } });
        hiding.Disclosure.Should().NotBeNull();
        FindingsSchema.Faults(hiding).Should().BeEmpty();
    }
}
