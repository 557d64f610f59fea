using System.Text.Json;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Accuracy;
using ScreenStats.Records;
using ScreenStats.Synthesis;
using ScreenStats.Synthesis.Planning;
using ScreenStats.Testing;

namespace ScreenStats.Tests.Synthesis;

/// <summary>Audits drawn at unequal rates: weights find the truth, and without them the figure is wrong.</summary>
/// <remarks>The full study of 200 programs, about ten missed in the busy site's audit: weighted covers 184, unweighted none.</remarks>
public sealed class StratifiedAuditStudyTests(ITestOutputHelper output)
{
    /// <summary>Twenty programs in every run; set SCREENSTATS_FULL_STUDIES to 1 for two hundred.</summary>
    private static readonly int Programs = Environment.GetEnvironmentVariable("SCREENSTATS_FULL_STUDIES") == "1" ? 200 : 20;

    // A quiet site where one negative in four is audited, a busy one where it is one in 25.
    private static readonly SynthesisPlan Plan = SynthesisPlan.Standard with
    {
        Sites =
        [
            new SynthesisSite { Name = "Quiet works", People = 300, Schedule = SynthesisSchedule.Daily, IncidenceFactor = 0.1 },
            new SynthesisSite { Name = "Busy works", People = 300, Schedule = SynthesisSchedule.Daily, IncidenceFactor = 2.5 },
        ],
        Infection = new SynthesisInfection { BackgroundIncidence = 0.006 },
        Confirmation = new SynthesisConfirmation { Sensitivity = 1, Specificity = 1 },
        Audits =
        [
            new SynthesisAudit { Stratum = "blue", Sites = ["Quiet works"], Share = 0.25 },
            new SynthesisAudit { Stratum = "green", Sites = ["Busy works"], Share = 0.04 },
        ],
    };

    private static readonly AuditSettings Described = new()
    {
        Strata = [new StratumSettings { Name = "blue", Sites = ["Quiet*"] }, new StratumSettings { Name = "green", Sites = ["Busy*"] }],
    };

    [Fact]
    public void Weighted_sensitivity_finds_the_truth_and_unweighted_does_not()
    {
        using var folder = new TemporaryFolder();
        var weighted = new List<(double Error, bool Covers)>();
        var plain = new List<(double Error, bool Covers)>();
        for (ulong seed = 1; seed <= (ulong)Programs; seed++)
        {
            var path = Path.Combine(folder.Path, $"program-{seed}");
            var truth = SyntheticProgram.Write(Plan, 4_100 + seed, path).Sensitivity!.Value;
            var program = ScreeningProgram.Open(path);
            weighted.Add(Judge(Accuracy(program, program.Settings with { Audits = Described }, AccuracyBasis.Reweighted, StratumOrigin.Patterns), truth));
            plain.Add(Judge(Accuracy(program, program.Settings, AccuracyBasis.Unweighted, StratumOrigin.Unexplained), truth));
        }

        var (bias, error) = Mean(weighted);
        var (plainBias, plainError) = Mean(plain);
        output.WriteLine(FormattableString.Invariant($"weighted: mean error {bias:0.0000} (standard error {error:0.0000}), covers {weighted.Count(one => one.Covers)} of {Programs}"));
        output.WriteLine(FormattableString.Invariant($"unweighted: mean error {plainBias:0.0000} (standard error {plainError:0.0000}), covers {plain.Count(one => one.Covers)} of {Programs}"));

        // Three standard errors of the mean, and of a share of 0.95.
        Math.Abs(bias).Should().BeLessThan(3 * error);
        plainBias.Should().BeGreaterThan(3 * plainError);
        weighted.Count(one => one.Covers).Should().BeGreaterThanOrEqualTo((int)Math.Floor((0.95 * Programs) - (3 * Math.Sqrt(0.95 * 0.05 * Programs))));

        // Two sites decide the width of both, which makes limits so wide that coverage tells nothing of the unweighted; the distance from the
        // truth does. Were neither nearer, at least four in five would be nearer by weights with a probability below 0.006.
        weighted.Zip(plain).Count(pair => Math.Abs(pair.First.Error) < Math.Abs(pair.Second.Error)).Should().BeGreaterThanOrEqualTo((int)Math.Ceiling(0.8 * Programs));
    }

