using ScreenStats.Evaluation.Answers;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Answers;

public class InOneSentenceTests
{
    private static readonly (string Name, Findings Findings)[] All = [.. ExamplePrograms.All.Select(program => (program.Name, ExamplePrograms.Evaluated(program.Name)))];

    private static readonly Findings FaultyLot = All.Single(program => program.Name == "faulty lot and clumsy site").Findings;

    [Fact]
    public void Each_question_has_one_sentence_of_at_most_45_words()
    {
        foreach (var (name, findings) in All)
        {
            foreach (var answer in findings.Answers.Questions)
            {
                var words = answer.InOneSentence.Split(' ', StringSplitOptions.RemoveEmptyEntries).Count(word => word.Any(char.IsLetterOrDigit));
                words.Should().BeLessThanOrEqualTo(45, $"{name}: {answer.InOneSentence}");
                answer.InOneSentence.Should().EndWith(".", name).And.NotContain(". ", name).And.NotContain("undefined", name);
            }
        }
    }

    [Fact]
    public void The_sentence_has_figure_interval_and_condition()
    {
        string Said(string id) => FaultyLot.Answers.Questions.Single(answer => answer.Id == id).InOneSentence;
        Said("what-a-positive-is-worth").Should().MatchRegex(@"^Of \d+ positive screens with a conclusive confirmatory result \d+ were real, [\d.]+ % \(95 % interval [\d.]+ % to [\d.]+ %; [\d.]+ % without flagged lots\), for the people, these 4 sites and weeks of these data and as far as the confirmatory test is right\.$");
        Said("which-lots-and-sites-stand-out").Should().MatchRegex(@"^Lot A\]3 \(\d+ of \d+ conclusive positives refuted, adjusted p < 0\.0001\) and site West \(\d+ inconclusive and \d+ invalid of [\d,]+ runs, adjusted p < 0\.0001\) stand out beyond chance, with others in the tables; a flag asks for a look and releases nobody from isolation\.$");
        Said("how-much-screening-for-each-case").Should().MatchRegex(@"^No run|^[\d,]+ runs found (no case|\d+ cases?)").And.Contain("are not");
        Said("how-accurate-is-the-screen").Should().EndWith("a negative screen does not rule out infection.");
    }

    [Fact]
    public void Hidden_figures_stand_in_no_sentence_and_who_stands_out_keeps_the_name()
    {
        foreach (var (name, findings) in All)
        {
            var hidden = DisclosureControl.Apply(findings with { Settings = findings.Settings with { Report = findings.Settings.Report with { SuppressBelow = 10 } } });
            foreach (var answer in hidden.Answers.Questions)
            {
                answer.Brief.Text.Should().NotBeEmpty(name);
                hidden.Disclosure!.Seen(answer.Brief, without: true).Should().NotBeNull($"{name}: {answer.InOneSentence}");
            }
        }

        // Of the two that stand out one has too few counts to be shown.
        var veiled = DisclosureControl.Apply(FaultyLot with { Settings = FaultyLot.Settings with { Report = FaultyLot.Settings.Report with { SuppressBelow = 60 } } });
        veiled.Answers.Questions[1].InOneSentence.Should().Contain("ot A]3").And.Contain("site West").And.Contain("releases nobody from isolation");
    }
}