    [Fact]
    public void Strata_named_as_sites_give_the_same_as_patterns_and_as_their_stated_numbers()
    {
        using var folder = new TemporaryFolder();
        SyntheticProgram.Write(Plan, 4_100, folder.Path);
        var program = ScreeningProgram.Open(folder.Path);
        var patterns = Accuracy(program, program.Settings with { Audits = Described }, AccuracyBasis.Reweighted, StratumOrigin.Patterns);
        var numbers = new AuditSettings { Strata = [.. patterns.Strata.Select(stratum => new StratumSettings { Name = stratum.Stratum, Negatives = stratum.Negatives })] };
        var stated = Accuracy(program, program.Settings with { Audits = numbers }, AccuracyBasis.Reweighted, StratumOrigin.StatedNumber);
        stated.Sensitivity.Estimate.Should().BeApproximately(patterns.Sensitivity.Estimate!.Value, 1e-12);

        using var named = new TemporaryFolder();
        SyntheticProgram.Write(Plan with { Audits = [.. Plan.Audits.Select(audit => audit with { Stratum = audit.Sites[0] })] }, 4_100, named.Path);
        var sites = ScreeningProgram.Open(named.Path);
        var bySite = Accuracy(sites, sites.Settings, AccuracyBasis.Reweighted, StratumOrigin.Site);
        // The strata stand in another order, so the sums may differ in their last digit.
        bySite.Sensitivity.Estimate.Should().BeApproximately(patterns.Sensitivity.Estimate.Value, 1e-12);
        bySite.Sensitivity.Lower.Should().BeApproximately(patterns.Sensitivity.Lower!.Value, 1e-9);
        bySite.Specificity.Upper.Should().BeApproximately(patterns.Specificity.Upper!.Value, 1e-12);
    }

    /// <summary>One draw with one missed among 1,156 audited: the limits are wide, and the truth lies in all of them.</summary>
    [Fact]
    public void The_truth_of_the_sample_program_lies_within_the_limits_and_the_bounds()
    {
        var folder = RepositoryRoot.Combine("sample-data", "marrowlight");
        var truth = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "truth.json"))).RootElement;
        var program = ScreeningProgram.Open(folder);
        var found = Accuracy(program, program.Settings, AccuracyBasis.OneDraw, StratumOrigin.WholeProgram);
        foreach (var (name, figure) in new[]
        {
            ("sensitivity", found.Sensitivity), ("specificity", found.Specificity), ("prevalence", found.Prevalence), ("positivePredictiveValue", found.PositivePredictiveValue),
        })
        {
            truth.GetProperty(name).GetDouble().Should().BeInRange(figure.Lower!.Value, figure.Upper!.Value, name);
        }

        truth.GetProperty("sensitivity").GetDouble().Should().BeInRange(found.SensitivityBounds.Lower!.Value, found.SensitivityBounds.Upper!.Value);
        truth.GetProperty("specificity").GetDouble().Should().BeGreaterThan(found.Proven[0].SpecificityLower!.Value);
    }

    private static AccuracyFindings Accuracy(ScreeningProgram program, ProgramSettings settings, AccuracyBasis basis, StratumOrigin origin)
    {
        var findings = OneAnalysis.Accuracy(new ProgramReader().Read(settings, program.Folder).Tally, settings);
        findings.Basis.Should().Be(basis);
        findings.Strata.Should().OnlyContain(stratum => stratum.Origin == origin);
        return findings;
    }

    private static (double Error, bool Covers) Judge(AccuracyFindings findings, double truth) =>
        (findings.Sensitivity.Estimate!.Value - truth, findings.Sensitivity.Lower <= truth && truth <= findings.Sensitivity.Upper);

    private static (double Mean, double StandardError) Mean(List<(double Error, bool Covers)> all)
    {
        var mean = all.Average(one => one.Error);
        return (mean, Math.Sqrt(all.Sum(one => (one.Error - mean) * (one.Error - mean)) / (all.Count - 1) / all.Count));
    }
}
